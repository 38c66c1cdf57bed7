/**
 * Civil time as the core counts it: whole days since 1970-01-01 and, where somebody noted it, the minute of the day.
 *
 * No zone, no clock, no library date type: an owner's logbook says "on 11 May at half past eight", and that is all it means.
 */
declare const dayBrand: unique symbol;

/** Days since 1970-01-01 in the proleptic Gregorian calendar; negative before it. */
export type Day = number & { readonly [dayBrand]: true };

/** A day, with the minute of that day (0 to 1439) where one was noted. */
export interface Moment {
  readonly day: Day;
  /** `null`: some time on that day, nobody noted when. */
  readonly minute: number | null;
}
