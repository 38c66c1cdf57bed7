/** How fast a level falls (docs/meaning.md §6, `sooner`): litres lost per tick of an hour meter over all runs of levels on record. */
import type { EntryId } from '../history/entry.js';
import type { InstrumentPoint } from '../history/timeline.js';
import { isAfter, notBefore } from '../values/moment.js';
import { type MeterValue, meterValueAt } from './doings.js';
import type { World } from './world.js';

export interface Fall {
  readonly litresPerTick: number;
  /** How many levels the rate rests on. */
  readonly levels: number;
  /** The last level, as the meter stood. */
  readonly last: MeterValue;
  readonly litresLeft: number;
  /** Ticks until the low mark, from the last level. */
  readonly ticksLeft: number;
  readonly entries: readonly EntryId[];
}

interface Level {
  readonly point: InstrumentPoint;
  readonly litres: number;
  readonly meter: MeterValue;
}

/** `null` with fewer than two levels in a run, or where nothing was lost. */
export function fallOf(world: World, dipstick: string, meter: string): Fall | null {
  const size = world.index.dipsticks.get(dipstick)?.litres ?? 0;
  const levels = levelsOf(world, dipstick, meter, size);
  const last = levels.at(-1);
  if (last === undefined) return null;
  let lost = 0;
  let ticks = 0;
  const used = new Set<EntryId>();
  for (let i = 1; i < levels.length; i += 1) {
    const [from, to] = [levels[i - 1], levels[i]];
    if (from === undefined || to === undefined) continue;
    world.step();
    const added = toppedUpBetween(world, dipstick, from.point, to.point);
    const loss = from.litres + added.litres - to.litres;
    if (loss < 0) continue;
    lost += loss;
    ticks += to.meter.ticks - from.meter.ticks;
    for (const entry of [from.point.entry, ...from.meter.entries, ...added.entries, to.point.entry, ...to.meter.entries]) used.add(entry);
  }
  if (lost <= 0 || ticks <= 0) return null;
  for (const entry of [last.point.entry, ...last.meter.entries]) used.add(entry);
  const litresPerTick = lost / ticks;
  const litresLeft = Math.max(0, last.litres);
  return { litresPerTick, levels: levels.length, last: last.meter, litresLeft, ticksLeft: litresLeft / litresPerTick, entries: [...used] };
}

/** Levels between the marks, each with the meter's value; a level off the marks says nothing in litres. */
function levelsOf(world: World, dipstick: string, meter: string, size: number): readonly Level[] {
  return (world.timeline.instruments.get(dipstick) ?? []).flatMap((point) => {
    world.step();
    const at = Number.isFinite(point.value) ? meterValueAt(world, meter, point.when) : null;
    return at === null ? [] : [{ point, litres: point.value * size, meter: at }];
  });
}

function toppedUpBetween(world: World, dipstick: string, from: InstrumentPoint, to: InstrumentPoint): { readonly litres: number; readonly entries: readonly EntryId[] } {
  const between = world.timeline.topUps.filter((topUp) => topUp.dipstick === dipstick && notBefore(topUp.when, from.when) && !isAfter(topUp.when, to.when));
  return { litres: between.reduce((sum, topUp) => sum + topUp.litres, 0), entries: between.map((topUp) => topUp.entry) };
}
