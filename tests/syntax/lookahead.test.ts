import { expect, test } from 'vitest';
import { choiceName } from '../../src/syntax/lookahead.js';
import { lookaheadTable } from '../../src/syntax/lookahead-table.js';
import { choicesOf, recordGrammar } from './record-choices.js';

const recorded = recordGrammar();

test('the table of choices is what the grammar says', async () => {
  const rows = Object.entries(choicesOf(recorded.rules)).map(([name, firsts]) => `  '${name}': '${firsts}',`);
  const text = [
    '/**',
    ' * For each choice of the grammar the kinds of token that each way can begin with (lookahead.ts says how it is used).',
    ' *',
    ' * Written by `npx vitest run -u --config tests/vitest.config.ts tests/syntax/lookahead.test.ts`: run that after a change of the grammar.',
    ' */',
    '// prettier-ignore',
    'export const lookaheadTable: Readonly<Record<string, string>> = {',
    ...rows,
    '};',
    '',
  ].join('\n');
  await expect(text).toMatchFileSnapshot('../../src/syntax/lookahead-table.ts');
});

test('at every choice, before every kind of token, we go where Chevrotain would go', () => {
  expect(recorded.choosers.size).toBeGreaterThan(80);
  for (const [key, theirs] of recorded.choosers) {
    const name = choiceName(key, recorded.ruleOf);
    expect(lookaheadTable, name).toHaveProperty([name]);
    const alternatives = Array.from({ length: (lookaheadTable[name] ?? '').split('|').length }, () => ({}));
    for (const kind of recorded.kinds.all) {
      const token = { tokenType: kind, tokenTypeIdx: kind.tokenTypeIdx, image: '', startOffset: 0 };
      const there = { LA_FAST: () => token, LA: () => token };
      Object.assign(recorded.grammar, there);
      const ours = recorded.grammar.getLaFuncFromCache(key)(alternatives);
      expect(ours, `${name} before ${kind.name}`).toBe(theirs.call(there, alternatives));
    }
  }
});
