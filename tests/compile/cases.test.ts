/**
 * Schedules, each about one subject, with the whole rule graph that they compile to: what an author writes against what engines are given.
 *
 * `UPDATE_CASES=1 npx vitest run --config tests/vitest.config.ts tests/compile/cases` writes what is now made; read it before committing it.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Origin, RuleGraph } from '../../src/graph/rule-graph.js';
import { compileFiles } from './compile-files.js';

const folder = new URL('../cases/compile/', import.meta.url);
const updating = process.env['UPDATE_CASES'] === '1';
const names = readdirSync(folder).filter((name) => name.endsWith('.txt'));

/** `# what it is about`, then files, each after `--- its path`, then `==>` and the graph. */
function read(name: string): { readonly head: string; readonly files: Readonly<Record<string, string>>; readonly expected: string } {
  const whole = readFileSync(new URL(name, folder), 'utf8');
  const [head = '', expected = ''] = whole.split(/^==>\n/m);
  const [, ...parts] = head.split(/^--- /m);
  const files = parts.map((part) => [part.slice(0, part.indexOf('\n')), part.slice(part.indexOf('\n') + 1)] as const);
  return { head, files: Object.fromEntries(files), expected };
}

/** A graph with one thing a line: without fingerprints, empty lists and margins of nothing; places as `@file:line:column`, then the words that stand there. */
function outline(graph: RuleGraph): string {
  const { schedule, access, nodes, sources } = graph;
  const lists = ['meters', 'gauges', 'dipsticks', 'duties', 'attachments', 'events', 'supplies', 'defects', 'stops'] as const;
  const { parts, places, walks, steps, nevers, ...stances } = access;
  const lines = [
    `schedule ${facts(schedule)}`,
    ...sources.map(({ path }) => `source ${path}`),
    ...lists.flatMap((list) => graph[list].map((item) => `${list} ${facts(item)}`)),
    ...Object.entries({ parts, places, walks, steps, nevers }).flatMap(([list, items]) => items.map((item) => `${list} ${facts(item)}`)),
    `stances ${facts(stances)}`,
    ...nodes.map((node) => `node ${facts(node)}`),
    ...graph.tasks.map((task) => `task ${facts(task)}`),
  ];
  return `${lines.join('\n')}\n`;
}

function facts({ origin, ...rest }: object & { readonly origin?: Origin }): string {
  const members = Object.entries(rest).flatMap(([key, value]) => (isNothing(value) ? [] : [`${key}=${JSON.stringify(value, shown)}`]));
  return [...members, ...(origin === undefined ? [] : [placed(origin), origin.text])].join(' ');
}

function isNothing(value: unknown): boolean {
  return ['[]', '{"size":0}'].includes(JSON.stringify(value));
}

function shown(key: string, value: unknown): unknown {
  if (key === 'origin') return placed(value as Origin);
  return Number.isNaN(Number(key)) && isNothing(value) ? undefined : value;
}

function placed({ source, line, column }: Origin): string {
  return `@${source}:${line}:${column}`;
}

describe('the rule graph of', () => {
  test.each(names)('%s', (name) => {
    const { head, files, expected } = read(name);
    const { graph, diagnostics } = compileFiles(files);
    if (graph === null) throw new Error(diagnostics.map(({ code, message }) => `${code} ${message}`).join('\n'));
    const made = outline(graph);
    if (updating) writeFileSync(new URL(name, folder), `${head}==>\n${made}`);
    else expect(made).toBe(expected);
  });
});
