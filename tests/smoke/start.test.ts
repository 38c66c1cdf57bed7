import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { buildCommand, type BuiltCommand, root } from '../adapters/cli/built-command.js';

let built: BuiltCommand;
beforeAll(async () => {
  built = await buildCommand();
});
afterAll(() => built.remove());

/** The last part of `npm start`: the command and what it is asked. */
function startArguments(): readonly string[] {
  const { scripts } = JSON.parse(readFileSync(`${root}package.json`, 'utf8')) as { scripts: { start: string } };
  const command = scripts.start.split('dist/cli/duewright.js ')[1] ?? '';
  return (command.match(/"[^"]*"|\S+/g) ?? []).map((word) => word.replaceAll('"', ''));
}

test('what `npm start` asks is answered: a verdict, and due tasks with reasons', () => {
  const run = built.run(startArguments());
  expect(run.err).toBe('');
  expect(run.code).toBe(0);
  expect(run.out).toContain('Tarn 55 orchard tractor');
  expect(run.out).toContain('Check the engine oil level');
  expect(run.out).toContain("before each day's work");
});
