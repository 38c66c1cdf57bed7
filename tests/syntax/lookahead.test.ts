import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { RuleChoices } from '../../src/syntax/lookahead.js';
import * as tables from '../../src/syntax/lookahead-table.js';
import { readingOnChevrotain } from './on-chevrotain.js';
import { choicesOf, recordGrammar } from './record-choices.js';

const lookaheadTable: Readonly<Record<string, string>> = Object.assign({}, ...Object.values(tables)) as Record<string, string>;
const recorded = recordGrammar(await readingOnChevrotain());

/** The name under which the table has the rules of a layer that may be left out, and the files of that layer. */
const layers = {
  conditionChoices: ['grammar-conditions.ts'],
  findingChoices: ['grammar-readings.ts', 'grammar-defects.ts'],
  accessChoices: ['grammar-access.ts'],
  exampleChoices: ['grammar-examples.ts'],
  weekdayMarkChoices: ['grammar-weekday-marks.ts'],
};

function rulesIn(files: readonly string[]): readonly string[] {
  const source = files.map((file) => readFileSync(new URL(`../../src/syntax/${file}`, import.meta.url), 'utf8')).join('\n');
  return [...source.matchAll(/this\.RULE\('(\w+)'/g)].map(([, rule]) => rule ?? '');
}

test('the table of choices is what the grammar says', async () => {
  const tables = Object.entries(layers).map(([name, files]) => [name, new Set(rulesIn(files))] as const);
  const rows = Object.entries(choicesOf(recorded.rules)).map(([name, firsts]) => {
    const rule = name.split(' ')[0] ?? '';
    return { table: tables.find(([, rules]) => rules.has(rule))?.[0] ?? 'choices', line: `  '${name}': '${firsts}',` };
  });
  const text = [
    '/**',
    ' * For each choice of the grammar the kinds of token that each way can begin with (lookahead.ts says how it is used).',
    ' *',
    ' * Written by `npx vitest run -u --config tests/vitest.config.ts tests/syntax/lookahead.test.ts`: run that after a change of the grammar.',
    ' */',
    "import type { ChoiceTable } from './lookahead.js';",
    '',
    ...['choices', ...Object.keys(layers)].flatMap((table) => [
      '// prettier-ignore',
      `export const ${table}: ChoiceTable = {`,
      ...rows.filter((row) => row.table === table).map(({ line }) => line),
      '};',
      '',
    ]),
  ].join('\n');
  await expect(text).toMatchFileSnapshot('../../src/syntax/lookahead-table.ts');
});

test('at every choice, before every kind of token, we go where Chevrotain would go', () => {
  expect(recorded.choosers.size).toBeGreaterThan(80);
  const kinds = new Map(recorded.kinds.map((kind) => [kind.name, kind]));
  for (const [name, theirs] of recorded.choosers) {
    const [rule = '', sort = '', number = ''] = name.split(' ');
    expect(lookaheadTable, name).toHaveProperty([name]);
    const ours = new RuleChoices(rule, kinds, lookaheadTable).choice(sort as 'OR', Number(number));
    for (const kind of recorded.kinds) {
      const ways = ours.waysBefore({ image: '', startOffset: 0, tokenType: kind });
      const went = theirs(kind, ours.firsts.length);
      expect(sort === 'OR' ? ways[0] : ways.length > 0, `${name} before ${kind.name}`).toBe(went);
    }
  }
});
