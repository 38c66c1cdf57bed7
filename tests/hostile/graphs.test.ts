/**
 * Rule graphs that `compile` did not make: each is refused in words, before anything is asked of it.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { compile } from '../../src/compile/compile.js';
import { readRuleGraph } from '../../src/graph/read-rule-graph.js';

const folder = new URL('../../schedules/', import.meta.url);
const files = new Map(
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.due'))
    .map((path) => [path, readFileSync(new URL(path, folder), 'utf8')]),
);

describe('what the compiler makes is taken', () => {
  test.each([...files.keys()].sort())('%s', (path) => {
    const { graph } = compile(path, (name) => files.get(name));
    if (graph === null) return;
    expect(readRuleGraph(JSON.stringify(graph))).toEqual({ ok: true, graph });
  });
});
