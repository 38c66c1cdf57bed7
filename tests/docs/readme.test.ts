import { readFileSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { buildCommand, type BuiltCommand, root } from '../adapters/cli/built-command.js';
import { readCases, shown } from '../adapters/cli/case-file.js';

const path = `${root}README.md`;
const markdown = readFileSync(path, 'utf8');
const fence = /^```console\n(\$ [^\n]*)\n?([\s\S]*?)^```$/gm;
/** As for the golden cases: writes what the command says now. */
const update = (process.env['UPDATE_CASES'] ?? '') !== '';

let built: BuiltCommand;
beforeAll(async () => {
  built = await buildCommand();
});
afterAll(() => built.remove());

function answerTo(command: string): string {
  const [only] = readCases(`## readme\n${command}\n`);
  return shown(built.run(only?.args ?? []));
}

test.skipIf(update)('what README.md shows is what the command says', () => {
  const tour = [...markdown.matchAll(fence)];
  expect(tour.length).toBeGreaterThan(3);
  for (const [, command = '', expected = ''] of tour) expect(expected.trimEnd(), command).toBe(answerTo(command));
});

test.runIf(update)('README.md is written', () => {
  writeFileSync(
    path,
    markdown.replace(fence, (_whole, command: string) => `\`\`\`console\n${command}\n${answerTo(command)}\n\`\`\``),
  );
});
