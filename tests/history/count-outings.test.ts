/** A meter that counts from outings, in the middle of one (docs/meaning.md §2). */
import { describe, expect, test } from 'vitest';
import { cutOuting, minuteReached } from '../../src/history/count-outings.js';
import { meterAt } from '../../src/history/meter-at.js';
import type { MeterPoint } from '../../src/history/timeline.js';
import { TICKS_PER_MINUTE } from '../../src/values/ticks.js';
import { moment } from '../support/history.js';

const HOUR = 60 * TICKS_PER_MINUTE;

/** An outing that brought a meter to so many hours, `took` of them its own. */
function outing(begins: string, ends: string, hours: number, took: number): MeterPoint {
  const passed = { since: moment(begins), ticks: took * HOUR };
  return { entry: 'o', when: moment(ends), total: hours * HOUR, shown: hours, alongside: [], passed };
}

const fourHours = outing('2026-05-02 08:00', '2026-05-02 12:00', 5, 4);
const reading: MeterPoint = { entry: 'r', when: moment('2026-05-02 12:00'), total: 5 * HOUR, shown: 5, alongside: [] };

describe('in the middle of an outing', () => {
  const at = (when: string, of: MeterPoint | undefined = fourHours) => {
    const point = cutOuting(of, moment(when));
    return point === null ? null : [point.total / HOUR, point.shown, point.when];
  };

  test('so much of it has passed as of its minutes', () => {
    expect(at('2026-05-02 09:00')).toEqual([2, 2, moment('2026-05-02 09:00')]);
    expect(at('2026-05-02 11:30')).toEqual([4.5, 4.5, moment('2026-05-02 11:30')]);
    // Two hours of work in four by the clock.
    expect(at('2026-05-02 10:00', outing('2026-05-02 08:00', '2026-05-02 12:00', 5, 2))?.[0]).toBe(4);
  });

  test('nothing has before it began, nor where it begins', () => {
    expect(at('2026-05-02 08:00')).toBeNull();
    expect(at('2026-05-02 07:00')).toBeNull();
  });

  test('nothing is told where a minute is not known, nor of a reading', () => {
    expect(at('2026-05-02')).toBeNull();
    expect(at('2026-05-02 09:00', outing('2026-05-02', '2026-05-02 12:00', 5, 4))).toBeNull();
    expect(at('2026-05-02 09:00', outing('2026-05-02 08:00', '2026-05-02', 5, 4))).toBeNull();
    expect(at('2026-05-02 09:00', reading)).toBeNull();
    expect(cutOuting(undefined, moment('2026-05-02 09:00'))).toBeNull();
  });
});

describe('the first minute by which a meter came to so much', () => {
  const when = (hours: number, of: MeterPoint = fourHours) => minuteReached(of, hours * HOUR).when;

  test('lies in the outing that brought it there', () => {
    expect(when(3)).toEqual(moment('2026-05-02 10:00'));
    expect(when(5)).toEqual(moment('2026-05-02 12:00'));
    expect(minuteReached(fourHours, 3 * HOUR + 1).when).toEqual(moment('2026-05-02 10:01'));
    expect(minuteReached(fourHours, 3 * HOUR)).toEqual({ ...fourHours, when: moment('2026-05-02 10:00') });
  });

  test('is not before that began', () => expect(when(0.5)).toEqual(moment('2026-05-02 08:00')));

  test('is that of the point where minutes do not tell, where no time passed, or of a reading', () => {
    expect(when(3, outing('2026-05-02', '2026-05-02 12:00', 5, 4))).toEqual(moment('2026-05-02 12:00'));
    expect(when(3, outing('2026-05-02 08:00', '2026-05-03', 5, 4))).toEqual(moment('2026-05-03'));
    expect(when(3, outing('2026-05-02 08:00', '2026-05-02 12:00', 5, 0))).toEqual(moment('2026-05-02 12:00'));
    expect(when(3, reading)).toEqual(moment('2026-05-02 12:00'));
  });
});

test('between two outings it stands where the first left it, and within one so far as that has come', () => {
  const points = [outing('2026-05-02 08:00', '2026-05-02 10:00', 2, 2), outing('2026-05-03 08:00', '2026-05-03 12:00', 6, 4)];
  const at = (when: string) => (meterAt({ points }, moment(when), cutOuting)?.total ?? -HOUR) / HOUR;
  expect(['2026-05-01', '2026-05-02 08:00', '2026-05-02 09:00', '2026-05-02 10:00', '2026-05-02 20:00'].map(at)).toEqual([-1, -1, 1, 2, 2]);
  expect(['2026-05-03 08:00', '2026-05-03 10:00', '2026-05-03 12:00', '2026-05-04'].map(at)).toEqual([2, 4, 6, 6]);
});
