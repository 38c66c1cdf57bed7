/**
 * The layout over sentences that the published grammar derives, with white space and comments anywhere, and with slips in them.
 *
 * `DUEWRIGHT_RUNS=100000` runs so many of each, which takes minutes.
 */
import { readdirSync, readFileSync } from 'node:fs';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { format } from '../../src/format/format.js';
import { parse } from '../../src/syntax/parse.js';
import { derive, numbersFrom } from '../grammar/derive.js';
import { readEbnf } from '../grammar/ebnf.js';
import { commentsIn, inkOf, scatter } from './scatter.js';

const numRuns = Number(process.env['DUEWRIGHT_RUNS'] ?? 1_000);
const timeout = 60_000 + numRuns * 40;
const rules = readEbnf();
const schedules = new URL('../../schedules/', import.meta.url);

function laidOut(text: string): string {
  const result = format(text);
  if (!('text' in result)) throw new Error(`${result.diagnostics.map(({ message }) => message).join('\n')}\n${text}`);
  return result.text;
}

/** The tree as JSON, its positions and comments left out: read here apart from how the layout checks itself. */
function meaning(text: string): unknown {
  const strip = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(strip);
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(
      Object.entries(value)
        .filter(([key]) => key !== 'at' && key !== 'comments')
        .map(([key, each]) => [key, strip(each)]),
    );
  };
  return strip(parse(text).file);
}

describe('whatever the grammar derives, laid out', () => {
  test(
    'says the same, keeps every comment in its place, and stays as it is when laid out again',
    () => {
      let remarks = 0;
      fc.assert(
        fc.property(fc.nat(), (seed) => {
          const random = numbersFrom(seed);
          const text = scatter(derive(rules, 'File', random, 4), random, { comments: 0.12, emptyLines: true });
          const once = laidOut(text);
          remarks += commentsIn(text).length;
          expect(inkOf(once)).toEqual(inkOf(text));
          expect(meaning(once)).toEqual(meaning(text));
          expect(laidOut(once)).toBe(once);
        }),
        { numRuns, seed: 20261125 },
      );
      expect(remarks).toBeGreaterThan(numRuns);
    },
    timeout,
  );

  test(
    'comes out the same however it was written',
    () => {
      fc.assert(
        fc.property(fc.nat(), fc.nat(), fc.nat(), (seed, one, other) => {
          const tokens = derive(rules, 'File', numbersFrom(seed), 4);
          const plain = { comments: 0, emptyLines: false };
          expect(laidOut(scatter(tokens, numbersFrom(one), plain))).toBe(laidOut(scatter(tokens, numbersFrom(other), plain)));
        }),
        { numRuns, seed: 20261126 },
      );
    },
    timeout,
  );

  test(
    'keeps to the width wherever a line can be broken',
    () => {
      fc.assert(
        fc.property(fc.nat(), (seed) => {
          const text = laidOut(derive(rules, 'File', numbersFrom(seed), 6).join(' '));
          const wide = text.split('\n').filter((each) => [...each].length > 120);
          // A comma within a text is not one of a list.
          for (const line of wide)
            expect(
              line.replace(/"(?:[^"\\]|\\.)*"/g, (quoted) => quoted.replaceAll(',', ';')),
              'a list',
            ).not.toMatch(/, .{100}/);
          expect(text).not.toMatch(/[ \t]\n|\n\n\n|^\n/);
        }),
        { numRuns: numRuns / 5, seed: 20261127 },
      );
    },
    timeout,
  );
});

/** One slip: a token left out, written twice, or swapped with the next. */
function slip(tokens: readonly string[], random: () => number): readonly string[] {
  const at = Math.floor(random() * tokens.length);
  const [here = '', next = ''] = tokens.slice(at, at + 2);
  const instead = [[next], [here, here, next], [next, here]][Math.floor(random() * 3)] ?? [];
  return [...tokens.slice(0, at), ...instead, ...tokens.slice(at + 2)].filter((each) => each !== '');
}

describe('a text with slips in it', () => {
  test(
    'is laid out if it can still be read, and otherwise left alone with the reasons',
    () => {
      const seen = { read: 0, refused: 0 };
      fc.assert(
        fc.property(fc.nat(), (seed) => {
          const random = numbersFrom(seed);
          const tokens = slip(derive(rules, 'File', random, 3), random);
          const text = scatter(tokens, random, { comments: 0.05, emptyLines: true });
          const result = format(text);
          if ('text' in result) {
            seen.read += 1;
            expect(inkOf(result.text)).toEqual(inkOf(text));
            expect(laidOut(result.text)).toBe(result.text);
          } else {
            seen.refused += 1;
            expect(result.diagnostics.length).toBeGreaterThan(0);
          }
        }),
        { numRuns, seed: 20261128 },
      );
      expect(Math.min(seen.read, seen.refused)).toBeGreaterThan(numRuns / 20);
    },
    timeout,
  );
});

describe.each((readdirSync(schedules, { recursive: true }) as string[]).filter((file) => file.endsWith('.due')))('%s', (file) => {
  test('says the same when laid out, and comes out the same from any other layout', () => {
    const text = readFileSync(new URL(file, schedules), 'utf8');
    const once = laidOut(text);
    expect(inkOf(once)).toEqual(inkOf(text));
    expect(laidOut(once)).toBe(once);
    const words = inkOf(text).filter((each) => !each.startsWith('#'));
    const plain = { comments: 0, emptyLines: false };
    expect(laidOut(scatter(words, numbersFrom(text.length), plain))).toBe(laidOut(scatter(words, numbersFrom(text.length + 1), plain)));
  });
});
