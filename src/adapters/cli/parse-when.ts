import { parseDate } from '../../values/civil.js';
import type { Moment } from '../../values/moment.js';
import { type Parsed, refused, understood } from './parsed.js';

/**
 * Reads a moment: `2026-06-15`, `2026-06-15 07:30` or `2026-06-15T07:30`. Without a time it is some time on that day.
 */
export function parseWhen(text: string): Parsed<Moment> {
  const [date = '', time, ...rest] = text.trim().split(/[ T]+/);
  const parsed = parseDate(date);
  const minute = time === undefined ? null : parseMinute(time);
  switch (parsed.kind) {
    case 'not-a-date':
      return refused(`\`${text}\` is not a date: write it like 2026-06-15 or "2026-06-15 07:30".`);
    case 'no-such-day':
      return refused(`There is no day \`${date}\`${parsed.lastDay === null ? '' : `: that month ends with day ${parsed.lastDay}`}.`);
    case 'date':
      if (rest.length > 0 || (time !== undefined && minute === null)) return refused(`\`${text}\` has no time of day from 00:00 to 23:59.`);
      return understood({ day: parsed.day, minute });
  }
}

/** The minute of the day that `HH:MM` names; `null` if it names none. */
export function parseMinute(text: string): number | null {
  const match = /^([01]?\d|2[0-3]):([0-5]\d)$/.exec(text);
  return match === null ? null : Number(match[1]) * 60 + Number(match[2]);
}
