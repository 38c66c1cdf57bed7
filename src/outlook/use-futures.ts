import type { Day } from '../values/moment.js';
import type { MeterTrack } from '../history/timeline.js';
import { meanOf } from './mean.js';
import { randomNumbers } from './random-numbers.js';
import type { RandomNumbers } from './random-numbers.js';
import { seasonProfile, withoutSeason, YEAR_WEEKS } from './season-profile.js';
import { useSpread } from './use-spread.js';
import { weeklyUse } from './weekly-use.js';
import type { WeeklyUse } from './weekly-use.js';

/** Many courses that the use of one meter might take from its last reading on. */
export interface UseFutures {
  /** The day of the last reading, from which all of them start. */
  readonly start: Day;
  readonly count: number;
  /** Weeks that each is followed for. */
  readonly weeks: number;
  /**
   * Life totals at the end of each week, start included: future f, week w at f × (weeks + 1) + w. Never falls along a future, and rises by a
   * multiple of 7 ticks from one to the next: evenly over the days, and by whole ticks.
   */
  readonly totals: Float64Array;
  /** Days with a reading, and weeks between the first and the last. */
  readonly readings: number;
  readonly weeksOnRecord: number;
  readonly method: string;
}

/** Meter → what may become of it. */
export type FuturesByMeter = ReadonlyMap<string, UseFutures>;

/** How many futures, how far, and which. */
export interface FuturesOptions {
  /** How many; default 1000. */
  readonly count?: number;
  /** How far; default 760 days. */
  readonly days?: number;
  /** Which ones; the same seed gives the same futures. */
  readonly seed?: number;
}

/** Weeks after which a week of the record is drawn half as often. */
const HALF_LIFE_WEEKS = 40;

/**
 * Simulates the use of a meter by drawing runs of weeks from its own record, recent ones more often, with the season taken out and that of the
 * week ahead put in once there is a year of readings; each future on a level of its own, as far apart as the record leaves the level open.
 *
 * `null` before there is a week on record, or where nothing was counted. No clock and no chance: the draws follow from `seed`.
 */
export function useFutures(track: MeterTrack, options: FuturesOptions = {}): UseFutures | null {
  const use = weeklyUse(track);
  if (use === null || use.weeks.every((week) => week === 0)) return null;
  const { count = 1000, days = 760, seed = 1 } = options;
  const weeks = Math.ceil(days / 7);
  const { blockWeeks, levelSpread, runSpread } = useSpread(use);
  const pools = poolsOf(use, blockWeeks, weeks, runSpread);
  const totals = new Float64Array(count * (weeks + 1));
  const random = randomNumbers(seed);
  for (let future = 0; future < count; future += 1) {
    const level = aroundOne(levelSpread, random);
    // Where it is open whether the seasons are real, some futures have them and some do not.
    const pool = random.uniform() < pools.trust ? pools.seasonal : pools.even;
    follow(totals.subarray(future * (weeks + 1), (future + 1) * (weeks + 1)), use.total, pool, level, random);
  }
  const method = `${count} simulated futures from ${use.weeks.length} weeks of use${use.weeks.length >= YEAR_WEEKS ? ', by season' : ''}`;
  return { start: use.end, count, weeks, totals, readings: use.readings, weeksOnRecord: use.weeks.length, method };
}

/** What the futures are drawn from. */
interface Pool {
  /** Use in each week of the record as it would have been in an average season. */
  readonly weeks: readonly number[];
  /** Summed weights of the weeks that a run may begin with. */
  readonly upTo: readonly number[];
  /** Season of each week ahead. */
  readonly seasons: readonly number[];
  readonly blockWeeks: number;
  readonly runSpread: number;
}

/** One pool with the seasons of the record, one that knows none. */
function poolsOf(
  use: WeeklyUse,
  blockWeeks: number,
  ahead: number,
  runSpread: number,
): { readonly seasonal: Pool; readonly even: Pool; readonly trust: number } {
  const recorded = use.weeks.length;
  const profile = seasonProfile(use.weeks, blockWeeks, recorded + ahead);
  const starts = Array.from({ length: recorded - blockWeeks + 1 }, (_, start) => 2 ** ((start - recorded) / HALF_LIFE_WEEKS));
  // Weeks of the low season say little of the others, so they are drawn the less the lower it is.
  const telling = starts.map((weight, start) => weight * meanOf(profile.factors.slice(start, start + blockWeeks)));
  const common = { blockWeeks, runSpread };
  const weeks = withoutSeason(use.weeks, profile, 1);
  const seasonal = { ...common, weeks, upTo: summedUp(telling), seasons: profile.factors.slice(recorded) };
  return { seasonal, even: { ...common, weeks: use.weeks, upTo: summedUp(starts), seasons: [] }, trust: profile.trust };
}

function summedUp(weights: readonly number[]): readonly number[] {
  let sum = 0;
  return weights.map((weight) => (sum += weight));
}

function follow(row: Float64Array, start: number, pool: Pool, level: number, random: RandomNumbers): void {
  let total = start;
  row[0] = total;
  let [from, scale] = [0, level];
  for (let week = 0; week + 1 < row.length; week += 1) {
    const within = week % pool.blockWeeks;
    if (within === 0) {
      from = drawn(pool.upTo, random.uniform());
      scale = level * aroundOne(pool.runSpread, random);
    }
    total += 7 * Math.round(((pool.weeks[from + within] ?? 0) * (pool.seasons[week] ?? 1) * scale) / 7);
    row[week + 1] = total;
  }
}

/** Log-normal with mean 1, so that the futures are centred on the record. */
function aroundOne(spread: number, random: RandomNumbers): number {
  return Math.exp(spread * random.normal() - spread ** 2 / 2);
}

function drawn(upTo: readonly number[], uniform: number): number {
  const wanted = uniform * (upTo.at(-1) ?? 0);
  let [low, high] = [0, upTo.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((upTo[middle] ?? 0) > wanted) high = middle;
    else low = middle + 1;
  }
  return low;
}
