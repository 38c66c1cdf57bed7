/**
 * When a task falls due along simulated courses of use: first from its assessment, then again and again by its rules.
 */
import type { DuePoint, Observation } from '../assess/assessment.js';
import type { Node, NodeId } from '../graph/rule-graph.js';
import type { Day } from '../values/moment.js';
import { reachedBy } from './course-days.js';
import { FAR, NEVER } from './due-days.js';
import type { BringForward, Columns } from './due-days.js';
import { type DayAfter, dayAfter, dayToCome } from './event-to-come.js';
import { cheapFirst, nextDue } from './next-due.js';
import { countsFrom } from './several-ahead.js';
import type { Sky } from './sky.js';
import type { UseFutures } from './use-futures.js';

/**
 * The first due days, one for each future: brings `due` forward, and notes in `by` which of the `rules` decided. Of rules that decide on one day, the
 * one written first does.
 */
export type FirstDue = (due: Int32Array, by: Int32Array) => void;

/** One task's rules, ready to be followed along futures. */
export interface DueCourse {
  readonly first: FirstDue;
  readonly again: BringForward;
  /** The limits among its rules. */
  readonly rules: readonly NodeId[];
  /** Meters that its next due point depends on; with none the day is certain. */
  readonly meters: readonly string[];
  /** Meters that nothing is known of: parts on them are left out. */
  readonly unforeseen: readonly string[];
}

/**
 * The course of a task from its trigger and the record of its assessment; `null` where no limit of it has a due point (an occasion, a
 * condition, nothing on record).
 */
export function dueCourse(nodes: readonly Node[], trigger: NodeId, record: readonly Observation[], sky: Sky): DueCourse | null {
  const observed = new Map(record.map((observation) => [observation.node, observation]));
  const rules: NodeId[] = [];
  const meters = new Set<string>();
  const unforeseen = new Set<string>();
  const firstOf = (id: NodeId): FirstDue | null => {
    const node = nodes[id];
    if (node === undefined) return null;
    switch (node.kind) {
      case 'whichever':
        return node.mode === 'first' ? earliestOf(node.parts) : latest(node.parts.map(firstOf), sky.columns);
      case 'any':
        return earliestOf(node.parts);
      case 'while':
        return firstOf(node.then);
      case 'first':
        // Until its event happens what stands under `every` goes on.
        if (dayToCome(observed.get(node.first)) !== null)
          return earliestOf(node.then === undefined ? [node.first] : [node.first, node.then]);
        return firstOf(observed.get(id)?.governing === node.then && node.then !== undefined ? node.then : node.first);
      default:
        return leaf(node, observed.get(id));
    }
  };
  const earliestOf = (parts: readonly NodeId[]): FirstDue | null => {
    const known = new Map(parts.map((id) => [id, firstOf(id)]));
    return earliest(cheapFirst(parts, nodes).map((id) => known.get(id) ?? null));
  };
  const courseOf = (meter: string): UseFutures | undefined => {
    const course = sky.futures.get(meter);
    (course === undefined ? unforeseen : meters).add(meter);
    return course;
  };
  const leaf = (node: Node, seen: Observation | undefined): FirstDue | null => {
    const on = dayToCome(seen);
    if (on !== null) return toCome(node, on);
    const due = pointOf(seen);
    if (due === null) return null;
    const beyond = node.kind === 'interval' && node.strict ? 1 : 0;
    const from = countsFrom(node, seen);
    if (due.on !== 'meter') return onDay(Math.max(from, (due.on === 'calendar' ? due.day : due.at.day) + beyond), rules.push(node.id) - 1);
    const course = courseOf(due.meter);
    return course === undefined ? null : atTotal(course, due.ticks + beyond, from, rules.push(node.id) - 1);
  };
  const toCome = (node: Node, on: Day): FirstDue | null => {
    const amount = node.kind === 'event' ? node.within : node.kind === 'stages' ? node.amounts[0] : undefined;
    if (amount?.on === 'meter') courseOf(amount.meter);
    const reached = dayAfter(on, amount, sky);
    return reached === null ? null : inEach(reached, rules.push(node.id) - 1);
  };
  const first = firstOf(trigger);
  if (first === null)
    return unforeseen.size === 0 ? null : { first: NOTHING, again: NEVER, rules, meters: [], unforeseen: [...unforeseen] };
  return { first, again: nextDue(nodes, trigger, record, sky), rules, meters: [...meters], unforeseen: [...unforeseen] };
}

const NOTHING: FirstDue = () => undefined;

/** The due point of a limit that is still to come; `null` where there is none that can be followed. */
function pointOf(seen: Observation | undefined): Exclude<DuePoint, { on: 'work' }> | null {
  const due = seen?.limit?.due ?? null;
  // Clear although its point is past: a first service that is met and that nothing follows.
  const isSpent = seen?.state === 'clear' && (seen.limit?.left ?? 0) < 0;
  return due === null || due.on === 'work' || isSpent ? null : due;
}

function onDay(day: number, rule: number): FirstDue {
  return (due, by) => {
    for (let f = 0; f < due.length; f += 1) decide(due, by, f, day, rule);
  };
}

function inEach(reached: DayAfter, rule: number): FirstDue {
  return (due, by) => {
    for (let f = 0; f < due.length; f += 1) decide(due, by, f, reached(f, (due[f] ?? 0) + 1), rule);
  };
}

function atTotal(course: UseFutures, total: number, from: number, rule: number): FirstDue {
  return (due, by) => {
    for (let f = 0; f < due.length; f += 1)
      decide(due, by, f, Math.max(from, reachedBy(course, f, total, course.start, (due[f] ?? 0) + 1)), rule);
  };
}

/** Whoever is earlier decides; on one day, who is written first. */
function decide(due: Int32Array, by: Int32Array, f: number, day: number, rule: number): void {
  const best = due[f] ?? 0;
  if (day > best || (day === best && rule > (by[f] ?? 0))) return;
  due[f] = day;
  by[f] = rule;
}

/** The earliest of the parts that are known. */
function earliest(parts: readonly (FirstDue | null)[]): FirstDue | null {
  const known = parts.filter((part) => part !== null);
  if (known.length === 0) return null;
  return (due, by) => {
    for (const part of known) part(due, by);
  };
}

/** The latest of the parts, if all are known. */
function latest(parts: readonly (FirstDue | null)[], columns: Columns): FirstDue | null {
  const known = parts.filter((part) => part !== null);
  if (known.length === 0 || known.length < parts.length) return null;
  return (due, by) => {
    const [day, rule, lateDay, lateRule] = [columns.lend(), columns.lend(), columns.lend().fill(-1), columns.lend().fill(-1)];
    for (const part of known) {
      part(day.fill(FAR), rule.fill(-1));
      for (let f = 0; f < day.length; f += 1) {
        if ((day[f] ?? 0) <= (lateDay[f] ?? 0)) continue;
        lateDay[f] = day[f] ?? 0;
        lateRule[f] = rule[f] ?? -1;
      }
    }
    for (let f = 0; f < due.length; f += 1) decide(due, by, f, lateDay[f] ?? 0, lateRule[f] ?? -1);
    for (const column of [day, rule, lateDay, lateRule]) columns.giveBack(column);
  };
}
