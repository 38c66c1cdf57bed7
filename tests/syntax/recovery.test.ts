/**
 * One slip of the pen in a real schedule: it is told where it is, told once, and its fix puts it right.
 */
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Diagnostic, Fix } from '../../src/diagnostics/diagnostic.js';
import { parse } from '../../src/syntax/parse.js';
import { reservedWords } from '../../src/syntax/words.js';
import { readCases } from './case-file.js';

const [first] = readCases(new URL('../cases/syntax/long-example.txt', import.meta.url).pathname);
const input = first?.input ?? '';
const words = [...input.matchAll(/[a-z][a-z-]*/g)].filter((each) => reservedWords.has(each[0]) && !inTextOrComment(each.index));

function inTextOrComment(offset: number): boolean {
  const line = input.slice(input.lastIndexOf('\n', offset) + 1, offset);
  return (line.match(/"/g)?.length ?? 0) % 2 === 1 || line.includes('#');
}

function lineOf(text: string, offset: number): number {
  return text.slice(0, offset).split('\n').length;
}

function apply(text: string, fix: Fix): string {
  return [...fix.edits]
    .sort((a, b) => b.at.start - a.at.start)
    .reduce((out, { at, text: by }) => out.slice(0, at.start) + by + out.slice(at.end), text);
}

/** A letter left out, doubled, or swapped with the next: as fingers do it. */
function misspell(word: string, at: number, how: number): string {
  const [a = '', b = ''] = [word[at], word[at + 1]];
  const tail = word.slice(at + 1);
  if (how === 0) return word.slice(0, at) + tail;
  return word.slice(0, at) + (how === 1 ? a + a + tail : b + a + word.slice(at + 2));
}

interface Slip {
  readonly word: string;
  readonly start: number;
  readonly text: string;
}

const slips = fc
  .tuple(fc.nat(words.length - 1), fc.nat(20), fc.nat(2))
  .map(([which, at, how]): Slip | null => {
    const found = words[which];
    if (found === undefined || found[0].length < 4) return null;
    const wrong = misspell(found[0], at % (found[0].length - 1), how);
    if (reservedWords.has(wrong) || wrong === found[0]) return null;
    return { word: found[0], start: found.index, text: input.slice(0, found.index) + wrong + input.slice(found.index + found[0].length) };
  })
  .filter((each) => each !== null);

describe('a misspelt word in the long example', () => {
  test('is told on its line, named rightly, and followed by next to nothing', () => {
    const tally = { all: 0, place: 0, named: 0, extra: 0 };
    const misses: string[] = [];
    fc.assert(
      fc.property(slips, ({ word, start, text }) => {
        const { diagnostics } = parse(text);
        tally.all += 1;
        const line = lineOf(text, start);
        if (diagnostics.some((each) => lineOf(text, each.at.start) === line)) tally.place += 1;
        if (diagnostics.some((each) => each.fixes[0]?.edits[0]?.text === word)) tally.named += 1;
        else misses.push(`${text.slice(start - 20, start + 30)} → ${word}: ${diagnostics.map((each) => each.message).join(' ')}`);
        tally.extra += Math.max(0, diagnostics.length - 1);
      }),
      { numRuns: 300, seed: 5 },
    );
    expect(tally.place / tally.all, misses.join('\n')).toBeGreaterThanOrEqual(0.98);
    expect(tally.named / tally.all, misses.join('\n')).toBeGreaterThanOrEqual(0.95);
    expect(tally.extra / tally.all).toBeLessThanOrEqual(0.2);
  });

  test('is put right by its `sure` fix', () => {
    fc.assert(
      fc.property(slips, ({ text }) => {
        for (const each of parse(text).diagnostics) {
          const fix = each.fixes.find((candidate) => candidate.grade === 'sure');
          if (fix !== undefined) expect(parse(apply(text, fix)).diagnostics.filter((left) => same(left, each))).toEqual([]);
        }
      }),
      { numRuns: 100, seed: 6 },
    );
  });
});

describe('a word left out of the long example', () => {
  const all = [...input.matchAll(/#.*|"[^"]*"|\d{4}-\d\d-\d\d|\d\d:\d\d|[^\s",()]+|[,()]/g)].filter((each) => !each[0].startsWith('#'));
  const without = all.map((each) => input.slice(0, each.index) + input.slice(each.index + each[0].length));

  test('is told once, and at most twice', () => {
    const counts = without.map((text) => parse(text).diagnostics.length);
    const often = without.filter((_, index) => (counts[index] ?? 0) > 2);
    expect(often.length / counts.length).toBeLessThanOrEqual(0.005);
    expect(Math.max(...counts)).toBeLessThanOrEqual(3);
    expect(counts.filter((each) => each === 2).length / counts.length).toBeLessThanOrEqual(0.06);
  });

  test('gets no `sure` fix that leaves as many mistakes as there were', () => {
    const worse = without.filter((text) => {
      const { diagnostics } = parse(text);
      const sure = diagnostics.flatMap((each) => each.fixes.filter((fix) => fix.grade === 'sure'));
      return sure.some((fix) => parse(apply(text, fix)).diagnostics.length >= diagnostics.length);
    });
    expect(worse.length / without.length, worse.join('\n\n')).toBeLessThanOrEqual(0.002);
  });
});

function same(a: Diagnostic, b: Diagnostic): boolean {
  return a.code === b.code && a.at.start === b.at.start;
}

test('three mistakes far apart are three diagnostics', () => {
  const text = input
    .replace('every 100 h of engine', 'every hundred h of engine')
    .replace('takes 3 min  at left', 'takes 3  at left')
    .replace('beware', 'beware');
  const wrong = text.replace('normal 75 to 90', 'normal 75 too 90').replace('uses 6.6 L', 'uses L');
  const { diagnostics } = parse(wrong);
  expect(diagnostics.length).toBeGreaterThanOrEqual(3);
  expect(diagnostics.length).toBeLessThanOrEqual(5);
});

test('a declaration that cannot be read still tells its name', () => {
  const { file } = parse('schedule t "T" meter engine "E" counts task a "A" every 5 h of engine');
  expect(file?.unread?.map((each) => each.text)).toEqual(['engine']);
  expect(file?.declarations.map((each) => each.kind)).toEqual(['task']);
});

test('what lost a part of itself says so, and nothing else does', () => {
  const { file } = parse('schedule t "T" task a "A" every fifty h takes 5 min task b "B" every 5 h task c "C" evry 5 h');
  expect(file?.declarations.map((each) => ('partial' in each ? each.partial : false))).toEqual([true, false, false]);
});
