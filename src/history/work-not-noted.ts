/**
 * Work that an hour meter shows and no outing on record explains.
 *
 * What is asked before and after work goes by the outings on record (docs/meaning.md §5): whoever notes hours alone is not asked again. This tells
 * them so; it alters no state.
 */
import { notBefore, type Moment } from '../values/moment.js';
import { TICKS_PER_UNIT } from '../values/ticks.js';
import type { MachineModel } from './schedule-names.js';
import type { MeterPoint, Outing, Timeline } from './timeline.js';

/** How far the meter rose since a reading, and how much work is on record since then, both in ticks of an hour. */
export interface WorkNotNoted {
  readonly meter: string;
  readonly since: Moment;
  readonly risen: number;
  readonly noted: number;
  /** When the rise was read. What was done then or later was done after the work. */
  readonly read: Moment;
}

/** An hour meter and a watch part company by less than a quarter, and short moves are not worth noting. */
const [SLACK, LEAST] = [1.25, TICKS_PER_UNIT];

/**
 * That the first hour meter of the schedule rose by clearly more than the work on record, since the last reading before the last outing began
 * (without outings, since the first reading); null where it did not, or an outing is under way.
 *
 * @example workNotNoted(readTimeline(entries, graph, now), graph)
 */
export function workNotNoted(timeline: Timeline, model: MachineModel): WorkNotNoted | null {
  const last = timeline.outings.at(-1);
  if (last?.end === null) return null;
  const meter =
    model.meters.find(({ unit, fromOutings, attachment }) => unit === 'h' && !fromOutings && attachment === undefined)?.id ?? '';
  const points = timeline.meters.get(meter)?.points ?? [];
  const [from, to] = [anchor(points, last), points.at(-1)];
  if (from === undefined || to === undefined) return null;
  const risen = to.total - from.total;
  const noted = timeline.outings.reduce((sum, { when, ticks }) => sum + (notBefore(when, from.when) ? ticks : 0), 0);
  return risen < noted * SLACK + LEAST ? null : { meter, since: from.when, risen, noted, read: to.when };
}

function anchor(points: readonly MeterPoint[], last: Outing | undefined): MeterPoint | undefined {
  if (last === undefined) return points[0];
  return points.findLast(({ when }) => notBefore(last.when, when)) ?? points[0];
}
