/**
 * What a graph means, apart from how it was written down: for pinning an edition and for telling whether an edit changed anything.
 */
import { canonicalJson } from './canonical-json.js';
import type { Node, NodeId, RuleGraph } from './rule-graph.js';
import { sha256 } from '../base/sha256.js';

type Plain = null | boolean | number | string | readonly Plain[] | { readonly [key: string]: Plain };

/** Lists whose order says nothing. Parts of `whichever` are not among them: of equals, the part written first governs. */
const unordered = new Set([
  'meters',
  'gauges',
  'dipsticks',
  'duties',
  'attachments',
  'events',
  'supplies',
  'defects',
  'stops',
  'places',
  'walks',
  'steps',
  'nevers',
  'tasks',
  'fits',
  'covers',
  'restarts',
  'follows',
  'metBy',
  'mends',
]);

/** Keys that hold node ids, by the kind of thing that has them; the rest of the graph has none. */
const nodeKeys = new Set(['trigger', 'gate', 'stance', 'condition', 'while', 'first', 'then', 'part', 'parts']);

/**
 * SHA-256, in hex, of what the graph means. Layout, comments, places, the edition's number and date, the order of declarations, and of clauses whose
 * order says nothing leave it as it is; any other change alters it.
 */
export function meaningFingerprint(graph: RuleGraph): string {
  const { fingerprint: _f, sources: _s, nodes, schedule, ...rest } = graph;
  const { edition: _e, ...lasting } = schedule;
  return sha256(canonicalJson(plain({ schedule: lasting, ...rest }, nodes, '')));
}

/** The canonical text of a part of a graph, with its nodes put in and its places left out: equal texts mean the same. */
export function meaningText(value: unknown, nodes: readonly Node[], key = ''): string {
  return canonicalJson(plain(value, nodes, key));
}

function plain(value: unknown, nodes: readonly Node[], key: string): Plain {
  if (Array.isArray(value)) {
    const items = value.map((item: unknown) => plain(nodeId(item, key) ? nodes[item] : item, nodes, nodeId(item, key) ? '' : `${key}[]`));
    return unordered.has(key) || key === 'any parts' || key === 'and parts' || key === 'or parts' ? sorted(items) : items;
  }
  if (nodeId(value, key)) return plain(nodes[value], nodes, '');
  if (typeof value !== 'object' || value === null) return scalar(value);
  const kind = 'kind' in value && typeof value.kind === 'string' && 'id' in value && typeof value.id === 'number' ? value.kind : undefined;
  const kept = Object.entries(value).filter(
    ([name, item]) => item !== undefined && name !== 'origin' && !(kind !== undefined && name === 'id'),
  );
  return Object.fromEntries(
    kept.map(([name, item]) => [name, plain(item, nodes, kind !== undefined && name === 'parts' ? `${kind} parts` : name)]),
  );
}

function nodeId(value: unknown, key: string): value is NodeId {
  return typeof value === 'number' && nodeKeys.has(key.split(' ').at(-1) ?? key);
}

function scalar(value: unknown): Plain {
  return typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean' ? value : null;
}

function sorted(items: readonly Plain[]): readonly Plain[] {
  const spelled = items.map((item) => ({ item, text: canonicalJson(item) }));
  return spelled.sort((a, b) => (a.text < b.text ? -1 : 1)).map(({ item }) => item);
}
