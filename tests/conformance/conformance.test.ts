/** Holds the engine, and the judge beside it, to every case of the suite. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { RuleGraph } from '../../src/graph/rule-graph.js';
import { moment } from '../support/history.js';
import { disagreements } from '../properties/differential.js';
import { answerTo, compiledFor, type ConformanceCase, type ConformanceFile } from './conformance-case.js';

const folder = new URL('.', import.meta.url);

function filesIn(name: string): readonly string[] {
  const path = new URL(`${name}/`, folder);
  return existsSync(path)
    ? readdirSync(path)
        .filter((file) => file.endsWith('.json'))
        .map((file) => `${name}/${file}`)
    : [];
}

function read(file: string): ConformanceFile {
  return JSON.parse(readFileSync(new URL(file, folder), 'utf8')) as ConformanceFile;
}

/** A case that expects nothing would pass whatever the engine says. */
export function assertsSomething({ expected }: ConformanceCase): boolean {
  const tasks = Object.values(expected.tasks ?? {});
  return tasks.every(({ state }) => typeof state === 'string' && state !== '') && (tasks.length > 0 || expected.verdict !== undefined);
}

describe.each(filesIn('cases').map((file) => ({ file, suite: read(file) })))('$file', ({ suite }) => {
  const graphs = new Map<string, RuleGraph>();
  const graphOf = (name: string): RuleGraph => {
    const graph = graphs.get(name) ?? compiledFor(suite.schedules[name] ?? {});
    graphs.set(name, graph);
    return graph;
  };

  test.each(suite.cases.map((each) => [each.name, each] as const))('%s', (_, each) => {
    expect(assertsSomething(each), 'it expects nothing').toBe(true);
    const graph = graphOf(each.schedule ?? Object.keys(suite.schedules)[0] ?? '');
    const now = moment(each.now);
    expect(answerTo(graph, each, now)).toMatchObject(each.expected);
    expect(disagreements(graph, { entries: each.history, now, intent: each.intent ?? {} })).toEqual([]);
  });
});

describe('the suite', () => {
  const all = filesIn('cases').flatMap((file) => read(file).cases);

  test('has at least 500 cases, no two of one name', () => {
    expect(all.length).toBeGreaterThanOrEqual(500);
    expect(new Set(all.map(({ name }) => name)).size).toBe(all.length);
  });

  test.each(['1', '2', '3', '4', '5', '6', '7', '8'])('bears on section %s of the meaning', (section) => {
    expect(all.filter((each) => each.section === section).length).toBeGreaterThan(5);
  });

  test('rejects a case that asserts nothing', () => {
    const empty = { name: 'empty', section: '1', history: [], now: '2026-01-01', expected: {} };
    expect(assertsSomething(empty)).toBe(false);
    expect(assertsSomething({ ...empty, expected: { tasks: {} } })).toBe(false);
    expect(assertsSomething({ ...empty, expected: { verdict: 'ready' } })).toBe(true);
  });
});

// What once told the two apart is asked again each time.
describe.each(filesIn('found').map((file) => ({ file, suite: read(file) })))('$file', ({ suite }) => {
  test('engine and judge agree', () => {
    for (const each of suite.cases) {
      const graph = compiledFor(suite.schedules[each.schedule ?? Object.keys(suite.schedules)[0] ?? ''] ?? {});
      expect(disagreements(graph, { entries: each.history, now: moment(each.now), intent: each.intent ?? {} })).toEqual([]);
    }
  });
});
