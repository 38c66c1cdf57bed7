/**
 * The catalogue: complete, and its syntax examples as wrong and as right as they claim.
 */
import { describe, expect, test } from 'vitest';
import { catalogue, catalogueEntry } from '../../src/diagnostics/catalogue.js';
import { syntaxCatalogue } from '../../src/diagnostics/catalogue/syntax.js';
import { parse } from '../../src/syntax/parse.js';

test('codes are unique and well formed', () => {
  const codes = catalogue.map((each) => each.code);
  expect(new Set(codes).size).toBe(codes.length);
  expect(codes.filter((each) => !/^DW\d{3}$/.test(each))).toEqual([]);
  expect(catalogueEntry('DW112')?.title).toContain('misspelt');
  expect(catalogueEntry('DW000')).toBeUndefined();
});

test('titles are one line without a full stop, explanations end with one', () => {
  for (const each of catalogue) {
    expect(each.title, each.code).toMatch(/^[^\n]*[^.\n]$/);
    expect(each.explanation, each.code).toMatch(/\.$/);
  }
});

describe('the examples of each syntax entry', () => {
  const frames = ['', 'schedule t "T" ', 'schedule t "T" task a "A" '];
  const codesIn = (text: string, frame: string) => parse(frame + text).diagnostics.map((each) => each.code);
  // A whole file cannot stand in a page: these are made in tests/syntax/hostile.test.ts.
  const shown = Object.values(syntaxCatalogue).filter((each) => !['DW101', 'DW119'].includes(each.code));

  test.each(shown.map((each) => [each.code, each] as const))('%s', (code, entry) => {
    const limits = frames.map((frame) => codesIn(entry.wrong, frame));
    expect(
      limits.some((codes) => codes.includes(code)),
      entry.wrong,
    ).toBe(true);
    expect(
      frames.some((frame) => codesIn(entry.right, frame).length === 0),
      entry.right,
    ).toBe(true);
  });
});
