/// <reference lib="dom" />
/**
 * The walk-round for what is due, to be ticked off: cautions stand before the line that they belong to.
 */
import type { Assessment, RuleGraph, TaskState, WalkRound, WalkRoundLine } from '../../../engine.js';
import { namesOf, stanceOnRecord, tasksForWalk } from '../../../engine.js';
import { counted } from '../../../render/count-in-words.js';
import { safeText } from '../../../render/safe-text.js';
import { secondsInWords } from '../../../render/walk-round/seconds-in-words.js';
import { details } from '../../../render/walk-round/sheet-text.js';
import { apartWords, heldWords, sheetWords } from '../../../render/walk-round/sheet-words.js';
import { cautionList, deference } from '../view/caution-list.js';
import { button, element } from '../view/element.js';
import { tickBox } from './controls.js';
import type { Asked, Field } from './field.js';
import { filled } from './filled.js';
import { meterFields } from './meter-fields.js';
import { readingField, type ReadingValue } from './reading-fields.js';
import type { Screen } from './screen.js';
import { planOf, positionsChanged, readProgress, tasksTicked, type WalkProgress } from './walk-progress.js';

const KEPT = 'walk';
const OFFERED: readonly TaskState[] = ['overdue', 'due', 'coming-up'];

export function walkScreen(field: Field): Screen {
  const body = element('div', {});
  const said = element('p', { class: 'said', role: 'status' });
  let progress = readProgress(field.recall(KEPT), field.graph);
  const keep = (next: WalkProgress | null): void => {
    progress = next;
    field.remember(KEPT, next === null ? null : JSON.stringify(next));
  };
  const show = (): void => {
    const asked = field.ask();
    const { assessment } = asked;
    const shown = progress ?? begun(field, asked);
    const walk = planOf(shown, field.graph);
    const set = (change: Partial<WalkProgress>): void => keep({ ...(progress ?? shown), ...change });
    const meters = meterFields(field);
    body.replaceChildren(
      chooser(field, assessment, shown, (tasks) => {
        keep({ ...shown, tasks });
        show();
      }),
      ...heldWords(assessment, namesOf(field.graph)).map((text) => element('p', { class: 'why-hold' }, safeText(text))),
      ...head(walk, field),
      ...apartWords(tasksForWalk(field.graph, assessment), field.graph).map((text) => element('p', { class: 'small' }, safeText(text))),
      ...parts(walk).map(([title, lines]) =>
        element(
          'section',
          { class: 'walk' },
          element('h3', {}, title),
          element('ol', {}, ...lines.map((line) => lineItem(line, walk, field, progress ?? shown, set))),
        ),
      ),
      element(
        'div',
        { class: 'finish' },
        element('h3', {}, 'When you are through, or stop here'),
        meters.root,
        button(
          'Write down what is ticked',
          () => {
            const words = writeDown(field, walk, progress ?? shown, meters.values());
            said.textContent = words.text;
            if (!words.ok) return;
            keep(null);
            field.changed();
          },
          { class: 'wide main' },
        ),
        button(
          'Begin anew, by what is due now',
          () => {
            keep(null);
            said.textContent = 'Planned anew.';
            show();
          },
          { class: 'wide' },
        ),
      ),
    );
  };
  // While one is under way it stays as it was planned, whatever falls due meanwhile.
  const refresh = (): void => {
    if (progress === null || body.childElementCount === 0) show();
  };
  return { id: 'walk', title: 'Walk-round', tab: 'Walk-round', body: [deference(), said, body], refresh };
}

function begun({ graph, plan }: Field, { timeline, assessment }: Asked): WalkProgress {
  const { tasks } = tasksForWalk(graph, assessment);
  const stance = stanceOnRecord(timeline);
  return { fingerprint: graph.fingerprint, tasks, stance, end: plan.works ? 'work' : 'rest', ticked: [], readings: {} };
}

/** What the round is made for: to begin with all that is due, but for what calls for a mechanic. Closed to changes once a line is ticked. */
function chooser(
  field: Field,
  assessment: Assessment,
  { tasks, ticked }: WalkProgress,
  choose: (tasks: readonly string[]) => void,
): HTMLElement {
  const offered = assessment.tasks.filter(({ task, state }) => tasks.includes(task) || OFFERED.includes(state));
  const words = `${counted(tasks.length, 'task')} chosen of ${offered.length} that are due or coming up`;
  if (ticked.length > 0) return element('p', { class: 'small' }, `${words}. To choose others, write down what is ticked first.`);
  const box = (task: string): HTMLElement =>
    tickBox(field.names.tasks[task] ?? task, tasks.includes(task), (on) =>
      choose(on ? [...tasks, task] : tasks.filter((each) => each !== task)),
    );
  return element('details', { class: 'plan' }, element('summary', {}, words), ...offered.map(({ task }) => box(task)));
}

function head(walk: WalkRound, { graph }: Field): readonly HTMLElement[] {
  const words = sheetWords(walk, graph);
  if (walk.lines.length === 0 && walk.outcome === 'found') return [element('p', {}, 'Nothing is due that has to be gone round for.')];
  const texts = [...words.warnings, ...words.leftOut, walk.qualified ? 'Some of this calls for a qualified mechanic.' : null];
  return [
    ...texts.flatMap((text) => (text === null ? [] : [element('p', { class: 'why-hold' }, safeText(text))])),
    ...[`${words.summary} ${words.starts} ${words.ends}`, words.tools, words.supplies].flatMap((text) =>
      text === null ? [] : [element('p', {}, safeText(text))],
    ),
  ];
}

