import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Unit } from '../../src/values/units.js';
import { calendarUnit, convert, convertDifference, dimensionName, findUnit, UNITS, unitSpellings } from '../../src/values/units.js';

function unit(spelling: string): Unit {
  const found = findUnit(spelling);
  if (found === null) throw new Error(`no unit ${spelling}`);
  return found;
}

describe('conversion', () => {
  // NIST SP 811 (2008), Appendix B.8; NIST Handbook 44, Appendix C. From memory where the last digits are exact definitions.
  test.each([
    [1, 'lbf·ft', 'N·m', 1.355_817_948_331_4],
    [1, 'lbf·in', 'N·m', 0.112_984_829],
    [1, 'kgf·m', 'N·m', 9.806_65],
    [1, 'psi', 'kPa', 6.894_757],
    [1, 'bar', 'kPa', 100],
    [1, 'gal', 'L', 3.785_411_784],
    [1, 'qt', 'L', 0.946_352_946],
    [1, 'fl-oz', 'mL', 29.573_529_562_5],
    [1, 'gal-uk', 'L', 4.546_09],
    [1, 'm³', 'L', 1000],
    [1, 'in', 'mm', 25.4],
    [1, 'ft', 'in', 12],
    [1, 'mi', 'km', 1.609_344],
    [1, 'mi', 'ft', 5280],
    [1, 'lb', 'kg', 0.453_592_37],
    [1, 'acre', 'ha', 0.404_685_6],
    [212, '°F', '°C', 100],
    [32, '°F', '°C', 0],
    [-40, '°F', '°C', -40],
    [0, 'K', '°C', -273.15],
    [1, 'h', 'min', 60],
    [2, 'weeks', 'days', 14],
  ])('%d %s = %s %d', (value, from, to, result) => {
    expect(convert(value, unit(from), unit(to))).toBeCloseTo(result, 6);
  });
  test('the exact definitions are exact', () => {
    expect([
      convert(1, unit('in'), unit('mm')),
      convert(1, unit('gal'), unit('L')),
      convert(212, unit('°F'), unit('°C')),
      convert(1, unit('ft'), unit('in')),
    ]).toEqual([25.4, 3.785411784, 100, 12]);
    expect(convert(1, unit('psi'), unit('kPa'))).toBeCloseTo(6.894_757_293_168_36, 13);
  });
  test('a difference of 18 °F is one of 10 °C', () => {
    expect(convertDifference(18, unit('°F'), unit('°C'))).toBe(10);
    expect(convertDifference(10, unit('K'), unit('°C'))).toBe(10);
  });
  test('goes there and back', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...UNITS),
        fc.constantFrom(...UNITS),
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        (from, to, value) => {
          const there = convert(value, from, to);
          if (there === null) return;
          expect(convert(there, to, from)).toBeCloseTo(value, 6);
        },
      ),
    );
  });
  test('refuses what has no fixed factor or measures something else', () => {
    expect(convert(1, unit('months'), unit('days'))).toBeNull();
    expect(convert(1, unit('kPa'), unit('°C'))).toBeNull();
    expect(convert(3, unit('months'), unit('month'))).toBe(3);
    expect(convert(1, unit('cycles'), unit('bales'))).toBeNull();
  });
});

describe('the table', () => {
  test('has no spelling twice and a name for each dimension', () => {
    const spellings = UNITS.flatMap((each) => [each.symbol, ...each.aliases]);
    expect(new Set(spellings).size).toBe(spellings.length);
    expect(unitSpellings()).toEqual(spellings);
    for (const each of UNITS) expect(dimensionName(each.dimension)).toMatch(/^an? /);
  });
  test('tells calendar units apart', () => {
    expect(['day', 'weeks', 'month', 'years', 'calendar months', 'h'].map((spelling) => calendarUnit(unit(spelling)))).toEqual([
      { unit: 'days', count: 1 },
      { unit: 'days', count: 7 },
      { unit: 'months', count: 1 },
      { unit: 'months', count: 12 },
      { unit: 'calendar-months', count: 1 },
      null,
    ]);
    expect(findUnit('mpa')).toBeNull();
    expect(findUnit('__proto__')).toBeNull();
  });
});
