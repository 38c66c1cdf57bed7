import { readFileSync } from 'node:fs';
import { compile } from '../../src/compile/compile.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';

const schedules = new URL('../../schedules/', import.meta.url);

const graphs = new Map<string, RuleGraph>();

/** The graph of one of the example schedules, compiled once. */
export function scheduleGraph(name: string): RuleGraph {
  const graph = graphs.get(name) ?? compiled(name);
  graphs.set(name, graph);
  return graph;
}

function compiled(name: string): RuleGraph {
  const load = (path: string): string | undefined => {
    try {
      return readFileSync(new URL(path, schedules), 'utf8');
    } catch {
      return undefined;
    }
  };
  const { graph, diagnostics } = compile(name, load);
  if (graph === null) throw new Error(diagnostics.map((each) => each.message).join('\n'));
  return graph;
}
