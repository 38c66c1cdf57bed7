import type { Meter } from '../graph/rule-graph.js';
import type { MeterTrack } from '../history/timeline.js';
import { civilOf } from '../values/civil.js';
import type { Day, Moment } from '../values/moment.js';
import { addDays } from '../values/calendar.js';
import type { Estimate } from './estimate.js';
import { normalQuantile } from './normal.js';
import { theilSen } from './theil-sen.js';
import { useSpread } from './use-spread.js';
import { dailyTotals, standsUntil, stoodUntil, weeklyUse } from './weekly-use.js';
import type { DailyTotal } from './weekly-use.js';

/** How fast a meter counts at present. */
export interface RateOfUse extends Estimate {
  /** Ticks a day; the same as `value`. */
  readonly perDay: number;
  /** For January to December, the use in that month over the average use; `null` before there is a year of readings. */
  readonly seasons: readonly Season[] | null;
  /** When the last reading was taken that it rests on. */
  readonly until: Day;
}

/** The use in one month of the year. */
export interface Season {
  readonly month: number;
  readonly factor: number;
  /** Days of that month on record. */
  readonly days: number;
}

/** Days after which a reading counts half. */
const HALF_LIFE = 60;
/** Points that the median is taken over at most: of more, an even selection. */
const MOST_POINTS = 150;
const LEVEL = 0.8;

/**
 * The present rate of use of one meter, robust to a wrong reading, recent use weighing more.
 *
 * `null` with fewer than two days with readings, or where nothing was counted.
 *
 * @param fromOutings whether it counts from outings: then it has stood since the last of them.
 */
export function rateOfUse(track: MeterTrack, now: Moment, fromOutings = false): RateOfUse | null {
  const until = fromOutings ? standsUntil(track, now.day) : undefined;
  const noted = dailyTotals(track).filter(({ day }) => day <= now.day);
  const days = stoodUntil(noted, until);
  const last = days.at(-1);
  if (last === undefined || noted.length < 2) return null;
  const points = evenly(days).map(({ day, total }) => ({ x: day, y: total, weight: 2 ** ((day - last.day) / HALF_LIFE) }));
  const line = theilSen(points, { bySpan: true });
  if (line === null || line.slope <= 0) return null;
  return {
    value: line.slope,
    perDay: line.slope,
    range: rangeOf(line.slope, track, until),
    n: noted.length,
    of: fromOutings ? 'days with an outing' : 'days with a reading',
    method: `median of slopes (Theil–Sen), ${fromOutings ? 'outings' : 'readings'} ${HALF_LIFE} days old counting half`,
    seasons: seasonsOf(days),
    until: last.day,
  };
}

/** The rates of all meters that have one, for `assess` and `explain`: meter → ticks a day. `meters`: those of the schedule, which say what counts from outings. */
export function ratesOfUse(
  tracks: ReadonlyMap<string, MeterTrack>,
  now: Moment,
  meters: readonly Pick<Meter, 'id' | 'fromOutings'>[] = [],
): ReadonlyMap<string, number> {
  const counted = new Set(meters.filter(({ fromOutings }) => fromOutings).map(({ id }) => id));
  const rates = [...tracks].flatMap(([meter, track]): readonly [string, number][] => {
    const rate = rateOfUse(track, now, counted.has(meter));
    return rate === null ? [] : [[meter, rate.perDay]];
  });
  return new Map(rates);
}

function rangeOf(slope: number, track: MeterTrack, until: Day | undefined): Estimate['range'] {
  const use = weeklyUse(track, until);
  if (use === null) return null;
  const { blocks, levelSpread } = useSpread(use);
  if (blocks < 3) return null;
  const reach = levelSpread * normalQuantile((1 + LEVEL) / 2);
  return { low: slope * Math.exp(-reach), high: slope * Math.exp(reach), level: LEVEL };
}

function evenly(days: readonly DailyTotal[]): readonly DailyTotal[] {
  if (days.length <= MOST_POINTS) return days;
  const step = (days.length - 1) / (MOST_POINTS - 1);
  return Array.from({ length: MOST_POINTS }, (_, index) => days[Math.round(index * step)]).filter((day) => day !== undefined);
}

function seasonsOf(days: readonly DailyTotal[]): RateOfUse['seasons'] {
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined || last.day - first.day < 365) return null;
  const counted = new Map<number, { days: number; ticks: number }>();
  days.slice(1).forEach((to, index) => {
    const from = days[index] ?? to;
    const daily = (to.total - from.total) / (to.day - from.day);
    for (let day = from.day; day < to.day; day = addDays(day, 1)) {
      const month = civilOf(day).month;
      const so = counted.get(month) ?? { days: 0, ticks: 0 };
      counted.set(month, { days: so.days + 1, ticks: so.ticks + daily });
    }
  });
  const rates = [...counted.values()].map((of) => of.ticks / of.days);
  const average = rates.reduce((sum, rate) => sum + rate, 0) / rates.length;
  if (average <= 0) return null;
  return [...counted]
    .map(([month, of]) => ({ month, factor: of.ticks / of.days / average, days: of.days }))
    .sort((a, b) => a.month - b.month);
}
