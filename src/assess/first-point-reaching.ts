import { firstIndex } from '../base/first-index.js';
import type { MeterPoint } from '../history/timeline.js';
import type { World } from './world.js';

/** The first point at which a meter's total has reached `ticks` (beyond it, if `strict`), at the moment at which it did; undefined if it has not. */
export function firstPointReaching({ timeline, kinds }: World, meter: string, ticks: number, strict: boolean): MeterPoint | undefined {
  const points = timeline.meters.get(meter)?.points ?? [];
  const least = strict ? Math.floor(ticks) + 1 : Math.ceil(ticks);
  const point = points[firstIndex(points.length, (at) => (points[at]?.total ?? Infinity) >= least)];
  return point === undefined ? undefined : (kinds.facts.outings?.cameTo(point, least) ?? point);
}
