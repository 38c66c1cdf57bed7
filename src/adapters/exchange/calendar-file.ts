import { addDays } from '../../values/calendar.js';
import { formatDate } from '../../values/civil.js';
import type { Day } from '../../values/moment.js';
import { sha256 } from '../../base/sha256.js';
import { calendarText, contentLine } from './content-line.js';

/** One thing to stand in a calendar, on whole days. */
export interface CalendarItem {
  /** See {@link calendarUid}: the same thing has the same uid in every export, so that importing again updates it. */
  readonly uid: string;
  readonly title: string;
  readonly description?: string;
  readonly from: Day;
  /** The last day, included; `from` if not given. */
  readonly to?: Day;
  /** Reminders, in hours before midnight at the beginning of `from`; negative on the day itself (−8: at eight). */
  readonly remindHours?: readonly number[];
}

/** What a calendar file may be told besides its entries. */
export interface CalendarOptions {
  /** When this export was made, in UTC: `2026-05-12T08:30:00Z`. An argument, so that the same input gives the same bytes. */
  readonly stamp: string;
  readonly name?: string;
}

/**
 * The uid of a task of a machine: the same for ever, whatever its due day; tells nothing about the owner.
 *
 * @param machine what tells this machine from every other (its serial number, its logbook's first entry id).
 */
export function calendarUid(machine: string, task: string): string {
  return `${sha256(`${machine}\n${task}`).slice(0, 32)}@duewright`;
}

/**
 * An iCalendar file (RFC 5545) with one all-day event an item, each with its reminders as VALARM.
 *
 * DTEND is the day after the last (§3.6.1: non-inclusive). Events are transparent: a day with a service is not a day that is busy.
 *
 * @throws RangeError if `stamp` is not a UTC time in ISO 8601; that is a bug of the caller.
 */
export function writeCalendar(items: readonly CalendarItem[], options: CalendarOptions): string {
  const stamp = utcStamp(options.stamp);
  const name = options.name === undefined ? '' : contentLine('NAME', calendarText(options.name));
  const head = contentLine('BEGIN', 'VCALENDAR') + contentLine('VERSION', '2.0') + contentLine('PRODID', '-//duewright//duewright//EN');
  const events = items.map((item) => event(item, stamp)).join('');
  return `${head}${contentLine('METHOD', 'PUBLISH')}${name}${events}${contentLine('END', 'VCALENDAR')}`;
}

function event(item: CalendarItem, stamp: string): string {
  const end = addDays(item.to ?? item.from, 1);
  const lines: readonly (readonly [string, string])[] = [
    ['BEGIN', 'VEVENT'],
    ['UID', item.uid],
    ['DTSTAMP', stamp],
    ['LAST-MODIFIED', stamp],
    ['DTSTART;VALUE=DATE', dateValue(item.from)],
    ['DTEND;VALUE=DATE', dateValue(end)],
    ['SUMMARY', calendarText(item.title)],
    ...(item.description === undefined ? [] : ([['DESCRIPTION', calendarText(item.description)]] as const)),
    ['TRANSP', 'TRANSPARENT'],
  ];
  const alarms = (item.remindHours ?? []).map((hours) => alarm(item.title, hours)).join('');
  return lines.map(([name, value]) => contentLine(name, value)).join('') + alarms + contentLine('END', 'VEVENT');
}

function alarm(title: string, hours: number): string {
  return (
    contentLine('BEGIN', 'VALARM') +
    contentLine('ACTION', 'DISPLAY') +
    contentLine('DESCRIPTION', calendarText(title)) +
    contentLine('TRIGGER', duration(-Math.round(hours * 60))) +
    contentLine('END', 'VALARM')
  );
}

/** RFC 5545 §3.3.6. */
function duration(minutes: number): string {
  const size = Math.abs(minutes);
  const [days, hours, rest] = [Math.floor(size / 1440), Math.floor((size % 1440) / 60), size % 60];
  const time = (hours > 0 ? `${hours}H` : '') + (rest > 0 ? `${rest}M` : '');
  const text = (days > 0 ? `${days}D` : '') + (time === '' ? '' : `T${time}`);
  return `${minutes < 0 ? '-' : ''}P${text === '' ? 'T0S' : text}`;
}

function dateValue(day: Day): string {
  return formatDate(day).replaceAll('-', '');
}

function utcStamp(text: string): string {
  const match = /^(\d{4})-(\d{2})-(\d{2})T(\d{2}):(\d{2}):(\d{2})(?:\.\d+)?Z$/.exec(text);
  if (match === null) throw new RangeError(`not a UTC time: ${text}`);
  const [, year, month, day, hour, minute, second] = match;
  return `${year}${month}${day}T${hour}${minute}${second}Z`;
}
