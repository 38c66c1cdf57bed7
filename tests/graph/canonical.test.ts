import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compile } from '../../src/compile/compile.js';
import { canonicalJson } from '../../src/graph/canonical-json.js';
import { graphFingerprint } from '../../src/graph/fingerprint.js';
import { partsOf } from '../../src/graph/node-references.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';
import { holdToSchema } from '../compile/compile-files.js';

const folder = new URL('../../schedules/', import.meta.url);
const schedules = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('.due') && !path.startsWith('parts/'))
  .sort();

function compiled(path: string): RuleGraph {
  const { graph, diagnostics } = compile(path, (name) => readFileSync(new URL(name, folder), 'utf8'));
  if (graph === null) throw new Error(`${path}: ${diagnostics.map(({ code, message }) => `${code} ${message}`).join('; ')}`);
  return graph;
}

describe.each(schedules)('%s', (path) => {
  test('fits the schema, has the same bytes each time, and a fingerprint of its own', () => {
    const graph = compiled(path);
    holdToSchema(graph);
    expect(JSON.stringify(compiled(path))).toBe(JSON.stringify(graph));
    expect(JSON.stringify(graph)).toBe(canonicalJson(graph));
    const { fingerprint, ...rest } = graph;
    // An independent SHA-256, of Node's.
    expect(createHash('sha256').update(canonicalJson(rest)).digest('hex')).toBe(fingerprint);
  });

  test('nodes stand in topological order, each at its own id, and are all of use', () => {
    const graph = compiled(path);
    const roots = [
      ...graph.tasks.flatMap(({ trigger, gate, stance }) => [trigger, gate, stance]),
      ...graph.stops.map(({ condition }) => condition),
      ...graph.access.nevers.map(({ condition }) => condition),
      ...graph.access.steps.map((step) => step.while),
    ].filter((id) => id !== undefined);
    const reached = new Set(roots);
    for (const node of [...graph.nodes].reverse()) if (reached.has(node.id)) partsOf(node).forEach((child) => reached.add(child));
    graph.nodes.forEach((node, index) => {
      expect(node.id).toBe(index);
      for (const child of partsOf(node)) expect(child).toBeLessThan(index);
    });
    expect(reached.size).toBe(graph.nodes.length);
  });
});

test('the order in which keys were put in does not show', () => {
  const graph = compiled('wood-chipper.due');
  fc.assert(
    fc.property(fc.infiniteStream(fc.nat(1000)), (numbers) => {
      const shuffled = shuffleKeys(graph, numbers) as RuleGraph;
      return canonicalJson(shuffled) === JSON.stringify(graph) && graphFingerprint(shuffled) === graph.fingerprint;
    }),
    { numRuns: 10 },
  );
});

function shuffleKeys(value: unknown, numbers: Iterator<number>): unknown {
  if (Array.isArray(value)) return value.map((item: unknown) => shuffleKeys(item, numbers));
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).map(([key, item]) => [numbers.next().value as number, key, shuffleKeys(item, numbers)] as const);
  return Object.fromEntries([...entries].sort((a, b) => a[0] - b[0]).map(([, key, item]) => [key, item]));
}
