import type { Entry } from '../../src/history/entry.js';
import { dayOf } from '../../src/values/civil.js';
import { type Moment, parseTime } from '../../src/values/moment.js';

type DistributiveOmit<T, K extends keyof never> = T extends unknown ? Omit<T, K> : never;

/** `2026-05-11` or `2026-05-11 08:30` as a moment. */
export function moment(text: string): Moment {
  const [date = '', time] = text.split(' ');
  const day = dayOf(date);
  if (day === null) throw new Error(`no such day: ${text}`);
  return { day, minute: time === undefined ? null : parseTime(time) };
}

/** What happened when, without ids. */
export type Happenings = readonly (readonly [when: string, entry: DistributiveOmit<Entry, 'id' | 'on' | 'at'>])[];

/** Gives each entry an id (`e1`, `e2`, …) and its date and time from a text. */
export function history(...entries: Happenings): readonly Entry[] {
  return entries.map(([when, entry], i) => {
    const [on = '', at] = when.split(' ');
    return { id: `e${i + 1}`, on, ...(at === undefined ? {} : { at }), ...entry };
  });
}

/** `done('oil', { engine: 1200 })`. */
export function done(tasks: string | readonly string[], meters?: Record<string, number>): DistributiveOmit<Entry, 'id' | 'on' | 'at'> {
  return { kind: 'done', tasks: typeof tasks === 'string' ? [tasks] : [...tasks], ...(meters === undefined ? {} : { meters }) };
}

/** A reading of meters. */
export function meters(values: Record<string, number>): DistributiveOmit<Entry, 'id' | 'on' | 'at'> {
  return { kind: 'reading', meters: values };
}

/** A reading of gauges and dipsticks. */
export function reads(
  values: Record<string, number | 'below-low' | 'low' | 'full' | 'above-full'>,
): DistributiveOmit<Entry, 'id' | 'on' | 'at'> {
  return { kind: 'reading', readings: values };
}

/** An entry as it stands, for adding to a history. */
export function entry(whole: Entry): Entry {
  return whole;
}
