/** `sooner at half the time that D takes to fall to low` (§6). */
import type { SoonerNode } from '../../src/graph/rule-graph.js';
import { inOrder } from './calendar.js';
import { meterLimit } from './limits.js';
import { looks, meterAtEntry, type Look } from './meters.js';
import { HOUR } from './outings.js';
import { plain, type Outcome } from './outcome.js';
import { whenOf, type World } from './world.js';

interface Level extends Look {
  /** Whole millionths of a litre. */
  readonly amount: number;
  readonly ticks: number;
}

export function sooner(world: World, node: SoonerNode): Outcome {
  const meter = world.graph.meters.find(({ unit, fromOutings }) => unit === 'h' && !fromOutings)?.id;
  const size = world.graph.dipsticks.find(({ id }) => id === node.dipstick)?.litres;
  if (meter === undefined || size === undefined) return plain('clear', node.id);
  const [lost, ticks] = fall(world, node.dipstick, meter, size);
  const last = levels(world, node.dipstick, meter, size)
    .filter((each) => each !== null)
    .at(-1);
  if (last === undefined || lost <= 0 || ticks <= 0) return plain('clear', node.id);
  const span = Math.round(node.share * ((Math.max(0, last.amount) * ticks) / lost));
  const lead = Math.floor(Math.min(span / 10, 10 * HOUR));
  return meterLimit(
    world,
    { id: node.id, early: { size: 0 }, late: { size: 0 }, lead: { size: lead } },
    meter,
    last.ticks,
    last.ticks + span,
  );
}

function millionths(litres: number): number {
  return Math.round(litres * 1_000_000);
}

/** The levels in order; `null` where the stick was off its marks, which ends a run. */
function levels(world: World, dipstick: string, meter: string, size: number): readonly (Level | null)[] {
  return looks(world, dipstick).flatMap((look) => {
    if (!Number.isFinite(look.value)) return [null];
    const ticks = meterAtEntry(world, meter, look.id, look.when);
    return ticks === null ? [] : [{ ...look, amount: millionths(look.value * size), ticks }];
  });
}

/** Millionths lost, and the ticks that took, over all runs; each top-up lies between two levels in the order of the history. */
function fall(world: World, dipstick: string, meter: string, size: number): readonly [lost: number, ticks: number] {
  let [lost, ticks] = [0, 0];
  let before: Level | null = null;
  for (const level of levels(world, dipstick, meter, size)) {
    if (before !== null && level !== null) {
      const gone = before.amount - level.amount + toppedUp(world, dipstick, before, level);
      if (gone >= 0) [lost, ticks] = [lost + gone, ticks + level.ticks - before.ticks];
    }
    before = level;
  }
  return [lost, ticks];
}

/** One noted in the same entry as a level came before that level. */
function toppedUp(world: World, dipstick: string, from: Level, to: Level): number {
  let sum = 0;
  for (const entry of world.entries) {
    if (entry.kind !== 'topped-up' || entry.dipstick !== dipstick) continue;
    const when = { when: whenOf(entry), id: entry.id };
    if (inOrder(from, when) < 0 && inOrder(when, to) <= 0) sum += millionths(entry.litres);
  }
  return sum;
}
