import { describe, expect, test } from 'vitest';
import { runCommandLine } from '../../../src/adapters/cli/run-command-line.js';
import { objections } from '../../support/objections.js';
import { root } from './built-command.js';
import { memoryShell } from './memory-shell.js';

const MACHINES = ['orchard-tractor', 'irrigation-pump', 'wood-chipper'];
const COMMANDS = [
  ['ahead', 'outlook'],
  ['visits', 'visits'],
  ['supplies', 'supplies'],
] as const;

describe.each(COMMANDS)('duewright %s --json', (command, schema) => {
  test.each(MACHINES)('answers in the published shape: %s', async (machine) => {
    const shell = memoryShell();
    const files = [`${root}schedules/${machine}.due`, `${root}schedules/${machine}.logbook.jsonl`];
    expect(await runCommandLine([command, ...files, '--on', '2026-05-11', '--json'], shell)).toBe(0);
    const answer: unknown = JSON.parse(shell.said.out);
    expect(objections(schema, answer)).toEqual([]);
    expect(answer).toMatchObject({ format: `duewright-${schema}`, version: 1 });
  });
});
