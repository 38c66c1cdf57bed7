/**
 * The parser against the published grammar: whatever the EBNF derives is accepted, and whatever it does not derive is reported.
 */
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse } from '../../src/syntax/parse.js';
import { allWords } from '../../src/syntax/tokens.js';
import { derive, numbersFrom } from './derive.js';
import { ebnfWords, readEbnf } from './ebnf.js';
import { recogniser } from './recognise.js';

const rules = readEbnf();
const inGrammar = recogniser(rules, 'File');

function errors(tokens: readonly string[]): readonly string[] {
  return parse(tokens.join(' ')).diagnostics.map((each) => `${each.code} ${each.at.start} ${each.message}`);
}

describe('the published grammar', () => {
  test('uses exactly the words that the lexer knows', () => {
    const published = [...ebnfWords(rules)].filter((each) => /^[a-z-]+$/.test(each));
    expect([...allWords()].filter((each, index, all) => all.indexOf(each) === index).sort()).toEqual(published.sort());
  });

  test('derives nothing that the parser refuses', () => {
    fc.assert(
      fc.property(fc.nat(), (seed) => {
        const tokens = derive(rules, 'File', numbersFrom(seed));
        expect(errors(tokens), tokens.join(' ')).toEqual([]);
      }),
      { numRuns: 2000, seed: 20260314 },
    );
  });

  test('derives every kind of clause in those sentences', () => {
    const seen = new Set<string>();
    for (let seed = 0; seed < 2000; seed += 1) for (const token of derive(rules, 'File', numbersFrom(seed))) seen.add(token);
    expect([...ebnfWords(rules)].filter((each) => !seen.has(each))).toEqual([]);
  });

  test('is what its own recogniser accepts', () => {
    for (let seed = 0; seed < 40; seed += 1) {
      const tokens = derive(rules, 'File', numbersFrom(seed), 3);
      if (tokens.length < 400) expect(inGrammar(tokens), tokens.join(' ')).toBe(true);
    }
  });
});

/** One slip: a token left out, written twice, swapped with the next, or replaced by another of the sentence. */
function slip(tokens: readonly string[], random: () => number): readonly string[] {
  const out = [...tokens];
  const at = Math.floor(random() * out.length);
  const other = out[Math.floor(random() * out.length)] ?? '';
  const here = out[at] ?? '';
  switch (Math.floor(random() * 4)) {
    case 0:
      out.splice(at, 1);
      break;
    case 1:
      out.splice(at, 0, here);
      break;
    case 2:
      out.splice(at, 2, out[at + 1] ?? '', here);
      break;
    default:
      out[at] = other;
  }
  return out.filter((each) => each !== '');
}

describe('a sentence with a slip in it', () => {
  test('is reported whenever the grammar does not derive it, and accepted when it does', () => {
    let refused = 0;
    fc.assert(
      fc.property(fc.nat(), fc.integer({ min: 1, max: 3 }), (seed, slips) => {
        const random = numbersFrom(seed);
        let tokens = derive(rules, 'File', random, 3);
        if (tokens.length > 250) return;
        for (let n = 0; n < slips; n += 1) tokens = slip(tokens, random);
        const good = inGrammar(tokens);
        // A band named `plus` or `less`, with a unit that nobody knows: there only known units are units, for names follow.
        if (/\bfresh for \S+ (?:calendar )?\S+ (?:less|plus) \S+ (?!days?\b)/.test(tokens.join(' '))) return;
        if (!good) refused += 1;
        expect(
          errors(tokens).length === 0,
          `${good ? 'derivable' : 'not derivable'}: ${tokens.join(' ')}\n${errors(tokens).join('\n')}`,
        ).toBe(good);
      }),
      { numRuns: 800, seed: 7 },
    );
    expect(refused).toBeGreaterThan(100);
  });
});
