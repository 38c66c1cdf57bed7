import type { Day } from '../values/moment.js';
import type { MeterTrack } from '../history/timeline.js';
import { guessedSeasons } from './guessed-seasons.js';
import { meanOf } from './mean.js';
import { randomNumbers } from './random-numbers.js';
import type { RandomNumbers } from './random-numbers.js';
import { seasonProfile, withoutSeason, YEAR_WEEKS } from './season-profile.js';
import { useSpread } from './use-spread.js';
import type { UseSpread } from './use-spread.js';
import { standsUntil, weeklyUse } from './weekly-use.js';
import type { WeeklyUse } from './weekly-use.js';

/** Many courses that the use of one meter might take from its last reading on. */
export interface UseFutures {
  /** The day of the last reading, from which all of them start; of a meter that counts from outings the day up to which there was none. */
  readonly start: Day;
  readonly count: number;
  /** Weeks that each is followed for. */
  readonly weeks: number;
  /**
   * Life totals at the end of each week, start included: future f, week w at f × (weeks + 1) + w. Never falls along a future, and rises by a
   * multiple of 7 ticks from one to the next: evenly over the days, and by whole ticks.
   */
  readonly totals: Float64Array;
  /** Days with a reading (`fromOutings`: with an outing), and weeks between the first and the last. */
  readonly readings: number;
  readonly fromOutings?: true;
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
  /** Given for a meter that counts from outings: now, up to which it has stood since the last of them. */
  readonly outingsUntil?: Day;
}

/** Three runs from one reading to the next, as for any interval of the outlook. */
const LEAST_READINGS = 4;
/** Weeks after which a week of the record is drawn half as often. */
const HALF_LIFE_WEEKS = 40;

/**
 * Simulates the use of a meter by drawing runs of weeks from its own record, recent ones more often, with the season taken out and that of the
 * week ahead put in; before there is a year of readings, with a season that may be behind them. Each future is on a level of its own, as far apart as
 * the record leaves the level open.
 *
 * `null` with fewer than four days with a reading or less than a week on record, or where nothing was counted: from less nobody can tell. No clock and no chance: the draws follow from `seed`.
 */
export function useFutures(track: MeterTrack, options: FuturesOptions = {}): UseFutures | null {
  const { outingsUntil } = options;
  const use = weeklyUse(track, outingsUntil === undefined ? undefined : standsUntil(track, outingsUntil));
  if (use === null || use.readings < LEAST_READINGS || use.weeks.every((week) => week === 0)) return null;
  const { count = 1000, days = 760, seed = 1 } = options;
  const weeks = Math.ceil(days / 7);
  const spread = useSpread(use);
  const views = viewsOf(use, spread, weeks);
  const upTo = summedUp(views.map(({ weight }) => weight));
  const totals = new Float64Array(count * (weeks + 1));
  const random = randomNumbers(seed);
  for (let future = 0; future < count; future += 1) {
    // As likely above the record as below it.
    const level = Math.exp(spread.levelSpread * random.normal());
    const view = views[drawn(upTo, random.uniform())];
    if (view === undefined) break;
    follow(totals.subarray(future * (weeks + 1), (future + 1) * (weeks + 1)), use.total, view, level, random);
  }
  const seasons = use.weeks.length >= YEAR_WEEKS ? ', by season' : ', whose season is not known: it may have been a high or a low one';
  const recorded = use.weeks.length === 1 ? '1 week' : `${use.weeks.length} weeks`;
  const method = `${count} simulated futures from ${recorded} of use${seasons}`;
  const counts = outingsUntil === undefined ? {} : { fromOutings: true as const };
  return { start: use.end, count, weeks, totals, readings: use.readings, ...counts, weeksOnRecord: use.weeks.length, method };
}

/** One way to see the record, from which futures are drawn as often as it is likely. */
interface View {
  /** Use in each week of the record as it would have been in an average season. */
  readonly weeks: readonly number[];
  /** Summed weights of the weeks that a run may begin with. */
  readonly upTo: readonly number[];
  /** Season of each week ahead. */
  readonly seasons: readonly number[];
  readonly weight: number;
  readonly blockWeeks: number;
  readonly runSpread: number;
}

/**
 * With a year on record: one view with the seasons that it shows and one that knows none, as far as it is open whether they are real. With less: the
 * seasons that may be behind it.
 */
function viewsOf(use: WeeklyUse, spread: UseSpread, ahead: number): readonly View[] {
  const recorded = use.weeks.length;
  const until = recorded + ahead;
  const view = (factors: readonly number[], weight: number): View => viewOf(use, spread, factors, weight);
  if (recorded < YEAR_WEEKS) {
    const guesses = guessedSeasons(use.weeks, spread.blockWeeks, spread.blockSpread, until);
    return guesses.filter(({ weight }) => weight > NEGLIGIBLE).map(({ factors, weight }) => view(factors, weight));
  }
  const { factors, trust } = seasonProfile(use.weeks, spread.blockWeeks, until);
  return [view(factors, trust), view(new Array<number>(until).fill(1), 1 - trust)];
}

/** Guesses that less than one future in a thousand would go by are left out. */
const NEGLIGIBLE = 0.001;

function viewOf(use: WeeklyUse, { blockWeeks, runSpread }: UseSpread, factors: readonly number[], weight: number): View {
  const recorded = use.weeks.length;
  const starts = Array.from({ length: recorded - blockWeeks + 1 }, (_, start) => 2 ** ((start - recorded) / HALF_LIFE_WEEKS));
  // Weeks of the low season say little of the others, so they are drawn the less the lower it is.
  const telling = starts.map((each, start) => each * meanOf(factors.slice(start, start + blockWeeks)));
  const weeks = withoutSeason(use.weeks, { factors, trust: 1 }, 1);
  return { weeks, upTo: summedUp(telling), seasons: factors.slice(recorded), weight, blockWeeks, runSpread };
}

function summedUp(weights: readonly number[]): readonly number[] {
  let sum = 0;
  return weights.map((weight) => (sum += weight));
}

function follow(row: Float64Array, start: number, view: View, level: number, random: RandomNumbers): void {
  let total = start;
  row[0] = total;
  let [from, scale] = [0, level];
  for (let week = 0; week + 1 < row.length; week += 1) {
    const within = week % view.blockWeeks;
    if (within === 0) {
      from = drawn(view.upTo, random.uniform());
      scale = level * aroundOne(view.runSpread, random);
    }
    total += 7 * Math.round(((view.weeks[from + within] ?? 0) * (view.seasons[week] ?? 1) * scale) / 7);
    row[week + 1] = total;
  }
}

/** Log-normal with mean 1, so that uneven runs add up to the level. */
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
