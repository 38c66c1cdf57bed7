import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { compile } from '../../src/compile/compile.js';
import type { Compiled } from '../../src/compile/graph-of.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';

const root = new URL('../../schedules/', import.meta.url);

/** Files below schedules/, as they are named there. */
export function filesIn(folder: string, ending: string): readonly string[] {
  return readdirSync(new URL(folder, root))
    .filter((name) => name.endsWith(ending))
    .sort()
    .map((name) => folder + name);
}

/** The text of a file below schedules/. */
export function textOf(path: string): string {
  return readFileSync(new URL(path, root), 'utf8');
}

/** Compiles a file below schedules/. */
export function compileSchedule(path: string): Compiled {
  return compile(path, (asked) => (existsSync(new URL(asked, root)) ? textOf(asked) : undefined));
}

/** Its rule graph; fails with the diagnostics if there is none. */
export function graphOfSchedule(path: string): RuleGraph {
  const { graph, diagnostics } = compileSchedule(path);
  if (graph === null) throw new Error(`${path} does not compile:\n${diagnostics.map(({ code, message }) => `${code} ${message}`).join('\n')}`);
  return graph;
}
