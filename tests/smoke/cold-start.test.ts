import { readdirSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { buildCommand, type BuiltCommand } from '../adapters/cli/built-command.js';

const logbook = 'tests/cases/cli/files/water-pump.jsonl';

let built: BuiltCommand;
beforeAll(async () => {
  built = await buildCommand();
});
afterAll(() => built.remove());

// How long it takes is measured by `node tests/bench/cold-start.mjs`: on a busy machine a time on the clock proves nothing.
test('a compiled graph is answered by one file: neither compiler nor drawing nor logbook writer is loaded', () => {
  const folder = dirname(built.script);
  const graph = join(folder, 'pump.json');
  expect(built.run(['compile', 'tests/cases/cli/files/water-pump.due', '--to', graph]).code).toBe(0);
  const before = built.run(['due', graph, logbook, '--on', '2026-06-01']);
  const others = readdirSync(folder).filter((file) => file.endsWith('.js') && !['duewright.js', 'command.js'].includes(file));
  expect(others).toContain('compiler.js');
  for (const file of others) rmSync(join(folder, file));
  expect(built.run(['due', graph, logbook, '--on', '2026-06-01'])).toEqual(before);
  expect(before.code).toBe(0);
});
