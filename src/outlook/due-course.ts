/**
 * When a task falls due again and again along one simulated course of use, if it is done each time it falls due.
 *
 * The rules of a task become functions once; along a thousand futures they only look days up.
 */
import type { Observation } from '../assess/assessment.js';
import type { Node, NodeId } from '../graph/rule-graph.js';
import { nextDue } from './next-due.js';
import { dayReached } from './use-futures.js';
import type { FuturesByMeter } from './use-futures.js';

/** A day number, or Infinity for never in sight; with the rule that decided. */
export interface Decided {
  day: number;
  node: NodeId | null;
}

/** One task's rules, ready to be followed along futures. */
export interface DueCourse {
  /** When it first falls due in future `f`; fills in `into`. */
  readonly first: (f: number, into: Decided) => void;
  /** When it falls due after being done on `day` in future `f`. */
  readonly again: (f: number, day: number) => number;
  /** Meters that its next due point depends on; with none the day is certain. */
  readonly meters: readonly string[];
  /** Meters that nothing is known of: parts on them are left out. */
  readonly unforeseen: readonly string[];
}

type First = (f: number, into: Decided) => void;

/**
 * The course of a task from its trigger and the record of its assessment; `null` where no limit of it has a due point (an occasion, a
 * condition, nothing on record).
 */
export function dueCourse(
  nodes: readonly Node[],
  trigger: NodeId,
  record: readonly Observation[],
  futures: FuturesByMeter,
): DueCourse | null {
  const observed = new Map(record.map((observation) => [observation.node, observation]));
  const meters = new Set<string>();
  const unforeseen = new Set<string>();
  const firstOf = (id: NodeId): First | null => {
    const node = nodes[id];
    if (node === undefined) return null;
    if (node.kind === 'whichever') return combined(node.parts.map(firstOf), node.mode);
    if (node.kind === 'any') return combined(node.parts.map(firstOf), 'first');
    if (node.kind === 'while') return firstOf(node.then);
    if (node.kind === 'first') {
      const now = observed.get(id)?.governing ?? node.first;
      return firstOf(now === node.then ? node.then : node.first);
    }
    return leaf(id, observed.get(id));
  };
  const leaf = (id: NodeId, seen: Observation | undefined): First | null => {
    const due = seen?.limit?.due ?? null;
    // Clear although its point is past: a first service that is met and that nothing follows.
    const isSpent = seen?.state === 'clear' && (seen.limit?.left ?? 0) < 0;
    if (due === null || due.on === 'work' || isSpent) return null;
    if (due.on !== 'meter') {
      const day = due.on === 'calendar' ? due.day : due.at.day;
      return (_, into) => {
        into.day = day;
        into.node = id;
      };
    }
    const course = futures.get(due.meter);
    (course === undefined ? unforeseen : meters).add(due.meter);
    return course === undefined
      ? null
      : (f, into) => {
          into.day = dayReached(course, f, due.ticks);
          into.node = id;
        };
  };
  const first = firstOf(trigger);
  if (first === null)
    return unforeseen.size === 0 ? null : { first: never, again: () => Infinity, meters: [], unforeseen: [...unforeseen] };
  return { first, again: nextDue(nodes, trigger, futures, holdsIn(record)), meters: [...meters], unforeseen: [...unforeseen] };
}

/** Whether a condition was found to hold; one that is unknown, or was not looked at, is not. */
export function holdsIn(record: readonly Observation[]): (condition: NodeId) => boolean {
  const holding = new Set(record.filter(({ truth }) => truth === 'true').map(({ node }) => node));
  return (condition) => holding.has(condition);
}

function never(_: number, into: Decided): void {
  into.day = Infinity;
  into.node = null;
}

/** The earliest of the parts that are known; for `last` the latest, and that only if all are. */
function combined(parts: readonly (First | null)[], mode: 'first' | 'last'): First | null {
  const known = parts.filter((part) => part !== null);
  if (known.length === 0 || (mode === 'last' && known.length < parts.length)) return null;
  const [only] = known;
  if (known.length === 1 && only !== undefined) return only;
  const own: Decided = { day: 0, node: null };
  return (f, into) => {
    let [day, node]: [number, NodeId | null] = [mode === 'first' ? Infinity : -Infinity, null];
    for (const part of known) {
      part(f, own);
      if (mode === 'first' ? own.day < day : own.day > day) [day, node] = [own.day, own.node];
    }
    into.day = day;
    into.node = node;
  };
}
