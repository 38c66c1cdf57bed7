/**
 * Checks that need the compiled graph: over the whole space of stances, for instance. Each joins by a line in {@link graphChecks}.
 */
import type { SourceText } from '../base/source-text.js';
import type { Span } from '../base/span.js';
import { diagnose } from '../diagnostics/catalogue-entry.js';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { Origin, RuleGraph } from '../graph/rule-graph.js';
import { accessCheck } from './access-check.js';
import type { GraphCheck } from './graph-finding.js';
import { lengthFolding } from './folded.js';

/** All of them, in the order in which they are run. Errors keep the graph from being given out. */
const graphChecks: readonly GraphCheck[] = [accessCheck];

/** Runs checks over a graph. */
export function checkGraph(
  graph: RuleGraph,
  sources: readonly SourceText[],
  checks: readonly GraphCheck[] = graphChecks,
): readonly Diagnostic[] {
  return checks
    .flatMap((check) => check(graph))
    .map(({ entry, message, at, labels = [], help }) =>
      diagnose(entry, {
        message,
        at: spanOf(sources, at),
        labels: labels.map((label) => ({ at: spanOf(sources, label.at), text: label.text })),
        ...(help === undefined ? {} : { help }),
      }),
    );
}

/** The span of the words that an origin quotes: from its place on, as much text as folds to them. */
export function spanOf(sources: readonly SourceText[], { source, line, column, text }: Origin): Span {
  const file = sources[source];
  const start = (file?.lineStarts[line - 1] ?? 0) + column - 1;
  return { file: source, start, end: start + lengthFolding(file?.text.slice(start) ?? '', text) };
}
