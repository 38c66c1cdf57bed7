import { meanOf } from './mean.js';
import { studentQuantile } from './normal.js';
import { seasonProfile, withoutSeason } from './season-profile.js';
import type { WeeklyUse } from './weekly-use.js';

/** How unevenly a machine is used, and how surely its level of use is known. */
export interface UseSpread {
  /** Weeks that go together: what is noted once a month tells nothing of single weeks. */
  readonly blockWeeks: number;
  readonly blocks: number;
  /** Deviation of a block over its mean. */
  readonly blockSpread: number;
  /** Standard deviation of the level over its mean, widened for few blocks so that normal quantiles of it reach as far as Student's t. */
  readonly levelSpread: number;
  /** Deviation over the mean to add to each run of weeks: drawing from a few runs, smoothed between readings, shows too little of it. */
  readonly runSpread: number;
}

/**
 * What is taken to be known of any owner's use before there are data, counted as so many blocks: the deviation of one week over the mean, which a
 * block of n weeks has √n times less of. Common practice, no source; set with the simulated owners of the tests.
 */
const USUAL_SPREAD = 0.6;
const USUAL_COUNTS_FOR = 2;
/** Recent weeks weigh more, so that a long record stands for no more than about this many. */
const MOST_WEEKS_THAT_COUNT = 75;
/** How much the level of use changes from one year to another for no reason that the record shows: common practice, no source. */
const YEAR_TO_YEAR = 0.04;
/** Part of the record's own unevenness that simulated runs lack; set so that ranges for simulated owners hold as often as they say. */
const OWN_SPREAD = 0.64;

/** Weeks in a block where the record is long enough: runs of much or little work last about that long. */
const WEEKS_TOGETHER = 8;

/**
 * The spread of the level of use, from blocks of weeks; for the first few blocks it leans on what is usual.
 */
export function useSpread(use: WeeklyUse): UseSpread {
  const recorded = use.weeks.length;
  const blockWeeks = Math.min(Math.max(3, Math.min(WEEKS_TOGETHER, recorded >> 2), Math.ceil(use.usualGap / 7)), recorded);
  const seasons = seasonProfile(use.weeks, blockWeeks, recorded);
  const weeks = withoutSeason(use.weeks, seasons, seasons.trust);
  const means = blockMeans(weeks, blockWeeks);
  const blocks = means.length;
  // Two ways to leave the seasons out of it; each can only say too much.
  const seen = Math.min(deviations(means), steps(blockMeans(use.weeks, blockWeeks)));
  const freedom = blocks - 1 + USUAL_COUNTS_FOR;
  const variance = (seen * (blocks - 1) + USUAL_COUNTS_FOR * (USUAL_SPREAD ** 2 / blockWeeks)) / freedom;
  const inflation = studentQuantile(0.9, freedom) / studentQuantile(0.9, 1000);
  const standingFor = Math.min(blocks, MOST_WEEKS_THAT_COUNT / blockWeeks);
  const levelSpread = Math.hypot(Math.sqrt(variance / standingFor) * inflation, YEAR_TO_YEAR);
  const runSpread = OWN_SPREAD * Math.sqrt(seen) * (1 + 5 / blocks);
  return { blockWeeks, blocks, blockSpread: Math.sqrt(variance), levelSpread, runSpread };
}

function blockMeans(weeks: readonly number[], blockWeeks: number): readonly number[] {
  const means: number[] = [];
  for (let end = weeks.length; end >= blockWeeks; end -= blockWeeks) means.push(meanOf(weeks.slice(end - blockWeeks, end)));
  return means;
}

/** Variance over the square of the mean, from the differences to the mean. */
function deviations(means: readonly number[]): number {
  const mean = meanOf(means);
  const squares = means.reduce((sum, each) => sum + (each - mean) ** 2, 0);
  return means.length < 2 ? 0 : squares / (means.length - 1) / (mean * mean || 1);
}

/** The same from the steps from one block to the next, to which seasons add little. */
function steps(means: readonly number[]): number {
  const mean = meanOf(means);
  return meanOf(means.slice(1).map((each, index) => (each - (means[index] ?? each)) ** 2)) / 2 / (mean * mean || 1);
}
