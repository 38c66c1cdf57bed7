/** A reader of some kinds of thing reads what the whole one reads, or refuses it by name; it never reads what the whole one refuses. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Shape } from '../../src/base/shape.js';
import { compile } from '../../src/compile/compile.js';
import { canonical } from '../../src/graph/canonical-json.js';
import { sealed, sealedText } from '../../src/graph/fingerprint.js';
import type { GraphPart } from '../../src/graph/graph-part.js';
import { graphReaderWith } from '../../src/graph/graph-reader-with.js';
import * as shapes from '../../src/graph/graph-shape.js';
import { access } from '../../src/graph/parts/access.js';
import { conditions } from '../../src/graph/parts/conditions.js';
import { findings } from '../../src/graph/parts/findings.js';
import { intervals } from '../../src/graph/parts/intervals.js';
import { timing } from '../../src/graph/parts/timing.js';
import { unprovedGraphReaderWith } from '../../src/graph/unproved-graph-reader-with.js';
import { readRuleGraph } from '../../src/graph/read-rule-graph.js';
import type { Node, RuleGraph } from '../../src/graph/rule-graph.js';

const parts = { timing, conditions, findings, access };
const names = Object.keys(parts) as (keyof typeof parts)[];
const chosen = (some: readonly (keyof typeof parts)[]): readonly GraphPart[] => some.map((name) => parts[name]);
const choices = [[], ...names.map((name) => [name]), ...names.map((name) => names.filter((each) => each !== name)), names];

const folder = new URL('../../schedules/', import.meta.url);
const files = new Map(
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.due'))
    .map((path) => [path, readFileSync(new URL(path, folder), 'utf8')]),
);
const graphs: readonly RuleGraph[] = [...files.keys()].flatMap((path) => compile(path, (name) => files.get(name)).graph ?? []);

function graphOf(body: string): RuleGraph {
  const text = `schedule s "S"\nlanguage 1\nfits model "M"\nmeter engine "Hours" counts h\n${body}`;
  const { graph, diagnostics } = compile('s.due', () => text);
  if (graph === null) throw new Error(JSON.stringify(diagnostics));
  return graph;
}

/** Every name by which one shape refers to another. */
function namesIn(shape: unknown): readonly string[] {
  if (typeof shape !== 'object' || shape === null) return [];
  const { is, name } = shape as Partial<Extract<Shape, { readonly is: 'named' }>>;
  return [...(is === 'named' && name !== undefined ? [name] : []), ...Object.values(shape).flatMap(namesIn)];
}

describe('the parts', () => {
  const all = [intervals, ...Object.values(parts)];

  test('have between them every shape that one of them names, and each but once', () => {
    const there = all.flatMap((part) => Object.keys(part.shapes));
    expect(new Set(there).size).toBe(there.length);
    expect(new Set(namesIn(shapes))).toEqual(new Set(there));
  });

  test('say of every kind of node what it names', () => {
    const kinds = all.flatMap((part) => Object.keys(part.ofNodes));
    const node = shapes.commonShapes['Node'];
    expect(kinds.sort()).toEqual(node?.is === 'choice' ? Object.keys(node.of).sort() : []);
  });
});

describe('what is read', () => {
  test('is what the whole reader reads, of every schedule here', () => {
    let read = 0;
    for (const graph of graphs) {
      const text = JSON.stringify(graph);
      for (const some of choices) {
        const answer = graphReaderWith(chosen(some))(text);
        if (!answer.ok) expect(answer.problem).toMatch(/^line \d+ of the schedule asks for `[\w-]+`, which this reader was not given$/);
        else expect(JSON.stringify(answer.graph)).toBe(text);
        if (answer.ok) read += 1;
      }
      expect(graphReaderWith(Object.values(parts))(text).ok).toBe(true);
    }
    expect(read).toBeGreaterThan(graphs.length);
  });

  test('with any member changed, is nothing that the whole reader refuses, and where nothing is left out it is told alike', () => {
    const value = fc.constantFrom<unknown>(null, -1, 0, 1e9, '', 'x', '__proto__', true, [], {}, [{}], { rest: 1 });
    fc.assert(
      fc.property(
        fc.constantFrom(...graphs),
        fc.subarray(names),
        fc.array(fc.nat(1000), { maxLength: 6 }),
        value,
        (graph, some, way, put) => {
          const copy = structuredClone(graph) as unknown as Record<string, unknown>;
          change(copy, way, put);
          // As whoever means harm would seal it.
          const text = JSON.stringify(resealed(copy));
          const whole = readRuleGraph(text);
          const answer = graphReaderWith(chosen(some), canonical)(text);
          if (answer.ok) expect(answer).toEqual(whole);
          else if (some.length === names.length) expect(answer).toEqual(whole);
        },
      ),
      { numRuns: 1500 },
    );
  });
});