function parts(walk: WalkRound): readonly (readonly [string, readonly WalkRoundLine[]])[] {
  const there = walk.lines.filter(({ number }) => number < walk.backFrom);
  const back = walk.lines.filter(({ number }) => number >= walk.backFrom);
  const all: readonly (readonly [string, readonly WalkRoundLine[]])[] = [
    ['In this order', there],
    ['Putting the machine back', back],
  ];
  return all.filter(([, lines]) => lines.length > 0);
}

function lineItem(
  line: WalkRoundLine,
  walk: WalkRound,
  field: Field,
  progress: WalkProgress,
  set: (change: Partial<WalkProgress>) => void,
): HTMLElement {
  let ticked = progress.ticked.includes(line.number);
  const item = element('li', { class: `line ${line.kind}`, 'data-ticked': ticked });
  const time = line.seconds === 0 ? '' : ` ${secondsInWords(line.seconds)}`;
  const words = element(
    'span',
    {},
    element('span', { class: 'line-number' }, `${line.number}. `),
    safeText(line.title),
    element('span', { class: 'line-time' }, time),
  );
  const box = tickBox(words, ticked, (on) => {
    ticked = on;
    item.toggleAttribute('data-ticked', on);
    const now = readProgress(field.recall(KEPT), field.graph)?.ticked ?? progress.ticked;
    set({ ticked: on ? [...now, line.number] : now.filter((each) => each !== line.number) });
  });
  // What stands open if someone stops here is written down with what is ticked, and need not be read at every line.
  const notes = details({ ...line, leftOpen: [] }, walk, field.graph).filter((text) => text !== '');
  item.append(
    ...[cautionList(line.cautions, line.qualified), box].filter((child) => child !== null),
    ...notes.map((text) => element('p', { class: 'line-note' }, safeText(text))),
    ...(line.kind === 'task' ? readingsOf(line.task, field, progress, set) : []),
  );
  return item;
}

function readingsOf(
  taskId: string,
  field: Field,
  progress: WalkProgress,
  set: (change: Partial<WalkProgress>) => void,
): readonly HTMLElement[] {
  const task = field.graph.tasks.find(({ id }) => id === taskId);
  const instruments = task?.reads.map(({ instrument }) => instrument).filter(({ is }) => is !== 'meter') ?? [];
  return instruments.flatMap((instrument) => {
    const follows = element('div', { class: 'follows', role: 'status' });
    const tell = (value: ReadingValue | null): void =>
      follows.replaceChildren(...(value === null ? [] : whatFollows(taskId, instrument.id, value, field)));
    const kept = progress.readings[instrument.id] ?? null;
    tell(kept);
    return [
      readingField(field, instrument, kept, (value) => {
        const { [instrument.id]: _, ...others } = readProgress(field.recall(KEPT), field.graph)?.readings ?? progress.readings;
        set({ readings: value === null ? others : { ...others, [instrument.id]: value } });
        tell(value);
      }),
      follows,
    ];
  });
}

/** What the schedule says of a reading, asked of the engine as if it were already written down. */
function whatFollows(task: string, instrument: string, value: ReadingValue, field: Field): readonly HTMLElement[] {
  const supposed = field.complete({ kind: 'done', tasks: [task], readings: { [instrument]: value } });
  if (!supposed.ok) return [element('p', { class: 'why-hold' }, supposed.problem)];
  const { holds, notices } = field.assess([supposed.entry]);
  const held = holds.filter(
    ({ why, truth }) => truth === 'true' && why.is === 'reading' && why.task === task && why.instrument === instrument,
  );
  const noted = notices.filter(({ from }) => from.is === 'reading' && from.task === task && from.instrument === instrument);
  return [
    ...held.map(({ text }) => element('p', { class: 'why-hold' }, `HOLD: ${safeText(text)}`)),
    ...noted.map(({ text }) => element('p', { class: 'note' }, safeText(text))),
  ];
}

function writeDown(
  field: Field,
  walk: WalkRound,
  { ticked, readings }: WalkProgress,
  meters: Readonly<Record<string, number>>,
): { readonly ok: boolean; readonly text: string } {
  const tasks = tasksTicked(walk, ticked);
  const positions = positionsChanged(walk, ticked);
  if (tasks.length === 0 && positions === null) return { ok: false, text: 'Nothing is ticked yet.' };
  const kept = Object.fromEntries(Object.entries(readings).filter(([id]) => isReadBy(field.graph, tasks, id)));
  if (tasks.length > 0) {
    const written = field.write({ kind: 'done', tasks: [...tasks], ...filled('readings', kept), ...filled('meters', meters) });
    if (!written.ok) return { ok: false, text: `Not written down: ${written.problem}.` };
  }
  if (positions !== null) field.write({ kind: 'stands', positions });
  return { ok: true, text: `Written down: ${counted(tasks.length, 'task')}${positions === null ? '' : ', and how the machine was left'}.` };
}

function isReadBy(graph: RuleGraph, tasks: readonly string[], instrument: string): boolean {
  return graph.tasks.some(({ id, reads }) => tasks.includes(id) && reads.some((each) => each.instrument.id === instrument));
}
