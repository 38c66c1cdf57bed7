/**
 * What running an example needs: the compiled schedule, and what the names in the example stand for.
 */
import type { SourceText } from '../base/source-text.js';
import { positionOf } from '../base/source-text.js';
import type { Span } from '../base/span.js';
import type { Model } from '../check/model.js';
import type { Place } from '../explain/explanation.js';
import type { RuleGraph } from '../graph/rule-graph.js';
import type { Meaning } from './tell.js';

export interface Bench {
  readonly graph: RuleGraph;
  readonly model: Model;
  readonly sources: readonly SourceText[];
  readonly meaning: Meaning;
}

/** The bench of a schedule that compiled. */
export function benchOf(graph: RuleGraph, model: Model, sources: readonly SourceText[]): Bench {
  return { graph, model, sources, meaning: (name) => model.meaning.get(name) };
}

/** Where something stands, with the author's own words, white space folded. */
export function placeAt({ graph, sources }: Bench, at: Span): Place {
  const source = sources[at.file];
  if (source === undefined) return { file: '', line: 1, column: 1, text: '' };
  const { line, column } = positionOf(source, at.start);
  const words = source.text.slice(at.start, at.end);
  const bare = words.includes('#') ? words.replace(/("(?:[^"\\]|\\.)*")|#[^\r\n]*/g, '$1') : words;
  return { file: graph.sources[at.file]?.path ?? source.name, line, column, text: bare.replace(/\s+/g, ' ').trim() };
}
