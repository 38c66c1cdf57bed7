/**
 * Compiling texts in tests, each graph held to the published schema.
 */
import { readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import { compile, type Compiled } from '../../src/compile/compile.js';
import type { Node, RuleGraph } from '../../src/graph/rule-graph.js';

const schema: unknown = JSON.parse(readFileSync(new URL('../../grammar/rule-graph.schema.json', import.meta.url), 'utf8'));
const validate = new Ajv({ allErrors: true, strict: false }).compile(schema as object);

/** Compiles the first of the files, and throws where its graph does not fit the schema. */
export function compileFiles(files: Readonly<Record<string, string>>, first = Object.keys(files)[0] ?? ''): Compiled {
  const compiled = compile(first, (path) => files[path]);
  if (compiled.graph !== null) holdToSchema(compiled.graph);
  return compiled;
}

export function holdToSchema(graph: RuleGraph): void {
  if (!validate(graph)) throw new Error(`not by the schema: ${JSON.stringify(validate.errors, null, 1)}`);
}

/** The graph of one text that has no errors. */
export function graphOfText(body: string, header = 'schedule tractor "Tractor" language 1 fits model "Tarn 55"'): RuleGraph {
  const { graph, diagnostics } = compileFiles({ 'tractor.due': `${header}\n${body}` });
  if (graph === null) throw new Error(diagnostics.map(({ code, message }) => `${code} ${message}`).join('\n'));
  return graph;
}

/** A task's trigger as a tree without ids and places, the way a reader would draw it. */
export function triggerOf(graph: RuleGraph, task: string): unknown {
  const id = graph.tasks.find((each) => each.id === task)?.trigger;
  return id === undefined ? undefined : unfold(graph, id);
}

export function unfold(graph: RuleGraph, id: number): unknown {
  const node = graph.nodes[id];
  if (node === undefined) throw new Error(`no node ${id}`);
  const { id: _id, origin: _origin, ...rest } = node;
  return Object.fromEntries(Object.entries(rest).map(([key, value]) => [key, refers(node, key) ? unfoldValue(graph, value) : value]));
}

function refers({ kind }: Node, key: string): boolean {
  return key === 'parts' || key === 'part' ? kind !== 'position-is' : ['first', 'then', 'condition'].includes(key);
}

function unfoldValue(graph: RuleGraph, value: unknown): unknown {
  if (Array.isArray(value)) return value.map((item) => unfoldValue(graph, item));
  return typeof value === 'number' ? unfold(graph, value) : value;
}
