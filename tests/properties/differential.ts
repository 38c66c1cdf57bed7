/**
 * One question put to the engine and to the judge (tests/judge), and the moments at which it is worth asking.
 */
import fc from 'fast-check';
import { assess } from '../../src/assess/assess.js';
import type { DuePoint, Intent } from '../../src/assess/assessment.js';
import { compile } from '../../src/compile/compile.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';
import type { Entry } from '../../src/history/entry.js';
import { formatDate } from '../../src/values/civil.js';
import type { Day, Moment } from '../../src/values/moment.js';
import { judge } from '../judge/judge.js';
import { anyHistory, anyIntent, anyNow } from './differential-history.js';
import { anySchedule, type Files } from './differential-schedule.js';

export interface Question {
  readonly entries: readonly Entry[];
  readonly now: Moment;
  readonly intent: Intent;
}

/** A schedule, a history, and some moments at which it is looked at: compiling takes as long as ten answers, so each schedule is asked often. */
export interface Trial {
  readonly files: Files;
  readonly graph: RuleGraph;
  readonly entries: readonly Entry[];
  readonly looks: readonly { readonly now: Moment; readonly intent: Intent }[];
}

/** Compiles a schedule, or `null` where the checker has something against it. */
export function compiledTrial(files: Files): RuleGraph | null {
  return compile('tried.due', (path) => (Object.hasOwn(files, path) ? files[path] : undefined)).graph;
}

/** A schedule that compiles. */
export const anyCompiled: fc.Arbitrary<{ readonly files: Files; readonly graph: RuleGraph }> = anySchedule
  .map((files) => ({ files, graph: compiledTrial(files) }))
  .filter((each): each is { readonly files: Files; readonly graph: RuleGraph } => each.graph !== null);

const anyLooks = fc.array(fc.record({ now: anyNow, intent: anyIntent }), { minLength: 1, maxLength: 16, size: 'max' });

export const anyTrial: fc.Arbitrary<Trial> = fc
  .record({ compiled: anyCompiled, entries: anyHistory, looks: anyLooks })
  .map(({ compiled, entries, looks }) => ({ ...compiled, entries, looks }))
  .map((each) => ({ ...each, [fc.toStringMethod]: () => told(each) }));

function told({ files, entries, looks }: Trial): string {
  const texts = ['base.due', 'tried.due']
    .flatMap((name) => files[name] ?? [])
    .map((text) => text.slice(Math.max(0, text.indexOf('\ndefect'))));
  const moments = looks.map(({ now, intent }) => `${momentText(now)} ${JSON.stringify(intent)}`);
  return `${texts.join('\n')}\n${entries.map((entry) => JSON.stringify(entry)).join('\n')}\nnow ${moments.join('\nor ')}\n`;
}

function momentText({ day, minute }: Moment): string {
  return `${formatDate(day)}${minute === null ? '' : ` minute ${minute}`}`;
}

/** What the two disagree on, in words; empty where they agree. */
export function disagreements(graph: RuleGraph, { entries, now, intent }: Question): readonly string[] {
  const engine = assess(graph, entries, now, { intent, withoutRecord: true });
  const second = judge(graph, entries, now, intent);
  const found = second.tasks.flatMap((theirs) => {
    const ours = engine.tasks.find(({ task }) => task === theirs.task);
    const [a, b] = [told2(ours?.state, ours?.due), told2(theirs.state, theirs.due)];
    return a === b ? [] : [`${theirs.task}: engine ${a}, judge ${b}`];
  });
  return engine.verdict === second.verdict ? found : [...found, `machine: engine ${engine.verdict}, judge ${second.verdict}`];
}

function told2(state: string | undefined, due: unknown): string {
  return `${state ?? 'nothing'} ${JSON.stringify(due, due === null || due === undefined ? undefined : Object.keys(due).concat('day', 'minute').sort())}`;
}

/** The question itself, and the same just before, at and just after each due point that the engine gives. */
export function questionsThatMatter({ graph, entries, looks }: Trial): readonly Question[] {
  return looks.flatMap(({ now, intent }) => {
    const question = { entries, now, intent };
    const engine = assess(graph, entries, now, { intent, withoutRecord: true });
    const points = engine.tasks.flatMap(({ due }) => (due === null ? [] : [due]));
    return [question, ...points.flatMap((due) => around(question, due))];
  });
}

/** A tenth of a minute short of it, at it, and beyond. */
const STEPS = [-0.05, 0, 0.05] as const;

function around(trial: Question, due: DuePoint): readonly Question[] {
  switch (due.on) {
    case 'calendar':
      return [-1, 0, 1].map((by) => ({ ...trial, now: { day: (due.day + by) as Day, minute: null } }));
    case 'moment':
      return [-1, 0, 1].map((by) => ({
        ...trial,
        now: { day: due.at.day, minute: Math.min(1439, Math.max(0, (due.at.minute ?? 720) + by)) },
      }));
    case 'meter':
      return STEPS.map((by) => probed(trial, { kind: 'reading', meters: { [due.meter]: Math.max(0, due.ticks / 36_000 + by) } }));
    case 'work':
      return STEPS.map((by) =>
        probed(trial, {
          kind: 'outing',
          hours: Math.max(0, due.ticks / 36_000 + by),
          duties: due.duty === null ? [] : [{ duty: due.duty }],
        }),
      );
  }
}

/** The question with one more entry, long enough after now that any reading may stand there. */
function probed(trial: Question, probe: object): Question {
  const day = (trial.now.day + 40) as Day;
  const entry = { id: 'probe', on: formatDate(day), ...probe } as Entry;
  return { ...trial, entries: [...trial.entries, entry], now: { day, minute: null } };
}

/** Every disagreement on a trial, at every moment that matters. */
export function disagreementsOf(trial: Trial): readonly string[] {
  return questionsThatMatter(trial).flatMap((question) =>
    disagreements(trial.graph, question).map(
      (each) => `at ${momentText(question.now)} ${JSON.stringify(question.entries.find(({ id }) => id === 'probe') ?? null)}: ${each}`,
    ),
  );
}
