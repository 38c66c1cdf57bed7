import { normalProbability } from './normal.js';

/** Whether repairs of one item come faster and faster, and how sure that is. */
export interface RepairTrend {
  readonly says: 'getting-worse' | 'getting-better' | 'no-trend-seen' | 'too-few';
  /** Laplace's statistic: above 0 the repairs crowd towards the end. `null` with fewer than 3. */
  readonly laplace: number | null;
  /** Chance of a statistic this far from 0, either way, if there is no trend. */
  readonly chance: number | null;
  readonly growth: PowerLaw | null;
  readonly n: number;
  readonly method: string;
}

/** Repairs up to time t number `lambda × t^beta`: beta above 1 is wear, below 1 running in. */
export interface PowerLaw {
  readonly beta: number;
  readonly lambda: number;
  /** Mean time between repairs as it stands at the end. */
  readonly between: number;
}

const SURE = 0.1;

/**
 * The trend of repair times, on one axis from 0 (fitted, or first recorded) to `end` (now).
 *
 * Both tests take it that the record was watched up to `end`, which need not be a repair.
 */
export function repairTrend(times: readonly number[], end: number): RepairTrend {
  const counted = times.filter((time) => time >= 0 && time <= end);
  const base = { n: counted.length, method: 'Laplace test; power law by maximum likelihood' };
  if (counted.length < 3 || end <= 0) return { ...base, says: 'too-few', laplace: null, chance: null, growth: null };
  const laplace = laplaceStatistic(counted, end);
  const chance = 2 * (1 - normalProbability(Math.abs(laplace)));
  const trend = laplace > 0 ? 'getting-worse' : 'getting-better';
  return { ...base, says: chance < SURE ? trend : 'no-trend-seen', laplace, chance, growth: fitPowerLaw(counted, end) };
}

/** Laplace's statistic of a record watched to `end`: about standard normal where repairs come at an even rate. */
export function laplaceStatistic(times: readonly number[], end: number): number {
  const mean = times.reduce((sum, time) => sum + time, 0) / times.length;
  return (mean - end / 2) / (end * Math.sqrt(1 / (12 * times.length)));
}

/**
 * The power law of greatest likelihood, for a record watched to `end`.
 *
 * `null` where no repair falls strictly between 0 and `end`. Source: MIL-HDBK-189, Appendix C.
 */
export function fitPowerLaw(times: readonly number[], end: number): PowerLaw | null {
  const inside = times.filter((time) => time > 0 && time <= end);
  const logs = inside.reduce((sum, time) => sum + Math.log(end / time), 0);
  if (logs === 0) return null;
  const beta = inside.length / logs;
  const lambda = inside.length / end ** beta;
  return { beta, lambda, between: end / (inside.length * beta) };
}
