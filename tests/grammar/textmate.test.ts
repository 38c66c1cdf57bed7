import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import type { IGrammar } from 'vscode-textmate';
import { readTokens } from '../../src/syntax/read-tokens.js';
import { clauseWords, declarationWords, joiningWords, reservedWords, softWords } from '../../src/syntax/words.js';
import { MONTH_NAMES } from '../../src/values/calendar.js';
import { unitSpellings } from '../../src/values/units.js';
import { loadHighlighting, paint, type Painted } from './textmate.js';

let grammar: IGrammar;
beforeAll(async () => {
  grammar = await loadHighlighting();
});

function scopes(text: string): readonly string[] {
  return paint(grammar, text).map((each) => `${each.text} ${each.scope}`);
}

describe('every kind of token has its scope', () => {
  test.each([
    ['# a note, with "quotes" and every', ['# a note, with "quotes" and every comment.line.number-sign']],
    [
      'schedule pump "Pump"',
      [
        'schedule keyword.declaration',
        'pump entity.name.type',
        '" punctuation.definition.string.begin',
        'Pump string.quoted.double',
        '" punctuation.definition.string.end',
      ],
    ],
    ['meter engine', ['meter keyword.declaration', 'engine entity.name.type']],
    ['change task oil-change', ['change keyword.declaration', 'task keyword.declaration', 'oil-change entity.name.function']],
    ['at rest engine stopped', ['at keyword.declaration', 'rest keyword.declaration', 'engine variable.other', 'stopped variable.other']],
    [
      'every 100 h of engine',
      ['every keyword.control.clause', '100 constant.numeric', 'h keyword.other.unit', 'of keyword.operator.word', 'engine variable.other'],
    ],
    [
      'tighten "N" to 210 N·m',
      [
        'tighten keyword.control.clause',
        '" punctuation.definition.string.begin',
        'N string.quoted.double',
        '" punctuation.definition.string.end',
        'to keyword.operator.word',
        '210 constant.numeric',
        'N·m keyword.other.unit',
      ],
    ],
    ['10 % late', ['10 constant.numeric', '% keyword.other.unit', 'late keyword.other']],
    ['-5.5 °C', ['-5.5 constant.numeric', '°C keyword.other.unit']],
    ['2026-03-02 07:30', ['2026-03-02 constant.numeric.date', '07:30 constant.numeric.time']],
    ['year on 1 November', ['year keyword.other', 'on keyword.control.clause', '1 constant.numeric', 'November constant.language.month']],
    ["before each day's work", ['before keyword.control.clause', 'each keyword.other', "day's keyword.other", 'work keyword.other']],
    ['hold fine caution', ['hold keyword.control.outcome', 'fine keyword.control.outcome', 'caution keyword.control.signal']],
    ['expect a-task coming up', ['expect keyword.operator.word', 'a-task variable.other', 'coming up constant.language.state']],
    ['flail-mower.rotor', ['flail-mower.rotor variable.other']],
    [
      '(a, b)',
      [
        '( punctuation.section.parens',
        'a keyword.other',
        ', punctuation.separator.comma',
        'b variable.other',
        ') punctuation.section.parens',
      ],
    ],
    [
      '"a \\" b \\q"',
      [
        '" punctuation.definition.string.begin',
        'a string.quoted.double',
        '\\" constant.character.escape',
        'b string.quoted.double',
        '\\q invalid.illegal.escape',
        '" punctuation.definition.string.end',
      ],
    ],
    ['"not closed', ['"not closed invalid.illegal.text-not-closed']],
  ])('%s', (text, wanted) => {
    expect(scopes(text)).toEqual(wanted);
  });
});

test('every word of the language is highlighted, wherever it stands', () => {
  const all = [...reservedWords, ...softWords, ...MONTH_NAMES, "day's"];
  fc.assert(
    fc.property(
      fc.constantFrom(...all),
      fc.constantFrom('', 'x ', '  ', '( ', '"text" '),
      fc.constantFrom('', ' x', ', x', ' "x"', ')'),
      (word, before, after) => {
        const found = paint(grammar, before + word + after).find(({ text }) => text === word);
        expect(found?.scope, `${before}${word}${after}`).toMatch(/^(?:keyword|constant\.language)\b/);
      },
    ),
    { numRuns: 1500 },
  );
});

test('the three sorts of reserved word are told apart', () => {
  const scopeOf = (word: string): string | undefined => paint(grammar, `x ${word} (`).find(({ text }) => text === word)?.scope;
  for (const word of declarationWords) expect(scopeOf(word), word).toBe('keyword.declaration');
  for (const word of clauseWords) expect(scopeOf(word), word).toMatch(/^keyword\.control/);
  for (const word of joiningWords) expect(scopeOf(word), word).toBe('keyword.operator.word');
});

test('every unit after a number is a unit', () => {
  for (const unit of unitSpellings().filter((each) => !/ /.test(each) && !reservedWords.has(each)))
    expect(scopes(`12 ${unit}`), unit).toEqual(['12 constant.numeric', `${unit} keyword.other.unit`]);
});

test('a word of the language inside a name is part of the name', () => {
  fc.assert(
    fc.property(fc.constantFrom(...reservedWords), fc.constantFrom(...reservedWords), (a, b) => {
      expect(scopes(`( ${a}-${b} ${a}.${b} )`).slice(1, 3)).toEqual([`${a}-${b} variable.other`, `${a}.${b} variable.other`]);
    }),
  );
});

test('in every example schedule each token that the language sees is painted, and as a whole', () => {
  for (const path of readdirSync('schedules', { recursive: true, encoding: 'utf8' }).filter((each) => each.endsWith('.due'))) {
    const text = readFileSync(`schedules/${path}`, 'utf8');
    const painted: readonly Painted[] = paint(grammar, text);
    expect(
      painted.filter(({ scope }) => scope === '').map((each) => each.text),
      path,
    ).toEqual([]);
    expect(
      painted.filter(({ scope }) => scope.startsWith('invalid')).map((each) => each.text),
      path,
    ).toEqual([]);
    const words = new Set(painted.flatMap((each) => each.text.split(/\s+/)));
    for (const token of readTokens(text))
      if (!token.text.startsWith('"')) expect(words.has(token.text), `${path}: ${token.text}`).toBe(true);
  }
});