describe('without the proof', () => {
  const everyPart = Object.values(parts);
  const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex');

  test('a graph is read that was changed since, and its reader says that nothing proves it', () => {
    const graph = { ...graphOf('task oil "Oil"\n  every 5 h of engine\n'), fingerprint: 'none' };
    const text = JSON.stringify(graph);
    expect(unprovedGraphReaderWith([])(text)).toEqual({ ok: true, graph, proved: false });
    expect(graphReaderWith([])(text).ok).toBe(false);
  });

  test('every other check stands: with any member changed it reads what the whole reader reads once it is sealed anew, and else says what that says', () => {
    const value = fc.constantFrom<unknown>(null, -1, 0, 1e9, '', 'x', '__proto__', true, [], {}, [{}], { rest: 1 });
    fc.assert(
      fc.property(fc.constantFrom(...graphs), fc.array(fc.nat(1000), { maxLength: 6 }), value, (graph, way, put) => {
        const copy = structuredClone(graph) as unknown as Record<string, unknown>;
        change(copy, way, put);
        const text = JSON.stringify(resealed(copy));
        const { fingerprint } = JSON.parse(text) as RuleGraph;
        const answer = unprovedGraphReaderWith(everyPart)(text.replace(fingerprint, 'forged'));
        const whole = readRuleGraph(text);
        if (whole.ok) expect(answer).toEqual({ ok: true, proved: false, graph: { ...whole.graph, fingerprint: 'forged' } });
        else expect(answer).toEqual(whole);
      }),
      { numRuns: 500 },
    );
  });

  test("the host's digest of its sealed text is its fingerprint, and of no text that was changed", () => {
    for (const graph of graphs) {
      const read = unprovedGraphReaderWith(everyPart)(JSON.stringify(graph));
      if (!read.ok) throw new Error(read.problem);
      expect(sha256(sealedText(read.graph))).toBe(graph.fingerprint);
      expect(sha256(sealedText({ ...read.graph, nodes: [] }))).not.toBe(graph.fingerprint);
      const mixed = JSON.parse(JSON.stringify(Object.fromEntries(Object.entries(graph).reverse()))) as RuleGraph;
      expect(sha256(sealedText(mixed))).not.toBe(graph.fingerprint);
      expect(sha256(sealedText(canonical(mixed)))).toBe(graph.fingerprint);
    }
  });
});

/** Puts a value at the end of a way through an object. */
function change(object: Record<string, unknown>, way: readonly number[], put: unknown): void {
  const keys = Object.keys(object);
  const key = keys[(way[0] ?? 0) % keys.length];
  if (key === undefined) return;
  const member = object[key];
  if (way.length > 1 && typeof member === 'object' && member !== null) change(member as Record<string, unknown>, way.slice(1), put);
  else object[key] = put;
}

function resealed(copy: unknown): unknown {
  const { fingerprint: _, ...rest } = copy as RuleGraph;
  return sealed(rest);
}

describe('what is refused', () => {
  const task = 'task oil "Oil"\n  every 5 h of engine\n';
  test.each([
    ['stages', 'task a "A"\n  first at 5 h of engine\n  every 50 h of engine\n', 6],
    ['season', `${task}  only if date from 1 April to 1 May\n`, 7],
    ['gauges', `gauge coolant "Coolant" reads °C\n${task}`, 5],
    ['defects', `defect seep "Seep"\n${task}`, 5],
    ['dipsticks', `dipstick oil "Oil" low to full is 1 L\n${task}`, 5],
    [
      'parts',
      `position guard closed, open\nat rest guard closed\nstep open-guard "Open" guard closed to open takes 1 min\n${task}  with guard open\n`,
      5,
    ],
  ])('`%s`, with its line', (what, body, line) => {
    const { ok, ...rest } = graphReaderWith([])(JSON.stringify(graphOf(body)));
    expect(ok).toBe(false);
    expect(rest).toEqual({ problem: `line ${line} of the schedule asks for \`${what}\`, which this reader was not given` });
  });

  test('a graph whose keys a database put in another order, unless they are put back', () => {
    const graph = graphOf(task);
    const text = JSON.stringify(Object.fromEntries(Object.entries(graph).reverse()));
    expect(graphReaderWith([])(text)).toMatchObject({
      ok: false,
      problem: expect.stringContaining('its fingerprint does not fit') as string,
    });
    expect(graphReaderWith([], canonical)(text)).toEqual({ ok: true, graph });
    expect(readRuleGraph(text)).toEqual({ ok: true, graph });
  });

  test('a position at rest of a part that is not there', () => {
    const { fingerprint: _, ...graph } = graphOf(task);
    const odd = sealed({ ...graph, access: { ...graph.access, rest: { guard: 'open' } } });
    expect(graphReaderWith([])(JSON.stringify(odd))).toEqual({
      ok: false,
      problem: 'it asks for `guard`, which this reader was not given',
    });
  });

  test('a kind of node that nobody knows, in the same words as by the whole reader', () => {
    const { fingerprint: _, ...graph } = graphOf(task);
    const nodes = graph.nodes.map((node) => ({ ...node, kind: 'conjuring' })) as unknown as Node[];
    const text = JSON.stringify(sealed({ ...graph, nodes }));
    expect(graphReaderWith([])(text)).toEqual(readRuleGraph(text));
  });
});
