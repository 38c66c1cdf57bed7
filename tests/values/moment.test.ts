import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Day, Moment } from '../../src/values/moment.js';
import {
  addMinutes,
  compareMoments,
  countsAt,
  formatTime,
  isAfter,
  minutesBetween,
  notBefore,
  onDay,
  parseTime,
} from '../../src/values/moment.js';

const at = (day: number, minute: number | null): Moment => ({ day: day as Day, minute });
const moment = fc
  .record({ day: fc.integer({ min: 0, max: 3 }), minute: fc.option(fc.integer({ min: 0, max: 3 })) })
  .map(({ day, minute }) => at(day, minute));

describe('before and after (docs/meaning.md §1)', () => {
  test('two things on one day without minutes are both "not before" each other', () => {
    expect([notBefore(at(1, null), at(1, 600)), notBefore(at(1, 600), at(1, null))]).toEqual([true, true]);
    expect([isAfter(at(1, null), at(1, 600)), isAfter(at(1, 600), at(1, null))]).toEqual([false, false]);
  });
  test('minutes decide where both have them', () => {
    expect([isAfter(at(1, 601), at(1, 600)), notBefore(at(1, 600), at(1, 600)), notBefore(at(1, 599), at(1, 600))]).toEqual([
      true,
      true,
      false,
    ]);
  });
  test('an entry on the day of now counts unless its minute is later', () => {
    expect([
      countsAt(at(2, 700), at(2, 699)),
      countsAt(at(2, 700), at(2, 700)),
      countsAt(at(2, null), at(2, 0)),
      countsAt(at(2, 700), onDay(2 as Day)),
      countsAt(at(3, null), at(2, null)),
    ]).toEqual([false, true, true, true, false]);
  });
  test('the sorting order is total and never contradicts "after"', () => {
    fc.assert(
      fc.property(moment, moment, moment, (a, b, c) => {
        expect(Math.sign(compareMoments(a, b))).toBe(-Math.sign(compareMoments(b, a)) + 0);
        if (compareMoments(a, b) <= 0 && compareMoments(b, c) <= 0) expect(compareMoments(a, c)).toBeLessThanOrEqual(0);
        if (isAfter(b, a)) expect(compareMoments(a, b)).toBeLessThan(0);
      }),
    );
  });
  test('minutes go over midnight', () => {
    expect(addMinutes(at(1, 1430), 20)).toEqual(at(2, 10));
    expect(addMinutes(at(1, 10), -20)).toEqual(at(0, 1430));
    expect(minutesBetween(at(1, 1430), at(2, 10))).toBe(20);
    expect(minutesBetween(at(1, null), at(2, 10))).toBeNull();
  });
  test('times of day there and back', () => {
    for (let minute = 0; minute < 1440; minute++) expect(parseTime(formatTime(minute))).toBe(minute);
    expect(['24:00', '7:30', '07:60', '07:30 ', ''].map(parseTime)).toEqual([null, null, null, null, null]);
  });
});
