import { meanOf } from './mean.js';
import { LEAST, YEAR_WEEKS } from './season-profile.js';

/** A season that a record of less than a year may have had, and how well it goes with the record. */
export interface GuessedSeason {
  /** Use in each week over the average, from the first week of the record on. */
  readonly factors: readonly number[];
  /** At least 0; of all guesses together 1. */
  readonly weight: number;
}

/** What is taken to be likely before there is a year on record: half of all machines are used evenly through the year. */
const EVEN = 0.5;
/** How far the high season stands above the average; the low one as far below. */
const SWINGS = [0.3, 0.6, 0.9];
const PHASES = 12;

/**
 * The seasons that may be behind a record of less than a year, for its weeks and on to `until`: none, or any of a few swings, highest at any time of
 * the year, each as likely as it fits the blocks of the record (normal about its share of one level).
 *
 * A month of readings fits nearly all of them, so what is told from it is told with the reserve that it may have been a high or a low month; ten
 * months leave few.
 *
 * @param spread the usual deviation of a block over its mean.
 */
export function guessedSeasons(weeks: readonly number[], blockWeeks: number, spread: number, until: number): readonly GuessedSeason[] {
  const even = { factors: new Array<number>(until).fill(1), prior: EVEN };
  const swinging = SWINGS.flatMap((swing) =>
    Array.from({ length: PHASES }, (_, phase) => ({
      factors: wave(swing, (phase * YEAR_WEEKS) / PHASES, until),
      prior: (1 - EVEN) / (SWINGS.length * PHASES),
    })),
  );
  const weighed = [even, ...swinging].map(({ factors, prior }) => ({
    factors,
    weight: prior * likelihood(weeks, factors, blockWeeks, spread),
  }));
  const all = weighed.reduce((sum, { weight }) => sum + weight, 0);
  return weighed.map(({ factors, weight }) => ({ factors, weight: weight / all }));
}

function wave(swing: number, peak: number, until: number): readonly number[] {
  return Array.from({ length: until }, (_, week) => Math.max(LEAST, 1 + swing * Math.cos(((week - peak) / YEAR_WEEKS) * 2 * Math.PI)));
}

function likelihood(weeks: readonly number[], factors: readonly number[], blockWeeks: number, spread: number): number {
  const blocks: { readonly use: number; readonly factor: number }[] = [];
  for (let end = weeks.length; end >= blockWeeks; end -= blockWeeks) {
    blocks.push({ use: meanOf(weeks.slice(end - blockWeeks, end)), factor: meanOf(factors.slice(end - blockWeeks, end)) });
  }
  const mean = meanOf(blocks.map(({ use }) => use));
  const level = mean / meanOf(blocks.map(({ factor }) => factor));
  const misfit = blocks.reduce((sum, { use, factor }) => sum + ((use - level * factor) / mean) ** 2, 0);
  return Math.exp(-misfit / (2 * spread ** 2));
}
