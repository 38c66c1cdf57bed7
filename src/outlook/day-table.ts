import { FAR } from './due-days.js';

/** What follows on each day of a time, worked out when it is first asked for: along a thousand futures the same few hundred days come up again. */
export interface DayTable {
  readonly from: number;
  /** 0 where it has not been asked for. */
  readonly days: Int32Array;
  readonly next: (day: number) => number;
}

/** A table for the days `from` to `to`. */
export function dayTable(from: number, to: number, next: (day: number) => number): DayTable {
  return { from, days: new Int32Array(Math.max(0, to - from) + 1), next };
}

/** The day that follows on `day`, which lies within the table. */
export function lookUp({ from, days, next }: DayTable, day: number): number {
  const known = days[day - from] ?? 0;
  if (known !== 0) return known;
  return (days[day - from] = Math.min(FAR, next(day)));
}
