import { describe, expect, test } from 'vitest';
import { check } from '../../src/check/check.js';
import { checkCatalogue } from '../../src/diagnostics/catalogue/check.js';
import { renderDiagnostics } from '../../src/render/diagnostics.js';
import { plainStyle } from '../../src/render/style.js';
import { readCases, writeExpected } from './case-file.js';

const cases = readCases();
const updating = process.env['UPDATE_CASES'] === '1';

describe('what the author sees', () => {
  test.each(cases.map((each) => [each.name, each] as const))('%s', (_name, each) => {
    const { diagnostics, sources } = check(each.first, (path) => each.files.get(path));
    const shown = renderDiagnostics(diagnostics, sources, plainStyle(140));
    if (updating) writeExpected(each, shown);
    else expect(shown).toBe(each.expected);
    // A case that asserts nothing would pass whatever happened.
    expect(shown).not.toBe('');
  });

  test('there are at least forty', () => expect(cases.length).toBeGreaterThanOrEqual(40));

  test('every code has a case, and every case a code of the catalogue', () => {
    const seen = new Set(
      cases.flatMap(({ expected }) => [...expected.matchAll(/^\S+: (?:error|warning|note) (DW2\d\d):/gm)].map((match) => match[1])),
    );
    expect([...seen].sort()).toEqual(
      Object.values(checkCatalogue)
        .map(({ code }) => code)
        .sort(),
    );
  });

  test('three mistakes that have nothing to do with each other are all told, each in its line', () => {
    const three = cases.find(({ name }) => name === 'three-mistakes');
    const lines = [...(three?.expected ?? '').matchAll(/^tractor\.due:(\d+):\d+: error (DW\d+)/gm)].map(
      (match) => `${match[1]} ${match[2]}`,
    );
    expect(lines).toEqual(['10 DW220', '11 DW240', '16 DW250']);
  });

  test('a mistake is followed by at most 0.2 others', () => {
    // Cases that seed more than one mistake say how many.
    const seeded: Readonly<Record<string, number>> = {
      'three-mistakes': 3,
      'follow-on': 8,
      'after-itself': 3,
      'half-months-and-times': 8,
      standstill: 4,
      'example-names': 3,
      'walk-to-itself': 2,
      'calendar-weeks': 2,
      'weekday-unclear': 13,
      'so-many-times': 7,
    };
    const meant = cases.reduce((sum, { name }) => sum + (seeded[name] ?? 1), 0);
    const told = cases.reduce((sum, { expected }) => sum + [...expected.matchAll(/^\S+:\d+:\d+: (?:error|warning|note) DW/gm)].length, 0);
    expect((told - meant) / meant).toBeLessThanOrEqual(0.2);
  });
});
