/**
 * Compiling texts in tests, each graph held to the published schema.
 */
import { compile } from '../../src/compile/compile.js';
import type { Compiled } from '../../src/compile/graph-of.js';
import type { Node, RuleGraph } from '../../src/graph/rule-graph.js';
import { objections } from '../support/objections.js';

/** Compiles the first of the files, and throws where its graph does not fit the schema. */
export function compileFiles(files: Readonly<Record<string, string>>, first = Object.keys(files)[0] ?? ''): Compiled {
  const compiled = compile(first, (path) => files[path]);
  if (compiled.graph !== null) holdToSchema(compiled.graph);
  return compiled;
}

export function holdToSchema(graph: RuleGraph): void {
  const against = objections('rule-graph', graph);
  if (against.length > 0) throw new Error(`not by the schema: ${against.join('; ')}`);
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
