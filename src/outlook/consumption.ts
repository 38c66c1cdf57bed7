import { meterAt } from '../history/meter-at.js';
import type { InstrumentPoint, MeterTrack, Timeline, TopUp } from '../history/timeline.js';
import { isAfter, notBefore } from '../values/moment.js';
import { unitsOf } from '../values/ticks.js';
import type { Estimate } from './estimate.js';
import { studentQuantile } from './normal.js';

/** How fast a fluid goes, and how long what is there will last. */
export interface Consumption {
  /** Litres for each hour of the meter. */
  readonly litresPerHour: Estimate;
  /** Litres above the low mark at the last level. */
  readonly litresLeft: number;
  /** The life total at the last level, in ticks. */
  readonly at: number;
  /** Hours of the meter from the last level to the low mark. `null` range as that of the rate. */
  readonly hoursToLow: Estimate;
  /** Levels read off a number, and top-ups, that it rests on. */
  readonly levels: number;
  readonly topUps: number;
}

/** What went between two levels. */
interface Run {
  readonly litres: number;
  readonly hours: number;
  readonly topUps: number;
}

const LEVEL = 0.8;
const METHOD = 'litres lost between levels, top-ups added, over hours';

/**
 * The consumption of what a dipstick measures, by the hours of a meter.
 *
 * A level that is only known to be off the marks tells no litres. Where more was found than had been there, something was filled in that is not on
 * record (a change of oil, say): that run is left out. `null` with fewer than two levels that the meter had been read for, or where nothing was lost.
 *
 * @param litres from the low mark to the full mark.
 */
export function consumption(timeline: Timeline, dipstick: string, litres: number, meter: string): Consumption | null {
  const track = timeline.meters.get(meter);
  const points = timeline.instruments.get(dipstick) ?? [];
  const levels = track === undefined ? [] : readLevels(points, litres, track);
  const last = levels.at(-1);
  if (last === undefined) return null;
  const topUps = timeline.topUps.filter((topUp) => topUp.dipstick === dipstick);
  const runs = levels.slice(1).flatMap((to, index): readonly Run[] => {
    const from = levels[index] ?? to;
    const added = topUps.filter(({ when }) => notBefore(when, from.point.when) && !isAfter(when, to.point.when));
    return runBetween(from, to, added);
  });
  const rate = pooledRate(runs);
  if (rate === null) return null;
  const litresLeft = Math.max(0, last.litres);
  return {
    litresPerHour: rate,
    litresLeft,
    at: last.ticks,
    hoursToLow: hoursFor(litresLeft, rate),
    levels: levels.length,
    topUps: runs.reduce((sum, run) => sum + run.topUps, 0),
  };
}

interface LevelRead {
  readonly point: InstrumentPoint;
  readonly litres: number;
  readonly ticks: number;
}

function readLevels(points: readonly InstrumentPoint[], litres: number, track: MeterTrack): readonly LevelRead[] {
  return points.flatMap((point) => {
    const at = Number.isFinite(point.value) ? meterAt(track, point.when) : null;
    return at === null ? [] : [{ point, litres: point.value * litres, ticks: at.total }];
  });
}

function runBetween(from: LevelRead, to: LevelRead, added: readonly TopUp[]): readonly Run[] {
  const litres = from.litres + added.reduce((sum, topUp) => sum + topUp.litres, 0) - to.litres;
  return litres < 0 ? [] : [{ litres, hours: unitsOf(to.ticks - from.ticks), topUps: added.length }];
}

/** All litres over all hours; its interval from how the runs scatter about it (the error of a ratio estimate, Student's t). */
function pooledRate(runs: readonly Run[]): Estimate | null {
  const litres = runs.reduce((sum, run) => sum + run.litres, 0);
  const hours = runs.reduce((sum, run) => sum + run.hours, 0);
  if (litres <= 0 || hours <= 0) return null;
  const value = litres / hours;
  const n = runs.length;
  const about = { value, n, of: n === 1 ? 'run between two levels' : 'runs between levels', method: METHOD };
  if (n < 3) return { ...about, range: null };
  const squares = runs.reduce((sum, run) => sum + (run.litres - value * run.hours) ** 2, 0);
  const reach = (studentQuantile((1 + LEVEL) / 2, n - 1) * Math.sqrt((n * squares) / (n - 1))) / hours;
  return { ...about, range: { low: Math.max(0, value - reach), high: value + reach, level: LEVEL } };
}

function hoursFor(litres: number, rate: Estimate): Estimate {
  const { range } = rate;
  const hours =
    range === null ? null : { low: litres / range.high, high: range.low === 0 ? Infinity : litres / range.low, level: range.level };
  return { value: litres / rate.value, range: hours, n: rate.n, of: rate.of, method: rate.method };
}
