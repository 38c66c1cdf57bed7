/** How fast a level falls (docs/meaning.md §6, `sooner`): litres lost per tick of an hour meter over all runs of levels on record. */
import { compareTexts } from '../base/compare-texts.js';
import type { EntryId } from '../history/entry.js';
import type { InstrumentPoint, TopUp } from '../history/timeline.js';
import { compareMoments, type Moment } from '../values/moment.js';
import { type AxisValue, meterValueAt, valueAt } from './doings.js';
import type { World } from './world.js';

export interface Fall {
  readonly litresPerTick: number;
  /** How many levels the rate rests on. */
  readonly levels: number;
  /** The last level, as the meter stood. */
  readonly last: AxisValue;
  /** When the last level was read. */
  readonly when: Moment;
  readonly litresLeft: number;
  /** Ticks until the low mark, from the last level. */
  readonly ticksLeft: number;
  readonly entries: readonly EntryId[];
}

interface Level {
  readonly point: InstrumentPoint;
  /** Millionths of a litre. */
  readonly amount: number;
  readonly meter: AxisValue;
  /** The last level off the marks before this one: where it is not that of the level before, it ends the run. */
  readonly offMarks: InstrumentPoint | null;
}

/** Levels that follow one another with nothing added but what is on record. Inside a run only its ends matter: the losses between add up. */
interface Run {
  readonly first: Level;
  last: Level;
  /** Millionths of a litre. */
  added: number;
  readonly topUps: EntryId[];
  /** The level off the marks but for which it would be one with the run before. */
  readonly apart: InstrumentPoint | null;
}

/** Nothing was lost, or no run has two levels; with the entries that show it. */
export interface NoFall {
  readonly litresPerTick: null;
  readonly entries: readonly EntryId[];
}

/** How fast the level of a dipstick falls by an hour meter. */
export function fallOf(world: World, dipstick: string, meter: string): Fall | NoFall {
  const size = world.index.dipsticks.get(dipstick)?.litres ?? 0;
  const levels = levelsOf(world, dipstick, meter, size);
  const last = levels.at(-1);
  if (last === undefined) return { litresPerTick: null, entries: [] };
  const runs = runsOf(world, dipstick, levels);
  const lost = runs.reduce((sum, run) => sum + run.first.amount + run.added - run.last.amount, 0);
  const ticks = runs.reduce((sum, run) => sum + run.last.meter.value - run.first.meter.value, 0);
  const cited = runs.flatMap(citedFor);
  if (lost <= 0 || ticks <= 0) return { litresPerTick: null, entries: [...new Set(cited)] };
  const left = Math.max(0, last.amount);
  return {
    litresPerTick: lost / EXACT / ticks,
    levels: levels.length,
    last: last.meter,
    when: last.point.when,
    litresLeft: left / EXACT,
    ticksLeft: (left * ticks) / lost,
    entries: [...new Set([...cited, ...citedBy(last)])],
  };
}

/** Litres are counted in whole millionths, so that neither sums nor comparisons depend on the order of the terms. */
const EXACT = 1_000_000;

function exactly(litres: number): number {
  return Math.round(litres * EXACT);
}

function runsOf(world: World, dipstick: string, levels: readonly Level[]): readonly Run[] {
  const runs: Run[] = [];
  const topUps = world.timeline.topUps.filter((topUp) => topUp.dipstick === dipstick);
  world.step(levels.length + topUps.length);
  let next = 0;
  for (const level of levels) {
    const run = runs.at(-1);
    // Both are in the order of the history, so that each top-up lies between two levels only; one noted with a level came before it.
    const start = next;
    while (isNotAfter(topUps[next], level.point)) next += 1;
    const added = topUps.slice(start, next);
    const addedAmount = added.reduce((sum, topUp) => sum + exactly(topUp.litres), 0);
    const isApart = run !== undefined && level.offMarks !== run.last.offMarks;
    const rose = run !== undefined && run.last.amount + addedAmount < level.amount;
    if (run === undefined || isApart || rose) {
      runs.push({ first: level, last: level, added: 0, topUps: [], apart: isApart && !rose ? level.offMarks : null });
      continue;
    }
    run.last = level;
    run.added += addedAmount;
    run.topUps.push(...added.map((topUp) => topUp.entry));
  }
  return runs;
}

/** Its ends with what was added between, and what keeps it apart from the run before; a single level says nothing. */
function citedFor(run: Run): readonly EntryId[] {
  const apart = run.apart === null ? [] : [run.apart.entry];
  return run.first === run.last ? apart : [...apart, ...citedBy(run.first), ...run.topUps, ...citedBy(run.last)];
}

function isNotAfter(topUp: TopUp | undefined, level: InstrumentPoint): boolean {
  return topUp !== undefined && (compareMoments(topUp.when, level.when) || compareTexts(topUp.entry, level.entry)) <= 0;
}

function citedBy(level: Level): readonly EntryId[] {
  return [level.point.entry, ...level.meter.entries];
}

/** Levels between the marks, each with the meter's value (what the same entry notes, else the last reading); a level off the marks says nothing in litres, but ends a run. */
function levelsOf(world: World, dipstick: string, meter: string, size: number): readonly Level[] {
  const levels: Level[] = [];
  let offMarks: InstrumentPoint | null = null;
  const noted = new Map(world.timeline.meters.get(meter)?.points.map((each) => [each.entry, each]));
  for (const point of world.timeline.instruments.get(dipstick) ?? []) {
    world.step();
    if (!Number.isFinite(point.value)) {
      offMarks = point;
      continue;
    }
    const at = valueAt(noted.get(point.entry)) ?? meterValueAt(world, meter, point.when);
    if (at === null) continue;
    levels.push({ point, amount: exactly(point.value * size), meter: at, offMarks });
  }
  return levels;
}
