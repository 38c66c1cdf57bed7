import { meterAt } from '../history/meter-at.js';
import type { Timeline } from '../history/timeline.js';
import type { RepairTrend } from './repair-trend.js';
import { repairTrend } from './repair-trend.js';

/**
 * Whether a defect comes back faster and faster, by the hours of a meter: from where the meter's record begins to where it stands.
 *
 * Each spell of the defect counts once, when it was found. Spells found before the meter's first reading are left out.
 */
export function repairsOf(timeline: Timeline, defect: string, meter: string): RepairTrend {
  const track = timeline.meters.get(meter) ?? { points: [] };
  const [first, last] = [track.points[0], track.points.at(-1)];
  if (first === undefined || last === undefined) return repairTrend([], 0);
  const times = (timeline.defects.get(defect) ?? []).flatMap(({ begin }) => {
    const point = meterAt(track, begin.when);
    return point === null ? [] : [(point.total - first.total) / 36_000];
  });
  return repairTrend(times, (last.total - first.total) / 36_000);
}
