/** `first at S1, S2, …` and `at S1, S2, … after E` (§4 "first and staged"). */
import type { Amount, FirstNode, Margin, StagesNode } from '../../src/graph/rule-graph.js';
import { earliest, later, after, notBefore, type When } from './calendar.js';
import { lastEvent } from './conditions.js';
import type { Done } from './doings.js';
import type { Clock } from './intervals.js';
import { limit, unrecorded, type Base } from './limits.js';
import { workBetween } from './outings.js';
import { plain, reached, type Outcome } from './outcome.js';
import { triggerAt, type World } from './world.js';

export function stages(world: World, node: StagesNode, clock: Clock): Outcome {
  const base = stageBase(world, node, clock);
  if (base === null) return node.from.is === 'event' || clock.doings.length > 0 ? plain('clear', node.id) : unrecorded(node);
  const open = node.amounts.slice(stagesMet(world, node, base, clock.doings));
  const outcomes = open.map((amount) => limit(world, node, base, amount));
  const [next] = outcomes;
  if (next === undefined) return plain('clear', node.id);
  return outcomes.filter(({ state }) => reached(state)).at(-1) ?? next;
}

function stageBase(world: World, node: StagesNode, clock: Clock): Base | null {
  if (node.from.is === 'start') {
    // Time at work with no base is all the time there is.
    const worked = node.amounts.every(({ on }) => on === 'work');
    return clock.start ?? (worked ? { when: null, meter: () => null } : null);
  }
  const event = lastEvent(world, node.from.event);
  return event ?? null;
}

/** How many stages, from the first, the doings have met. */
function stagesMet(world: World, node: StagesNode, base: Base, doings: readonly Done[]): number {
  let met = 0;
  for (const done of doings) {
    if (node.from.is === 'event' && (done.when === null || base.when === null || !notBefore(done.when, base.when))) continue;
    const by = node.amounts.filter((amount) => meets(world, node, base, amount, done)).length;
    const atLeast = node.from.is === 'start' || (done.when !== null && base.when !== null && after(done.when, base.when)) ? 1 : 0;
    met = Math.max(met, by, atLeast);
  }
  return met;
}

/** Whether a stage's point is at or before the doing + early. */
function meets(world: World, node: StagesNode, base: Base, amount: Amount, done: Done): boolean {
  switch (amount.on) {
    case 'meter': {
      const [from, at] = [base.meter(amount.meter), done.meter(amount.meter)];
      return from !== null && at !== null && from + amount.ticks <= at + node.early.size;
    }
    case 'calendar':
      if (done.when === null || base.when === null) return false;
      return inTime(later(base.when, amount), node.early, done.when);
    case 'work':
      if (done.when === null) return false;
      return amount.ticks <= workBetween(world, base.when, done.when, amount.duty) + node.early.size;
  }
}

/** A doing is not before the first day of the margin; a point to the minute is that much earlier. */
function inTime(point: When, early: Margin, done: When): boolean {
  return point.minute === null
    ? done.day >= earliest(point.day, early)
    : !after({ day: point.day - early.size, minute: point.minute }, done);
}

/** `first` until its stages are met; what follows counts from doings alone. */
export function first(world: World, node: FirstNode, clock: Clock, run: (id: number, clock: Clock) => Outcome): Outcome {
  const taken = takenOver(world, node.first, clock);
  if (taken === null) return run(node.first, clock);
  if (node.then === undefined) return plain('clear', node.id);
  return run(node.then, { start: null, fromStart: false, doings: clock.doings });
}

/** The place of the doing that met the last stage; of a plan, the first doing. */
function takenOver(world: World, id: number, clock: Clock): number | null {
  const node = triggerAt(world, id);
  if (clock.doings.length === 0) return null;
  if (node.kind === 'whichever') return node.parts.every((part) => takenOver(world, part, clock) !== null) ? 0 : null;
  const started = node.kind === 'stages' && node.from.is === 'start';
  if (node.kind !== 'stages' || (started && node.amounts.length === 1)) return 0;
  const base = stageBase(world, node, clock);
  if (base === null) return 0;
  const place = clock.doings.findIndex((_, i) => stagesMet(world, node, base, clock.doings.slice(0, i + 1)) === node.amounts.length);
  return place < 0 ? null : place;
}
