import { check } from '../../src/check/check.js';
import { everyMaker } from '../../src/compile/every-maker.js';
import { graphOf } from '../../src/compile/graph-of.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';
import { header } from '../support/compile-text.js';

/** The rule graph of declarations whose stances nobody has gone through yet. A task that is written without a title comes due every 50 h. */
export function uncheckedGraph(declarations: readonly string[]): RuleGraph {
  const lines = declarations.map((line) => line.replace(/^task (\S+)(?=$| [^"])/, 'task $1 "Do $1" every 50 h of hours'));
  const text = [`${header}meter hours "Hour meter" counts h`, ...lines, ''].join('\n');
  const { model, sources, diagnostics } = check('test.due', (path) => (path === 'test.due' ? text : undefined));
  const errors = diagnostics.filter(({ severity }) => severity === 'error');
  if (model === null || errors.length > 0) throw new Error(errors.map(({ message }) => message).join('\n'));
  return graphOf(model, sources, everyMaker);
}
