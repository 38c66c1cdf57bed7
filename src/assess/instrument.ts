/** What a gauge, a dipstick or a meter reads: the reading that stands, and the band it falls in (docs/meaning.md §6). */
import type { CalendarAmount, Instrument, Range, Task } from '../graph/rule-graph.js';
import type { EntryId } from '../history/entry.js';
import type { InstrumentPoint } from '../history/timeline.js';
import { minutesBetween, type Moment } from '../values/moment.js';
import { dayAfter } from '../graph/calendar-amount.js';
import type { World } from './world.js';

export type Reads = Task['reads'][number];

/** The latest reading of an instrument; a meter's is its life total in ticks. */
export function latestReading(world: World, instrument: Instrument): InstrumentPoint | null {
  if (instrument.is !== 'meter') return world.timeline.instruments.get(instrument.id)?.at(-1) ?? null;
  const point = world.timeline.meters.get(instrument.id)?.points.at(-1);
  return point === undefined ? null : { entry: point.entry, when: point.when, value: point.total };
}

/** The entry of the latest reading, and for a meter those that shift its life total or let it count. */
export function entriesOfLatest(world: World, instrument: Instrument, latest: InstrumentPoint): readonly EntryId[] {
  const alongside = instrument.is === 'meter' ? world.timeline.meters.get(instrument.id)?.points.at(-1)?.alongside : [];
  return [latest.entry, ...(alongside ?? [])];
}

/** The reading that stands, or why there is none. */
export function standingReading(world: World, instrument: Instrument): InstrumentPoint | 'never-read' | 'too-old' {
  const point = latestReading(world, instrument);
  if (point === null) return 'never-read';
  const freshFor = freshness(world, instrument);
  return freshFor === undefined || isFresh(point.when, world.now, freshFor) ? point : 'too-old';
}

function freshness(world: World, instrument: Instrument): CalendarAmount | undefined {
  if (instrument.is === 'gauge') return world.index.gauges.get(instrument.id)?.freshFor;
  return instrument.is === 'dipstick' ? world.index.dipsticks.get(instrument.id)?.freshFor : undefined;
}

/** Whether something at `when` is no longer ago than `span`; where minutes are not known, the same day is fresh. */
function isFresh(when: Moment, now: Moment, span: CalendarAmount): boolean {
  if (span.unit !== 'minutes') return now.day <= dayAfter(when.day, span);
  const minutes = minutesBetween(when, now);
  return minutes === null ? when.day === now.day : minutes <= span.count;
}

/** Whether a value lies in a range. */
export function isIn(value: number, range: Range): boolean {
  const aboveFrom = range.from === undefined || (range.fromIncluded ? value >= range.from : value > range.from);
  const belowTo = range.to === undefined || (range.toIncluded ? value <= range.to : value < range.to);
  return aboveFrom && belowTo;
}

/** The band of a task's `reads` that the standing reading falls in; `null` without such a reading, or where no band holds it. */
export function standingBand(
  world: World,
  reads: Reads,
): { readonly index: number; readonly rule: Reads['rules'][number]; readonly point: InstrumentPoint } | null {
  const point = standingReading(world, reads.instrument);
  if (typeof point === 'string') return null;
  const index = reads.rules.findIndex((rule) => isIn(point.value, rule.range));
  const rule = reads.rules[index];
  return rule === undefined ? null : { index, rule, point };
}
