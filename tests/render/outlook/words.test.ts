import { describe, expect, it } from 'vitest';
import type { DateRange } from '../../../src/outlook/forecast.js';
import type { RepairTrend } from '../../../src/outlook/repair-trend.js';
import { daysInWords, likelyInWords, numberAndRange, rangeInWords } from '../../../src/render/outlook/range-in-words.js';
import { defectRow, fluidRow } from '../../../src/render/outlook/use-in-words.js';
import { dayOf } from '../../../src/values/civil.js';
import type { Day } from '../../../src/values/moment.js';
import { namesOf } from '../../../src/explain/names.js';
import { compileText } from '../../support/compile-text.js';

const day = (text: string): Day => dayOf(text) ?? fail(text);
const range = (early: string, likely: string | null, late: string | null): DateRange => ({
  early: day(early),
  likely: likely === null ? null : day(likely),
  late: late === null ? null : day(late),
  level: 0.8,
});
const TO = day('2027-05-11');
const graph = compileText(
  'meter engine "Hours" counts h\ndipstick oil "Oil" low to full is 1 L\ndefect leak "Leak" classes small "Small"\ntask look "Look" every 1 week\n  reads oil\n    below low fine\n    from low fine',
);

function fail(text: string): never {
  throw new Error(`no day: ${text}`);
}

describe('ranges of days', () => {
  it.each([
    ['2026-06-12', '2026-06-12', '12 June 2026'],
    ['2026-06-12', '2026-06-30', '12 to 30 June 2026'],
    ['2026-06-12', '2026-07-03', '12 June to 3 July 2026'],
    ['2026-12-30', '2027-01-02', '30 December 2026 to 2 January 2027'],
  ])('%s to %s', (from, to, words) => {
    expect(daysInWords(day(from), day(to))).toBe(words);
  });

  it('what lies beyond the time looked at is said to, never cut off', () => {
    const open = range('2026-09-27', null, null);
    expect(rangeInWords(open, TO)).toBe('27 September 2026 at the earliest, perhaps after 11 May 2027');
    expect(likelyInWords(open, TO)).toBe('most likely after 11 May 2027');
  });

  it('a day that is certain has no likeliest', () => {
    expect(likelyInWords(range('2026-10-01', '2026-10-01', '2026-10-01'), TO)).toBe('');
    expect(likelyInWords(range('2026-06-12', '2026-06-20', '2026-07-03'), TO)).toBe('most likely 20 June 2026');
  });
});

describe('numbers and what stands behind them', () => {
  it('an interval that is open upwards is said to be', () => {
    expect(numberAndRange(30, { low: 20, high: null }, 0)).toBe('30 (20 or more)');
    expect(numberAndRange(4.25, { low: 3.1, high: 5.5 }, 1)).toBe('4.3 (3.1 to 5.5)');
    expect(numberAndRange(4.25, null)).toBe('4.25');
  });

  it('few levels give a number without an interval, and no date', () => {
    const few = { value: 0.01, range: null, n: 1, of: 'run between two levels', method: 'm' };
    const loss = { litresPerHour: few, litresLeft: 0.5, hoursToLow: { value: 50, range: null }, low: null, levels: 2, topUps: 0 };
    expect(fluidRow({ dipstick: 'oil', meter: 'engine', loss }, namesOf(graph), TO)).toEqual([
      'Oil',
      '1 L in 100 h',
      '0.5 L above low at the last look: 50 h; too few levels for a date',
      '1 run between levels, 0 top-ups',
    ]);
  });

  it('whether repairs come faster is said only where that can be told', () => {
    const trend: RepairTrend = { says: 'too-few', laplace: null, chance: null, growth: null, n: 2, method: 'm' };
    const row = (of: RepairTrend): readonly string[] =>
      defectRow({ defect: 'leak', found: 2, open: true, meter: 'engine', trend: of }, namesOf(graph));
    expect(row(trend)).toEqual(['Leak', 'found 2 times, open now', 'too few to say whether it comes faster', '']);
    const worse: RepairTrend = {
      ...trend,
      says: 'getting-worse',
      laplace: 2,
      chance: 0.046,
      growth: { beta: 2, lambda: 1, between: 31.4 },
      n: 5,
    };
    expect(row(worse).slice(2)).toEqual(['comes faster and faster; now one in 31 h', '5 times counted; by chance 5 times in 100']);
  });
});
