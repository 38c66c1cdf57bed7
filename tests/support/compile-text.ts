import { compile } from '../../src/compile/compile.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';

/** A header for schedules in tests that need nothing special of one. */
export const header = `schedule test-machine "Test machine"\n  language 1\n  edition 1 of 2026-01-01 by "Test bench"\n  fits model "T"\n`;

/** Compiles declarations (a header is put before them) and fails loudly on any error. */
export function compileText(declarations: string, more: Readonly<Record<string, string>> = {}): RuleGraph {
  return compileFile(header + declarations, more);
}

/** Compiles a whole file. */
export function compileFile(text: string, more: Readonly<Record<string, string>> = {}): RuleGraph {
  const files: Readonly<Record<string, string>> = { 'test.due': text, ...more };
  const { graph, diagnostics } = compile('test.due', (path) => (Object.hasOwn(files, path) ? files[path] : undefined));
  const errors = diagnostics.filter((diagnostic) => diagnostic.severity === 'error');
  if (graph === null || errors.length > 0)
    throw new Error(`does not compile:\n${errors.map((each) => `${each.code} ${each.message}`).join('\n')}`);
  return graph;
}
