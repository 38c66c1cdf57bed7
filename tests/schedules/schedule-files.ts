import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { compile, type Compiled } from '../../src/compile/compile.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';
import type { ExampleNode } from '../../src/syntax/tree.js';
import type { WordsAt } from './run-examples.js';

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

/** The worked examples of the file that was asked for; those of a variant's base are the base's. */
export function examplesOf({ model }: Compiled): readonly ExampleNode[] {
  return (model?.declarations ?? []).flatMap(({ node }) => (node.kind === 'example' && node.at.file === 0 ? [node] : []));
}

/** The author's words for a span of a compilation. */
export function wordsOf({ sources }: Compiled): WordsAt {
  return (at) => sources[at.file]?.text.slice(at.start, at.end) ?? '';
}
