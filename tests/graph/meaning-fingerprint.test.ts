import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { meaningFingerprint } from '../../src/graph/meaning-fingerprint.js';
import { graphOfText } from '../compile/compile-files.js';

const declarations = [
  'meter engine "Hour meter" counts h',
  'gauge coolant "Coolant" reads °C normal 75 to 90',
  'duty dusty "Dusty"',
  'supply oil "Oil" in L',
  'event refit "Refitted"',
  'defect seep "Seep" classes wet, drops drops hold "Stop." then grease now',
  'position guard closed, open',
  'at rest guard closed',
  'step swing "Swing the guard" guard closed to open takes 1 min',
  'stop hot "Hot" when coolant above 105 and guard closed',
  'task grease "Grease" every 50 h of engine or 6 months, whichever first in dusty every 25 h of engine takes 5 min with guard open',
  'task oil "Oil" first at 50 h of engine every 100 h of engine covers grease uses 6 L oil follows nuts',
  'task nuts "Nuts" at 1 h of engine, 10 h of engine after refit when coolant above normal before each outing',
];

const header = 'schedule tractor "Tractor" language 1 edition 1 of 2026-02-14 by "M" fits model "Tarn 55"';
const plain = meaningFingerprint(graphOfText(declarations.join('\n'), header));

describe('the fingerprint of meaning', () => {
  test('layout, comments and the order of declarations leave it alone', () => {
    const gap = fc.constantFrom(' ', '\n', '\n\n  ', ' # a comment with "quotes"\n', '\t');
    const order = fc.shuffledSubarray(declarations, { minLength: declarations.length });
    fc.assert(
      fc.property(order, fc.infiniteStream(gap), (shuffled, gaps) => {
        const text = shuffled.join('\n').replace(/ (?=(?:[^"]*"[^"]*")*[^"]*$)/g, () => gaps.next().value as string);
        return meaningFingerprint(graphOfText(text, header)) === plain;
      }),
      { numRuns: 60 },
    );
  });

  test('another edition that says the same means the same', () => {
    expect(
      meaningFingerprint(graphOfText(declarations.join('\n'), header.replace('edition 1 of 2026-02-14', 'edition 2 of 2026-11-02'))),
    ).toBe(plain);
  });

  test.each([
    ['50 h of engine or', '51 h of engine or'],
    ['whichever first', 'whichever last'],
    ['coolant above 105', 'coolant at least 105'],
    ['and guard closed', 'or guard closed'],
    ['covers grease', 'restarts grease'],
    ['6 L oil', '7 L oil'],
    ['"Grease"', '"Grease well"'],
    ['takes 5 min', 'takes 6 min'],
    ['hold "Stop."', 'caution "Stop."'],
    ['after refit', 'after refit allow 1 h late'],
  ])('%s → %s changes it', (from, to) => {
    const text = declarations.join('\n');
    expect(text).toContain(from);
    expect(meaningFingerprint(graphOfText(text.replace(from, to), header))).not.toBe(plain);
  });
});
