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

/** Levels that follow one another with nothing added but what is on record. Inside a run only its ends matter: the losses between add up. */
interface Run {
  readonly first: Level;
  last: Level;
  added: number;
  readonly topUps: EntryId[];
}

/** `null` with fewer than two levels in a run, or where nothing was lost. */
export function fallOf(world: World, dipstick: string, meter: string): Fall | null {
  const size = world.index.dipsticks.get(dipstick)?.litres ?? 0;
  const levels = levelsOf(world, dipstick, meter, size);
  const last = levels.at(-1);
  if (last === undefined) return null;
  const runs = runsOf(world, dipstick, levels);
  const lost = runs.reduce((sum, run) => sum + run.first.litres + run.added - run.last.litres, 0);
  const ticks = runs.reduce((sum, run) => sum + run.last.meter.ticks - run.first.meter.ticks, 0);
  if (lost <= 0 || ticks <= 0) return null;
  const litresPerTick = lost / ticks;
  const litresLeft = Math.max(0, last.litres);
  const entries = new Set([...runs.flatMap((run) => [...citedBy(run.first), ...run.topUps, ...citedBy(run.last)]), ...citedBy(last)]);
  return {
    litresPerTick,
    levels: levels.length,
    last: last.meter,
    litresLeft,
    ticksLeft: litresLeft / litresPerTick,
    entries: [...entries],
  };
}

function runsOf(world: World, dipstick: string, levels: readonly Level[]): readonly Run[] {
  const runs: Run[] = [];
  for (const level of levels) {
    world.step();
    const run = runs.at(-1);
    const added = run === undefined ? null : toppedUpBetween(world, dipstick, run.last.point, level.point);
    if (run === undefined || added === null || run.last.litres + added.litres < level.litres) {
      runs.push({ first: level, last: level, added: 0, topUps: [] });
      continue;
    }
    run.last = level;
    run.added += added.litres;
    run.topUps.push(...added.entries);
  }
  return runs;
}

function citedBy(level: Level): readonly EntryId[] {
  return [level.point.entry, ...level.meter.entries];
}

/** Levels between the marks, each with the meter's value; a level off the marks says nothing in litres. */
function levelsOf(world: World, dipstick: string, meter: string, size: number): readonly Level[] {
  return (world.timeline.instruments.get(dipstick) ?? []).flatMap((point) => {
    world.step();
    const at = Number.isFinite(point.value) ? meterValueAt(world, meter, point.when) : null;
    return at === null ? [] : [{ point, litres: point.value * size, meter: at }];
  });
}

function toppedUpBetween(
  world: World,
  dipstick: string,
  from: InstrumentPoint,
  to: InstrumentPoint,
): { readonly litres: number; readonly entries: readonly EntryId[] } {
  const between = world.timeline.topUps.filter(
    (topUp) => topUp.dipstick === dipstick && notBefore(topUp.when, from.when) && !isAfter(topUp.when, to.when),
  );
  return { litres: between.reduce((sum, topUp) => sum + topUp.litres, 0), entries: between.map((topUp) => topUp.entry) };
}
