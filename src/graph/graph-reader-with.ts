/**
 * The way back from a file: a compiled graph, believed only if it is whole and its fingerprint fits.
 */
import type { Digest } from '../base/sha256.js';
import { fingerprintFits, type Ordered } from './fingerprint.js';
import type { GraphPart } from './graph-part.js';
import type { RuleGraph } from './rule-graph.js';
import { refused, unprovedGraphReaderWith } from './unproved-graph-reader-with.js';

/** A graph, or one sentence without its full stop on why the text is none. */
export type RuleGraphRead = { readonly ok: true; readonly graph: RuleGraph } | { readonly ok: false; readonly problem: string };

/** Reads the text of a graph. `sha256` is the host's own, as hex digits of a text's UTF-8 bytes; ours if not given. */
export type GraphReader = (text: string, sha256?: Digest) => RuleGraphRead;

/**
 * A reader of graphs that hold just those kinds of thing that your schedules ask for, so that a bundle carries no others.
 *
 * Law: what it reads is what `readRuleGraph` reads, and as that reads it. A graph with anything else in it is refused, with the line of the schedule
 * that asks for it.
 *
 * @param ordered reads graphs that a database wrote in an order of its own; without it they are refused.
 * @example
 * const read = graphReaderWith([timing])(text);
 * if (read.ok) use(read.graph);
 */
export function graphReaderWith(parts: readonly GraphPart[], ordered?: Ordered): GraphReader {
  const readUnproved = unprovedGraphReaderWith(parts);
  return (text, sha256) => {
    const read = readUnproved(text);
    if (!read.ok) return read;
    const { graph } = read;
    if (fingerprintFits(graph, ordered, sha256)) return { ok: true, graph };
    return refused('its fingerprint does not fit its content: it was changed since it was compiled');
  };
}
