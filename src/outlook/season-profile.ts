import { meanOf } from './mean.js';

/** Weeks in a year, and weeks to either side that count as the same season. */
export const YEAR_WEEKS = 52.18;
const REACH = 4;
/** No season is taken to have less than this share of the average, for what the record shows of it would be blown up beyond reason. */
export const LEAST = 0.1;

/** What a record shows of seasons. */
export interface SeasonProfile {
  /** How much of the average use the season of each week brings, from the first week of the record on; all ones where none are seen. */
  readonly factors: readonly number[];
  /** How likely it is that the seasons are real, 0 to 1. */
  readonly trust: number;
}

/**
 * The seasons of a record, for its own weeks and on to `until` weeks after its beginning.
 *
 * None before there is a year on record. The trust is the share of the differences between seasons that uneven use alone does not account for
 * (as in shrinkage of James and Stein's kind): a machine that is used by fits and starts shows seasons that it does not have.
 */
export function seasonProfile(weeks: readonly number[], blockWeeks: number, until: number): SeasonProfile {
  const mean = meanOf(weeks);
  if (weeks.length < YEAR_WEEKS || mean === 0) return { factors: new Array<number>(until).fill(1), trust: 0 };
  const raw = Array.from({ length: until }, (_, week) => seasonMean(weeks, week) / mean);
  const spread = meanOf(raw.slice(0, Math.floor(YEAR_WEEKS)).map((factor) => (factor - 1) ** 2));
  const windows = (weeks.length / YEAR_WEEKS) * ((2 * REACH + 1) / blockWeeks);
  const share = spread === 0 ? 0 : Math.max(0, 1 - unevenness(weeks, blockWeeks, mean) / windows / spread);
  // Sharpened: where most of the differences are accounted for one way, it is likely that all are.
  const trust = share ** 3 / (share ** 3 + (1 - share) ** 3);
  return { factors: raw.map((factor) => Math.max(LEAST, factor)), trust };
}

/** The use in each week of the record as it would have been in an average season, so far as the seasons are trusted. */
export function withoutSeason(weeks: readonly number[], { factors }: SeasonProfile, trust: number): readonly number[] {
  return weeks.map((week, index) => week / (1 + trust * ((factors[index] ?? 1) - 1)));
}

function seasonMean(weeks: readonly number[], week: number): number {
  return meanOf(weeks.filter((_, other) => isSameSeason(week - other)));
}

function isSameSeason(weeks: number): boolean {
  const part = ((weeks % YEAR_WEEKS) + YEAR_WEEKS) % YEAR_WEEKS;
  return Math.min(part, YEAR_WEEKS - part) <= REACH;
}

/** Half the mean square of the steps from block to block, over the square of the mean: seasons, which change slowly, add little to it. */
function unevenness(weeks: readonly number[], blockWeeks: number, mean: number): number {
  const blocks: number[] = [];
  for (let end = weeks.length; end >= blockWeeks; end -= blockWeeks) blocks.push(meanOf(weeks.slice(end - blockWeeks, end)));
  const steps = blocks.slice(1).map((block, index) => (block - (blocks[index] ?? block)) ** 2);
  return meanOf(steps) / 2 / mean ** 2;
}
