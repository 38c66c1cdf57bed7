import { expect, test } from 'vitest';
import { RuleChoices } from '../../src/syntax/lookahead.js';
import { lookaheadTable } from '../../src/syntax/lookahead-table.js';
import { readingOnChevrotain } from './on-chevrotain.js';
import { choicesOf, recordGrammar } from './record-choices.js';

const recorded = recordGrammar(await readingOnChevrotain());

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
  const kinds = new Map(recorded.kinds.map((kind) => [kind.name, kind]));
  for (const [name, theirs] of recorded.choosers) {
    const [rule = '', sort = '', number = ''] = name.split(' ');
    expect(lookaheadTable, name).toHaveProperty([name]);
    const ours = new RuleChoices(rule, kinds).choice(sort as 'OR', Number(number));
    for (const kind of recorded.kinds) {
      const ways = ours.waysBefore({ image: '', startOffset: 0, tokenType: kind });
      const went = theirs(kind, ours.firsts.length);
      expect(sort === 'OR' ? ways[0] : ways.length > 0, `${name} before ${kind.name}`).toBe(went);
    }
  }
});
