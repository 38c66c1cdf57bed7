import { describe, expect, test } from 'vitest';
import { parseMinute, parseWhen } from '../../../src/adapters/cli/parse-when.js';
import { dayOf } from '../../../src/values/civil.js';

describe('parseWhen', () => {
  test.each([
    ['2026-06-15', '2026-06-15', null],
    ['2026-06-15 07:30', '2026-06-15', 450],
    ['2026-06-15T23:59', '2026-06-15', 1439],
    [' 2024-02-29  7:05 ', '2024-02-29', 425],
  ])('reads %s', (text, day, minute) => {
    expect(parseWhen(text)).toEqual({ ok: true, value: { day: dayOf(day), minute } });
  });

  test.each([
    ['2025-02-29', /There is no day `2025-02-29`: that month ends with day 28/],
    ['2025-13-01', /There is no day `2025-13-01`\./],
    ['15/06/2026', /not a date/],
    ['tomorrow', /not a date/],
    ['2026-06-15 25:00', /no time of day/],
    ['2026-06-15 07:30 09:00', /no time of day/],
    ['', /not a date/],
  ])('refuses %s', (text, message) => {
    const parsed = parseWhen(text);
    expect(parsed.ok ? '' : parsed.problem).toMatch(message);
  });

  test('knows the minutes of a day and no others', () => {
    expect(['00:00', '8:05', '23:59'].map(parseMinute)).toEqual([0, 485, 1439]);
    expect(['24:00', '12:60', '12', '12:5', '012:05'].map(parseMinute)).toEqual([null, null, null, null, null]);
  });
});
