import { dayOf, formatDate } from '../../values/civil.js';
import { formatTime } from '../../values/moment.js';

/** A civil day and time, as an entry has them. */
export interface LocalMoment {
  readonly on: string;
  readonly at: string;
}

/**
 * The civil day and time of an instant in ISO 8601 with an offset (`2026-05-12T06:30:00Z`), or `null` if it is none.
 *
 * @param zone an IANA time zone, where the machine stands; without it the day and time are taken as they are written.
 * @throws RangeError for a zone that does not exist.
 */
export function localMoment(text: string, zone?: string): LocalMoment | null {
  const match = /^(\d{4}-\d{2}-\d{2})T(\d{2}):(\d{2})(?::\d{2}(?:\.\d+)?)?(Z|[+-]\d{2}:?\d{2})$/.exec(text.trim());
  const [, date = '', hour = '', minute = ''] = match ?? [];
  if (match === null || dayOf(date) === null || Number(hour) > 23 || Number(minute) > 59) return null;
  // The year 1 stands for "never" in some feeds.
  if (date < '1970') return null;
  if (zone === undefined) return { on: date, at: `${hour}:${minute}` };
  const instant = Date.parse(text.trim());
  return Number.isNaN(instant) ? null : inZone(instant, zone);
}

function inZone(instant: number, zone: string): LocalMoment | null {
  const format = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    calendar: 'iso8601',
    hourCycle: 'h23',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
  });
  const parts = new Map(format.formatToParts(instant).map((part) => [part.type, part.value]));
  const day = dayOf(`${(parts.get('year') ?? '').padStart(4, '0')}-${parts.get('month')}-${parts.get('day')}`);
  return day === null ? null : { on: formatDate(day), at: formatTime(Number(parts.get('hour')) * 60 + Number(parts.get('minute'))) };
}
