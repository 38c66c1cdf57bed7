import fc from 'fast-check';
import type { Assessment, AssessOptions, TaskAssessment } from '../../src/assess/assessment.js';
import { assess } from '../../src/assess/assess.js';
import { compile } from '../../src/compile/compile.js';
import { partsOf } from '../../src/graph/node-references.js';
import type { Node, RuleGraph } from '../../src/graph/rule-graph.js';
import type { Entry } from '../../src/history/entry.js';
import { type Moment, parseTime } from '../../src/values/moment.js';
import { dayOf, formatDate } from '../../src/values/civil.js';
import { history, intent, now } from './random-history.js';
import { scheduleText } from './random-schedule.js';

/** A schedule that compiles, a history, and the moment at which it is looked at. */
export interface Case {
  readonly text: string;
  readonly graph: RuleGraph;
  readonly entries: readonly Entry[];
  readonly now: Moment;
  readonly options: AssessOptions;
}

/** Compiles, or `null` where the checker has something against the text. */
export function compiled(text: string): RuleGraph | null {
  return compile('random.due', (path) => (path === 'random.due' ? text : undefined)).graph;
}

export const anyCase: fc.Arbitrary<Case> = fc
  .record({ text: scheduleText, entries: history, now, intent })
  .map(({ text, entries, now: at, intent: wanted }) => ({
    text,
    graph: compiled(text),
    entries,
    now: at,
    options: wanted === undefined ? {} : { intent: wanted },
  }))
  .filter((each): each is Case => each.graph !== null)
  .map((each) => ({ ...each, [fc.toStringMethod]: () => told(each) }));

/** What a person needs to see of a case that fails. */
function told({ text, entries, now: at, options }: Case): string {
  const tasks = text.slice(text.indexOf('\ntask'));
  const minute = at.minute === null ? '' : ` minute ${at.minute}`;
  return `${tasks}\n${entries.map((entry) => JSON.stringify(entry)).join('\n')}\nnow ${formatDate(at.day)}${minute}, ${JSON.stringify(options)}\n`;
}

/** The assessment of a case, or of another history under its schedule. */
export function assessed({ graph, options }: Case, entries: readonly Entry[], at: Moment): Assessment {
  return assess(graph, entries, at, options);
}

/** What one task came to. */
export function taskOf(assessment: Assessment, task: string): TaskAssessment {
  const found = assessment.tasks.find((each) => each.task === task);
  if (found === undefined) throw new Error(`no task ${task}`);
  return found;
}

/** The first entry of each day, and of the outings that never ended only the first: a machine is on one outing at a time. What was read on an outing was read on the day on which it ended. */
export function oneADay(entries: readonly Entry[]): readonly Entry[] {
  const days = new Set<number>();
  const first = entries.filter((entry) => {
    const own = daysOf(entry);
    const isFirst = own.every((day) => !days.has(day));
    if (isFirst) own.forEach((day) => days.add(day));
    return isFirst;
  });
  const open = first.filter((entry) => entry.kind === 'outing' && entry.hours === undefined);
  return first.filter((entry) => !open.slice(1).includes(entry));
}

/** What an entry shows of a meter only where no replacement and no entry before it in the list shows the same. */
export function showAnew(entries: readonly Entry[]): readonly Entry[] {
  const replaced = entries.flatMap((entry) => (entry.kind === 'meter-replaced' ? [entry] : []));
  const shown = new Set(replaced.flatMap(({ meter, final, initial }) => [`${meter} ${final}`, `${meter} ${initial}`]));
  return entries.map((entry) => {
    const all = Object.entries(entry.meters ?? {});
    const meters = all.filter(([meter, value]) => !shown.has(`${meter} ${value}`));
    meters.forEach(([meter, value]) => shown.add(`${meter} ${value}`));
    return meters.length === all.length ? entry : { ...entry, meters: Object.fromEntries(meters) };
  });
}

/** The day of an entry, and of an outing that on which it ended. */
function daysOf(entry: Entry): readonly number[] {
  const day = dayOf(entry.on) ?? 0;
  if (entry.kind !== 'outing' || entry.hours === undefined) return [day];
  const end = day * 24 + (parseTime(entry.at ?? '00:00') ?? 0) / 60 + entry.hours;
  return [...new Set([day, Math.floor(end / 24)])];
}

/** Whether the task is met by parts, or asks when one that is was done, or comes after it; or has a rule that is worked out over a whole series: a beat kept from due points, or a consumption over all levels. */
export function looksAtSeries(graph: RuleGraph, task: string): boolean {
  const reached = (id: number | undefined): boolean => {
    const node = id === undefined ? undefined : graph.nodes[id];
    return node !== undefined && (isSeries(graph, node) || partsOf(node).some(reached));
  };
  const found = graph.tasks.find((each) => each.id === task);
  return isMetByParts(graph, task) || reached(found?.trigger) || reached(found?.gate);
}

function isSeries(graph: RuleGraph, node: Node): boolean {
  if (node.kind === 'unworked') return isMetByParts(graph, node.task);
  const event = node.kind === 'event' ? node.event : node.kind === 'stages' && node.from.is === 'event' ? node.from.event : null;
  if (event !== null) return isMetByParts(graph, graph.events.find(({ id }) => id === event)?.task ?? '');
  if (node.kind === 'recent') return node.what.is === 'done' && isMetByParts(graph, node.what.task);
  return node.kind === 'sooner' || ('count' in node && node.count !== 'doing');
}

function isMetByParts(graph: RuleGraph, task: string): boolean {
  return (graph.tasks.find((each) => each.id === task)?.metBy ?? []).length > 0;
}
