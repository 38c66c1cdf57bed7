import { assessTimeline } from '../assess/assess.js';
import type { Meter, RuleGraph } from '../graph/rule-graph.js';
import { tasksOfWork } from '../graph/tasks-of-work.js';
import type { Entry } from '../history/entry.js';
import { readTimeline } from '../history/read-timeline.js';
import type { Timeline } from '../history/timeline.js';
import { addDays } from '../values/calendar.js';
import type { Day, Moment } from '../values/moment.js';
import { consumption } from './consumption.js';
import type { Estimate } from './estimate.js';
import type { DefectAhead, FluidAhead, HoursLeft, MeterAhead, Outlook } from './outlook.js';
import { rateOfUse } from './rate-of-use.js';
import { repairsOf } from './repairs-of.js';
import { timeToLow } from './time-to-low.js';
import { useCourse } from './use-course.js';
import type { FuturesByMeter } from './use-futures.js';
import { visitsAhead } from './visits-ahead.js';
import type { VisitOptions } from './visits-ahead.js';
import { futuresOf, tasksAhead } from './year-ahead.js';
import type { AheadOptions } from './year-ahead.js';

/** How far to look, and what there is for it. */
export interface OutlookOptions extends AheadOptions, Pick<VisitOptions, 'shelf' | 'pull'> {}

/**
 * Looks ahead from a history: when each task falls due and which rule decides, how fast meters count and fluids go, whether repairs come faster,
 * and which tasks to do together.
 *
 * It takes it that each task is done on the day on which it falls due. Same inputs, same answer: nothing is left to chance or to a clock.
 *
 * @throws BudgetError as `assess` does.
 */
export function lookAhead(graph: RuleGraph, entries: readonly Entry[], now: Moment, options: OutlookOptions = {}): Outlook {
  const { days = 365, shelf, pull } = options;
  const timeline = readTimeline(entries, graph, now);
  const futures = futuresOf(graph, timeline, now.day, options);
  const to = addDays(now.day, days);
  const tasks = tasksAhead(graph, assessTimeline(graph, timeline, now), futures, to);
  const choices = { without: tasksOfWork(graph), ...(shelf === undefined ? {} : { shelf }), ...(pull === undefined ? {} : { pull }) };
  const hours = graph.meters.find((meter) => meter.unit === 'h' && !meter.fromOutings);
  return {
    format: 'duewright-outlook',
    version: 1,
    schedule: { name: graph.schedule.name, fingerprint: graph.fingerprint },
    now,
    from: now.day,
    to,
    tasks,
    meters: graph.meters.map((meter) => meterAhead(meter, timeline, futures, now, to)),
    fluids: graph.dipsticks.map(({ id, litres }) => fluidAhead(id, litres, hours, timeline, futures, now.day)),
    defects: graph.defects.flatMap(({ id }) => defectAhead(id, hours, timeline)),
    visits: visitsAhead(graph, { from: now.day, to, tasks }, choices),
  };
}

function meterAhead({ id: meter, fromOutings }: Meter, timeline: Timeline, futures: FuturesByMeter, now: Moment, to: Day): MeterAhead {
  const track = timeline.meters.get(meter);
  const course = futures.get(meter);
  return {
    meter,
    ...(fromOutings ? { fromOutings } : {}),
    rate: track === undefined ? null : rateOfUse(track, now, fromOutings),
    course: course === undefined ? [] : useCourse(course, to),
  };
}

function fluidAhead(
  dipstick: string,
  litres: number,
  hours: Meter | undefined,
  timeline: Timeline,
  futures: FuturesByMeter,
  now: Day,
): FluidAhead {
  const used = hours === undefined ? null : consumption(timeline, dipstick, litres, hours.id);
  const meter = hours?.id ?? null;
  if (used === null) return { dipstick, meter, loss: null };
  const course = futures.get(meter ?? '');
  const { litresPerHour, litresLeft, levels, topUps } = used;
  const low = course === undefined ? null : timeToLow(used, course, now);
  return { dipstick, meter, loss: { litresPerHour, litresLeft, hoursToLow: hoursLeft(used.hoursToLow), low, levels, topUps } };
}

/** Without the infinity that plain data lack. */
function hoursLeft({ value, range }: Estimate): HoursLeft {
  return { value, range: range === null ? null : { ...range, high: Number.isFinite(range.high) ? range.high : null } };
}

function defectAhead(defect: string, hours: Meter | undefined, timeline: Timeline): readonly DefectAhead[] {
  const spells = timeline.defects.get(defect) ?? [];
  if (spells.length === 0) return [];
  const open = spells.some(({ end }) => end === null);
  return [{ defect, found: spells.length, open, meter: hours?.id ?? null, trend: repairsOf(timeline, defect, hours?.id ?? '') }];
}
