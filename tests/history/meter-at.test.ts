import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { meterAt } from '../../src/history/meter-at.js';
import type { MeterPoint } from '../../src/history/timeline.js';
import { compareMoments, type Day, type Moment, notBefore } from '../../src/values/moment.js';
import { moment } from '../support/history.js';

function track(...whens: readonly Moment[]): { readonly points: readonly MeterPoint[] } {
  return { points: whens.map((when, index) => ({ entry: `p${index}`, when, total: index, shown: index, alongside: [] })) };
}

describe('the last point at a moment', () => {
  const points = track(moment('2026-05-01'), moment('2026-05-02 08:00'), moment('2026-05-02 10:00'), moment('2026-05-04'));
  test.each([
    ['2026-04-30', undefined],
    ['2026-05-01 06:00', 'p0'],
    ['2026-05-02 07:59', 'p0'],
    ['2026-05-02 08:00', 'p1'],
    ['2026-05-02 09:59', 'p1'],
    ['2026-05-02', 'p2'],
    ['2026-05-03', 'p2'],
    ['2026-05-04 00:00', 'p3'],
    ['2026-06-01', 'p3'],
  ])('at %s it is %s', (when, entry) => {
    expect(meterAt(points, moment(when))?.entry).toBe(entry);
  });

  test('there is none where nothing was read', () => {
    expect(meterAt(track(), moment('2026-05-01'))).toBeNull();
  });

  test('is what looking at each from the end finds', () => {
    const anyMoment = fc.record({
      day: fc.integer({ min: 1, max: 6 }).map((day) => day as Day),
      minute: fc.constantFrom(null, 0, 600, 1200),
    });
    fc.assert(
      fc.property(fc.array(anyMoment, { maxLength: 12 }), anyMoment, (whens, when) => {
        const sorted = track(...[...whens].sort(compareMoments));
        expect(meterAt(sorted, when)).toBe(sorted.points.findLast((point) => notBefore(when, point.when)) ?? null);
      }),
    );
  });
});
