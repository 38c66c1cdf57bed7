import { mkdtempSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { objections } from '../../support/objections.js';
import { buildCommand, type BuiltCommand, root } from './built-command.js';

const pump = 'tests/cases/cli/files/water-pump.due';
const book = 'tests/cases/cli/files/water-pump.jsonl';
const brokenBook = 'tests/cases/cli/files/water-pump-broken.jsonl';
const tractor = ['schedules/orchard-tractor.due', 'schedules/orchard-tractor.logbook.jsonl', '--on', '2026-05-08 07:30'] as const;

let built: BuiltCommand;
beforeAll(async () => {
  built = await buildCommand();
});
afterAll(() => built.remove());

function answer(args: readonly string[], options?: Parameters<BuiltCommand['run']>[1]): unknown {
  return JSON.parse(built.run(args, options).out);
}

describe('--json answers by the published schemas', () => {
  test('due', () => {
    for (const args of [
      tractor,
      [pump, book, '--on', '2026-06-01'],
      [pump, book, '--on', '2026-06-01', '--work', '3 h in sandy with strainer'],
    ]) {
      expect(objections('assessment', answer(['due', ...args, '--json']))).toEqual([]);
    }
  });

  test('why, for many tasks of the example machine', { timeout: 120_000 }, () => {
    const { tasks } = answer(['due', ...tractor, '--json']) as { tasks: readonly { task: string; governing: number | null }[] };
    expect(tasks.length).toBeGreaterThan(29);
    // Every ninth, so that most kinds of rule are met without starting the command eighty times.
    for (const { task, governing } of tasks.filter((_, index) => index % 9 === 0)) {
      const [schedule, logbook, ...rest] = tractor;
      const why = answer(['why', schedule, logbook, task, ...rest, '--json']) as { governing: number | null };
      expect(objections('explanation', why), task).toEqual([]);
      expect(why.governing, `${task}: both name the same part`).toBe(governing);
    }
  });

  test('due and why name the same part where the rate of use decides', () => {
    const on = ['--on', '2026-04-20', '--json'];
    const { tasks } = answer(['due', pump, book, ...on]) as { tasks: readonly { task: string; governing: number | null }[] };
    const { governing, forecast } = answer(['why', pump, book, 'change-engine-oil', ...on]) as {
      governing: number;
      forecast: object | null;
    };
    // Ten days after an oil change less is used of the 50 h than of the 12 months, and yet at this rate the hours are up first.
    expect(forecast).not.toBeNull();
    expect(tasks.find(({ task }) => task === 'change-engine-oil')?.governing).toBe(governing);
  });

  test('check, with and without mistakes', () => {
    const reports = answer(['check', pump, 'tests/cases/cli/files/water-pump-wrong.due', '--json']) as readonly { errors: number }[];
    for (const report of reports) expect(objections('check-report', report)).toEqual([]);
    expect(reports.map(({ errors }) => errors > 0)).toEqual([false, true]);
  });

  test('rules', () => {
    const rules = answer(['rules', pump, 'change-engine-oil', '--json']) as { nodes: readonly unknown[] };
    expect(objections('task-rules', rules)).toEqual([]);
    expect(rules.nodes.length).toBeGreaterThan(2);
  });

  test('fleet, line by line', () => {
    const { out } = built.run(['fleet', pump, 'tests/cases/cli/files/pumps.jsonl', '--on', '2026-06-01', '--json']);
    const lines = out.trimEnd().split('\n');
    expect(lines.length).toBeGreaterThan(1);
    for (const line of lines) expect(objections('fleet-line', JSON.parse(line))).toEqual([]);
  });

  test('compile', () => {
    expect(objections('rule-graph', answer(['compile', pump]))).toEqual([]);
  });

  test('the schemas are not toothless', () => {
    const assessment = answer(['due', pump, book, '--on', '2026-06-01', '--json']) as object;
    expect(objections('assessment', { ...assessment, verdict: 'splendid' })).not.toEqual([]);
    expect(objections('assessment', { ...assessment, extra: 1 })).not.toEqual([]);
  });
});

describe('a compiled graph', () => {
  test('answers as its text does', () => {
    const graph = join(built.scratch, 'pump.json');
    expect(built.run(['compile', pump, '--to', graph])).toEqual({ code: 0, out: '', err: '' });
    for (const rest of [
      [book, '--on', '2026-06-01', '--json'],
      [book, '--on', '2026-06-01', '--work'],
    ]) {
      expect(built.run(['due', graph, ...rest])).toEqual(built.run(['due', pump, ...rest]));
    }
  });

  test('is the same wherever the schedule lies', () => {
    const copy = join(built.scratch, 'water-pump.due');
    writeFileSync(copy, readFileSync(`${root}${pump}`));
    expect(built.run(['compile', copy]).out).toBe(built.run(['compile', pump]).out);
  });

  test.each([
    ['cut off', (text: string) => text.slice(0, -10), 'not a JSON object'],
    ['changed', (text: string) => text.replace('Hour meter', 'Hour metre'), 'its fingerprint does not fit'],
    ['of another version', (text: string) => text.replace('"version": 1', '"version": 2'), 'of version 2'],
  ])('that is %s is refused', (_what, damage, message) => {
    const graph = join(built.scratch, 'damaged.json');
    writeFileSync(graph, damage(built.run(['compile', pump]).out));
    const run = built.run(['due', graph, book, '--on', '2026-06-01']);
    expect(run.code).toBe(3);
    expect(run.err).toContain(message);
  });
});

describe('a logbook', () => {
  test('that is a schedule, as text or compiled, is refused', () => {
    const graph = join(built.scratch, 'graph.json');
    writeFileSync(graph, built.run(['compile', pump]).out);
    for (const path of [pump, graph]) {
      const { code, err } = built.run(['due', pump, path, '--on', '2026-06-01']);
      expect(code).toBe(3);
      expect(err).toBe(`duewright: ${path} is a schedule, where a logbook belongs: a file that holds one JSON entry a line.\n`);
    }
  });

  test('is read from the standard input', () => {
    const input = readFileSync(`${root}${book}`, 'utf8');
    expect(built.run(['due', pump, '-', '--on', '2026-06-01'], { input })).toEqual(built.run(['due', pump, book, '--on', '2026-06-01']));
  });

  test('with broken lines is used without them, and each is reported with its number', () => {
    const run = built.run(['due', pump, brokenBook, '--on', '2026-06-03', '--json']);
    expect(run.err.trimEnd().split('\n')).toEqual([
      expect.stringContaining(`${brokenBook}:6: `),
      expect.stringContaining(`${brokenBook}:7: `),
    ]);
    const { tasks } = JSON.parse(run.out) as { tasks: readonly { task: string; state: string }[] };
    // 91 h, from line 8, is past 40 h + 50 h: the rest of the file was used.
    expect(tasks.find(({ task }) => task === 'change-engine-oil')?.state).toBe('due');
  });
});

describe('the files of a schedule', () => {
  test('that a link leads out to are not read', () => {
    const outside = join(built.scratch, 'outside.due');
    writeFileSync(outside, 'part outside "Outside"\n  language 1\nmeter secret "Secret" counts h\n');
    const inner = mkdtempSync(join(built.scratch, 'inner-'));
    symlinkSync(outside, join(inner, 'link.due'));
    writeFileSync(join(inner, 'machine.due'), 'schedule m "M"\n  language 1\n  use "link.due"\ntask t "T"\n  every 1 h of secret\n');
    const run = built.run(['check', join(inner, 'machine.due')]);
    expect(run.code).toBe(1);
    expect(run.out).toContain('link.due');
    expect(run.out).not.toContain('Secret');
  });
});

test('a reader that has seen enough ends the command quietly', () => {
  const run = built.run(['due', ...tractor, '--json']);
  expect(run.out.length).toBeGreaterThan(10_000);
  expect(run.err).toBe('');
});

test('--version is that of the package', () => {
  const { version } = JSON.parse(readFileSync(`${root}package.json`, 'utf8')) as { version: string };
  expect(built.run(['--version']).out).toBe(`${version}\n`);
});

test('fleet --sql says what the view leaves out, where that stands, and what judges it', () => {
  const { out, err } = built.run(['fleet', pump, '--sql', 'duckdb']);
  expect(out).toContain('CREATE OR REPLACE VIEW due');
  const line =
    readFileSync(join(root, pump), 'utf8')
      .split('\n')
      .findIndex((text) => text.startsWith('task engine-oil-level')) + 1;
  expect(err).toContain(`water-pump.due:${line}: engine-oil-level is left out of the view (not-in-sql): SQL cannot say “`);
  expect(err).toContain('of 3 tasks are left out. `duewright fleet SCHEDULE FILE` judges them all.');
});
