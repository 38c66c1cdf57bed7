import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildCommand, type BuiltCommand, root } from './built-command.js';
import { readCases, shown, writeCases } from './case-file.js';

const folder = `${root}tests/cases/cli/`;
/** `UPDATE_CASES=1` writes what the command says now; read the difference before you commit it. */
const update = (process.env['UPDATE_CASES'] ?? '') !== '';

let built: BuiltCommand;
beforeAll(async () => {
  built = await buildCommand();
});
afterAll(() => built.remove());

describe.each(readdirSync(folder).filter((file) => file.endsWith('.txt')))('%s', (file) => {
  const text = readFileSync(folder + file, 'utf8');
  const cases = readCases(text);

  test.each(cases.map((each) => [each.name, each] as const))('%s', (_name, each) => {
    const actual = shown(built.run(each.args, { env: each.env }));
    if (update) return;
    expect(each.expected, 'a case must expect something').not.toBe('');
    expect(actual).toBe(each.expected);
  });

  test.runIf(update)('is written', () => {
    const head = text.slice(0, text.indexOf('## '));
    writeFileSync(
      folder + file,
      writeCases(
        head,
        cases.map((each) => ({ ...each, actual: shown(built.run(each.args, { env: each.env })) })),
      ),
    );
  });
});

test('a case without a command is refused', () => {
  expect(() => readCases('## nothing\nsome text\n')).toThrow('has no command');
});
