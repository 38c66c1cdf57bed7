import { assertNever } from '../../base/assert-never.js';
import type { DuePoint } from '../../engine.js';
import type { RuleGraph } from '../../engine.js';
import { formatDate } from '../../values/civil.js';
import { formatTime } from '../../values/moment.js';
import type { Moment } from '../../values/moment.js';
import { durationText, numberText } from '../../values/number-text.js';
import { unitsOf } from '../../values/ticks.js';
import type { RecordedWork, Timing } from './service-record.js';

/** `2026-05-13 07:40`; without the time where nobody noted it. */
export function whenText({ day, minute }: Moment): string {
  return minute === null ? formatDate(day) : `${formatDate(day)} ${formatTime(minute)}`;
}

/** `on time, due at 1300 h of engine`, `late by 3 days, due on 2026-05-10`. */
export function timingText(timing: Timing, graph: RuleGraph): string {
  switch (timing.is) {
    case 'on-time':
      return timing.due === null ? 'on time' : `on time, due ${pointText(timing.due, graph)}`;
    case 'late':
      return `late${timing.by === null || timing.due === null ? '' : ` by ${lengthText(timing.by, timing.due, graph)}`}${timing.due === null ? '' : `, due ${pointText(timing.due, graph)}`}`;
    case 'first-on-record':
      return 'first on record';
    case 'cannot-tell':
      return 'cannot be told: a reading is missing';
    case 'not-asked-for':
      return 'not asked for by the schedule at that time';
    default:
      return assertNever(timing);
  }
}

/** `1304 h of engine, 210 h of shaft`, in the order noted. */
export function shownText(work: RecordedWork, graph: RuleGraph): string {
  return Object.entries(work.shown)
    .map(([meter, value]) => `${numberText(value)} ${unitOf(graph, meter)} of ${meter}`)
    .join(', ');
}

/** `6.6 L engine-oil-15w40, 1 oil-filter`. */
export function usedText(work: RecordedWork, graph: RuleGraph): string {
  const unit = (supply: string): string => graph.supplies.find(({ id }) => id === supply)?.unit ?? '';
  return Object.entries(work.used)
    .map(([supply, amount]) => [numberText(amount), unit(supply), supply].filter((part) => part !== '').join(' '))
    .join(', ');
}

function pointText(point: DuePoint, graph: RuleGraph): string {
  switch (point.on) {
    case 'meter':
      return `at ${numberText(unitsOf(point.ticks))} ${unitOf(graph, point.meter)} of ${point.meter}`;
    case 'calendar':
      return point.goodThrough ? `good through ${formatDate(point.day)}` : `on ${formatDate(point.day)}`;
    case 'moment':
      return `on ${whenText(point.at)}`;
    case 'work':
      return `at ${durationText(point.ticks)} of work${point.duty === null ? '' : ` in ${point.duty}`}`;
    default:
      return assertNever(point);
  }
}

function lengthText(length: number, point: DuePoint, graph: RuleGraph): string {
  switch (point.on) {
    case 'meter':
      return `${numberText(unitsOf(length))} ${unitOf(graph, point.meter)}`;
    case 'calendar':
      return length === 1 ? '1 day' : `${length} days`;
    case 'moment':
      return `${length} min`;
    case 'work':
      return durationText(length);
    default:
      return assertNever(point);
  }
}

function unitOf(graph: RuleGraph, meter: string): string {
  return graph.meters.find(({ id }) => id === meter)?.unit ?? 'h';
}
