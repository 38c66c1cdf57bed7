/**
 * The fingerprint of a rule graph: the same text, the same bytes, the same fingerprint.
 */
import { canonical, canonicalJson } from './canonical-json.js';
import type { RuleGraph } from './rule-graph.js';
import { type Digest, sha256 as ours } from '../base/sha256.js';

/** SHA-256, in hex, of the canonical JSON of everything in the graph but the fingerprint. `sha256` may be the host's own, which is quicker. */
export function graphFingerprint(graph: Omit<RuleGraph, 'fingerprint'>, sha256: Digest = ours): string {
  return sha256(canonicalJson(withoutFingerprint(graph)));
}

/** Puts the keys of every object of a value in the order in which `compile` writes them. */
export type Ordered = (value: unknown) => unknown;

/** Whether a graph's fingerprint is that of its content as it stands, or else with its keys put in order by `ordered`, where that is given. */
export function fingerprintFits(graph: RuleGraph, ordered?: Ordered, sha256: Digest = ours): boolean {
  // As it was written its keys are in canonical order already; to put them there takes longer than to hash.
  if (sha256(sealedText(graph)) === graph.fingerprint) return true;
  return ordered !== undefined && sha256(JSON.stringify(ordered(withoutFingerprint(graph)))) === graph.fingerprint;
}

/**
 * What the fingerprint of a graph as `compile` wrote it is the SHA-256 of (its UTF-8 bytes, in hex): for a host that has a digest of its own. Of a
 * graph whose keys were put in another order since, `canonical` puts them back first.
 *
 * @example createHash('sha256').update(sealedText(graph)).digest('hex') === graph.fingerprint
 */
export function sealedText(graph: RuleGraph): string {
  return JSON.stringify(withoutFingerprint(graph));
}

function withoutFingerprint(graph: Omit<RuleGraph, 'fingerprint'> & { readonly fingerprint?: string }): Omit<RuleGraph, 'fingerprint'> {
  const { fingerprint: _, ...rest } = graph;
  return rest;
}

/** The graph with its fingerprint, its keys in canonical order. `sha256` as for {@link graphFingerprint}. */
export function sealed(graph: Omit<RuleGraph, 'fingerprint'>, sha256: Digest = ours): RuleGraph {
  const { format, version, ...rest } = canonical(graph);
  return { format, version, fingerprint: sha256(JSON.stringify({ format, version, ...rest })), ...rest };
}
