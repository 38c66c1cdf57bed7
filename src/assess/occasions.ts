/** Outings as occasions: which one is on, which came before it, which was the last to end (docs/meaning.md §5). */
import type { Outing } from '../history/timeline.js';
import { compareMoments, type Day, isAfter, type Moment } from '../values/moment.js';
import type { World } from './world.js';

export type Round = 'day' | 'outing' | 'shift';

/** The work that is on: intended, under way, or (for a day's work) begun today. */
export interface WorkOn {
  readonly intended: boolean;
  readonly outing: Outing | null;
  /** The day that the work belongs to. */
  readonly day: Day;
  readonly shift: string | null;
}

/** The work that a "before" clause looks at; `null` on a day without work. */
export function workOn(world: World, round: Round): WorkOn | null {
  const open = world.timeline.outings.findLast((outing) => outing.end === null);
  if (open !== undefined) return { intended: false, outing: open, day: open.when.day, shift: open.shift };
  const { outing } = world.options.intent ?? {};
  if (outing !== undefined) return { intended: true, outing: null, day: world.now.day, shift: outing.shift ?? null };
  if (round !== 'day') return null;
  const begun = world.timeline.outings.find((each) => each.when.day === world.now.day);
  return begun === undefined ? null : { intended: false, outing: begun, day: world.now.day, shift: begun.shift };
}

/** The last outing to end before the work that is on, leaving out those that are one with it. */
export function outingBefore(world: World, round: Round, work: WorkOn): Outing | null {
  return lastToEnd(
    world,
    (outing) => !isOneWith(outing, round, work) && (work.outing === null || compareMoments(outing.when, work.outing.when) < 0),
  );
}

/** The outing that the work that is on began with, those that are one with it included; `null` where it has yet to begin. */
export function firstOfWork(world: World, round: Round, work: WorkOn): Outing | null {
  let first = work.outing;
  for (const outing of world.timeline.outings) {
    world.step();
    if (isOneWith(outing, round, work) && (first === null || compareMoments(outing.when, first.when) < 0)) first = outing;
  }
  return first;
}

function isOneWith(outing: Outing, round: Round | 'work', work: WorkOn): boolean {
  switch (round) {
    case 'work':
    case 'outing':
      return false;
    case 'day':
      return outing.when.day >= work.day;
    case 'shift':
      return outing.when.day === work.day && outing.shift !== null && outing.shift === work.shift;
  }
}

/** The last outing that is over, leaving out those whose day or shift still goes on. */
export function outingOver(world: World, round: Round | 'work'): Outing | null {
  const on = workOn(world, 'outing');
  return lastToEnd(world, (outing) => on === null || !isOneWith(outing, round, on));
}

function lastToEnd(world: World, accept: (outing: Outing) => boolean): Outing | null {
  let last: Outing | null = null;
  for (const outing of world.timeline.outings) {
    world.step();
    if (outing.end === null || !accept(outing)) continue;
    if (last === null || last.end === null || compareMoments(outing.end, last.end) >= 0) last = outing;
  }
  return last;
}

/** Whether `done` lies after the end of an earlier outing; on the same day without minutes it belongs to that outing. */
export function isAfterOuting(done: Moment, outing: Outing): boolean {
  return outing.end !== null && isAfter(done, outing.end);
}
