/**
 * Every golden case of tests/cases/syntax. To rewrite the expectations after a change that is meant: UPDATE_CASES=1, then read the difference.
 */
import { readdirSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { catalogue } from '../../src/diagnostics/catalogue.js';
import { parse } from '../../src/syntax/parse.js';
import { readCase, readCases, showDiagnostics, type Case } from './case-file.js';
import { outline } from './outline.js';

const folder = new URL('../cases/syntax/', import.meta.url).pathname;
const files = readdirSync(folder).filter((each) => each.endsWith('.txt'));

function actual(each: Case): { readonly tree: readonly string[]; readonly diagnostics: readonly string[] } {
  const { file, diagnostics } = parse(each.input);
  return { tree: file === null ? ['no file'] : outline(file), diagnostics: showDiagnostics(each.input, diagnostics) };
}

function wantsTree(each: Case): boolean {
  return each.expected.some((line) => !/^(!| {4})/.test(line));
}

function update(file: string, cases: readonly Case[]): void {
  const text = cases.map((each) => {
    const { tree, diagnostics } = actual(each);
    return `# ${each.name}\n${each.input}==>\n${[...(wantsTree(each) ? tree : []), ...diagnostics].join('\n')}\n`;
  });
  writeFileSync(folder + file, text.join('----\n'));
}

for (const file of files) {
  const cases = readCases(folder + file);
  if (process.env['UPDATE_CASES'] === '1') update(file, cases);
  describe(file, () => {
    test.each(cases.map((each) => [each.name, each] as const))('%s', (_, each) => {
      const { tree, diagnostics } = actual(each);
      expect([...(wantsTree(each) ? tree : []), ...diagnostics]).toEqual(each.expected);
    });
  });
}

test('every code of the parser has a case, and every case a code of the catalogue', () => {
  const shown = files.flatMap((file) => readCases(folder + file).flatMap((each) => each.expected.join('\n').match(/DW1\d\d/g) ?? []));
  const codes = catalogue.map((each) => each.code).filter((code) => code.startsWith('DW1'));
  // Too large, too deep and too many are made in hostile.test.ts: as text they would fill this folder.
  expect(codes.filter((code) => !shown.includes(code))).toEqual(['DW101', 'DW102', 'DW119']);
  expect(shown.filter((code) => !codes.includes(code))).toEqual([]);
});

test('a case that asserts nothing is refused', () => {
  expect(() => readCase('# nothing\nschedule x "X"\n==>\n', 'here')).toThrow('asserts nothing');
  expect(() => readCase('# nothing\nschedule x "X"\n', 'here')).toThrow('not a case');
});
