/**
 * When an entry happened.
 */
import type { Entry } from '../history/entry.js';
import { dayOf } from '../values/civil.js';
import type { Moment } from '../values/moment.js';

/** Its date and, where noted, its minute; `null` for a date that does not exist. */
export function entryMoment(entry: Entry): Moment | null {
  const day = dayOf(entry.on);
  if (day === null) return null;
  return { day, minute: entry.at === undefined ? null : Number(entry.at.slice(0, 2)) * 60 + Number(entry.at.slice(3, 5)) };
}
