/**
 * The fingerprint of a rule graph: the same text, the same bytes, the same fingerprint.
 */
import { canonical, canonicalJson } from './canonical-json.js';
import type { RuleGraph } from './rule-graph.js';
import { textFingerprint } from './text-fingerprint.js';

/** SHA-256, in hex, of the canonical JSON of everything in the graph but the fingerprint. `sha256` may be the host's own, which is quicker. */
export function graphFingerprint(graph: Omit<RuleGraph, 'fingerprint'>, sha256: (text: string) => string = textFingerprint): string {
  const { fingerprint: _, ...rest }: Omit<RuleGraph, 'fingerprint'> & { fingerprint?: string } = graph;
  return sha256(canonicalJson(rest));
}

/** The graph with its fingerprint, its keys in canonical order. `sha256` as for {@link graphFingerprint}. */
export function sealed(graph: Omit<RuleGraph, 'fingerprint'>, sha256: (text: string) => string = textFingerprint): RuleGraph {
  const { format, version, ...rest } = canonical(graph);
  return { format, version, fingerprint: sha256(JSON.stringify({ format, version, ...rest })), ...rest };
}
