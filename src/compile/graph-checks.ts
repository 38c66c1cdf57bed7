/**
 * Checks that need the compiled graph: over the whole space of stances, for instance. Each joins where a compiler is put together.
 */
import type { SourceText } from '../base/source-text.js';
import type { Span } from '../base/span.js';
import { diagnose } from '../diagnostics/catalogue-entry.js';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { Origin, RuleGraph } from '../graph/rule-graph.js';
import type { GraphCheck } from './graph-finding.js';
import { lengthFolding } from './folded.js';

/** Runs checks over a graph. Errors keep it from being given out. */
export function checkGraph(graph: RuleGraph, sources: readonly SourceText[], checks: readonly GraphCheck[]): readonly Diagnostic[] {
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
