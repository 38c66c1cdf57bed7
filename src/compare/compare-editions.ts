import type { Digest, WithDigest } from '../base/sha256.js';
import { declaredEvents } from '../graph/noted-events.js';
import { meaningFingerprint, meaningText } from '../graph/meaning-fingerprint.js';
import type { RuleGraph, Task } from '../graph/rule-graph.js';
import type { Moment } from '../values/moment.js';
import { compareTask } from './compare-task.js';
import type { Comparison, TaskComparison } from './comparison.js';
import { type LoggedMachine, movesOf } from './moves.js';

/**
 * Compares two editions of a schedule by what they mean: layout, comments and order change nothing.
 *
 * @param machines logbooks for which to say which due points move, by how much and why; with the moment to ask about.
 * @example compareEditions(edition3, edition4).tasks.filter((task) => task.bearings.includes('tighter'))
 */
export function compareEditions(
  before: RuleGraph,
  after: RuleGraph,
  machines: readonly LoggedMachine[] = [],
  now?: Moment,
  { sha256 }: WithDigest = {},
): Comparison {
  const tasks = compareTasks(before, after);
  const [from, to] = [identity(before, sha256), identity(after, sha256)];
  return {
    format: 'duewright-comparison',
    version: 1,
    before: from,
    after: to,
    same: from.meaning === to.meaning,
    tasks,
    declarations: compareDeclarations(before, after),
    moves: now === undefined ? [] : machines.flatMap((machine) => movesOf(machine, { before, after }, now, tasks)),
  };
}

function identity(graph: RuleGraph, sha256: Digest | undefined): Comparison['before'] {
  const { name, edition } = graph.schedule;
  return { name, edition: edition?.number ?? null, fingerprint: graph.fingerprint, meaning: meaningFingerprint(graph, sha256) };
}

function compareTasks(before: RuleGraph, after: RuleGraph): readonly TaskComparison[] {
  const old = new Map(before.tasks.map((task) => [task.id, task]));
  const fresh = new Set(after.tasks.map((task) => task.id));
  const kept = after.tasks.flatMap((task): readonly TaskComparison[] => {
    const counterpart = old.get(task.id);
    if (counterpart === undefined) return [whole(task, 'new')];
    const comparison = compareTask(counterpart, task, { before, after });
    return comparison === null ? [] : [comparison];
  });
  return [...kept, ...before.tasks.filter((task) => !fresh.has(task.id)).map((task) => whole(task, 'gone'))];
}

function whole(task: Task, status: 'new' | 'gone'): TaskComparison {
  return { task: task.id, title: task.title, status, bearings: [status === 'new' ? 'tighter' : 'looser'], changes: [] };
}

const declared = ['meters', 'gauges', 'dipsticks', 'duties', 'attachments', 'supplies', 'defects', 'stops'] as const;
const inAccess = ['parts', 'places', 'steps'] as const;

function compareDeclarations(before: RuleGraph, after: RuleGraph): Comparison['declarations'] {
  const lists = [
    ...declared.map((kind) => [kind, before[kind], after[kind]] as const),
    ['events', declaredEvents(before), declaredEvents(after)] as const,
    ...inAccess.map((kind) => [kind, before.access[kind], after.access[kind]] as const),
  ];
  return lists.flatMap(([kind, old, fresh]) => compareLists(kind, texts(old, before), texts(fresh, after)));
}

function texts(things: readonly { readonly id: string }[], graph: RuleGraph): ReadonlyMap<string, string> {
  return new Map(things.map((thing) => [thing.id, meaningText(thing, graph.nodes)]));
}

function compareLists(kind: string, old: ReadonlyMap<string, string>, fresh: ReadonlyMap<string, string>): Comparison['declarations'] {
  const gone = [...old.keys()].filter((id) => !fresh.has(id)).map((id) => ({ kind, id, status: 'gone' as const }));
  const kept = [...fresh]
    .filter(([id, text]) => old.get(id) !== text)
    .map(([id]) => ({ kind, id, status: old.has(id) ? ('changed' as const) : ('new' as const) }));
  return [...kept, ...gone];
}
