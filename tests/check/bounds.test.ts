/** Bounds on what one schedule may come to: just within, and one past. */
import { describe, expect, test } from 'vitest';
import { check } from '../../src/check/check.js';
import { compile } from '../../src/compile/compile.js';
import { graphFingerprint } from '../../src/graph/fingerprint.js';
import { readRuleGraph } from '../../src/graph/read-rule-graph.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';

const head = 'schedule t "T" language 1 edition 1 of 2026-01-01 by "B" fits model "M"\n';
const many = (count: number, each: (index: number) => string): string =>
  Array.from({ length: count }, (_, index) => each(index)).join('\n');
const codes = (text: string): readonly string[] => check('a.due', () => head + text).diagnostics.map(({ code }) => code);

/** A chain of n tasks, each covering the next, comes to n (n − 1) / 2. */
const chain = (count: number): string =>
  many(count, (index) => `task t${index} "T" ${index + 1 < count ? `covers t${index + 1}` : 'every 1 month'}`);

describe('what tasks cover in all', () => {
  test.each([
    [316, []],
    [317, ['DW204']],
  ])('a chain of %i tasks', (count, expected) => {
    expect(codes(chain(count))).toEqual(expected);
  });

  test('a graph that comes to more is refused', () => {
    const graph = compile('a.due', () => head + chain(3)).graph as RuleGraph;
    const forged = {
      ...graph,
      tasks: graph.tasks.map((task, index) => ({ ...task, covers: index === 0 ? Array<string>(50_001).fill('t2') : [] })),
    };
    const read = readRuleGraph(JSON.stringify({ ...forged, fingerprint: graphFingerprint(forged) }));
    expect(read).toMatchObject({ ok: false });
    expect(JSON.stringify(read)).toContain('50001 times');
  });
});

describe('places', () => {
  test.each([
    [200, false],
    [201, true],
  ])('%i', (count, refused) => {
    expect(codes(`${many(count, (index) => `place p${index} "P"`)}\ntask a "A" every 1 month at p0`).includes('DW204')).toBe(refused);
  });
});
