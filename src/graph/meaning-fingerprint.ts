/**
 * What a graph means, apart from how it was written down: for pinning an edition and for telling whether an edit changed anything.
 */
import { keysInOrder } from './canonical-json.js';
import { lists } from './names-in-graph.js';
import type { Node, NodeId, RuleGraph } from './rule-graph.js';
import { type Digest, sha256 as ours } from '../base/sha256.js';

/** Lists whose order says nothing. Parts of `whichever` are not among them: of equals, the part written first governs. */
const unordered: ReadonlySet<string> = /* @__PURE__ */ new Set([
  ...lists,
  ...['stops', 'places', 'walks', 'steps', 'nevers', 'fits', 'covers', 'restarts', 'follows', 'metBy', 'mends'],
]);

/** Keys that hold node ids, by the kind of thing that has them; the rest of the graph has none. */
const nodeKeys = new Set(['trigger', 'gate', 'stance', 'condition', 'while', 'first', 'then', 'part', 'parts']);

/**
 * SHA-256, in hex, of what the graph means. Layout, comments, places, the edition's number and date, the order of declarations, and of clauses whose
 * order says nothing leave it as it is; any other change alters it. `sha256` may be the host's own, which is quicker.
 */
export function meaningFingerprint(graph: RuleGraph, sha256: Digest = ours): string {
  const { fingerprint: _f, sources: _s, nodes, schedule, ...rest } = graph;
  const { edition: _e, ...lasting } = schedule;
  return sha256(meaningText({ schedule: lasting, ...rest }, nodes));
}

/** The canonical text of a part of a graph, with its nodes put in and its places left out: equal texts mean the same. */
export function meaningText(value: unknown, nodes: readonly Node[], key = ''): string {
  return JSON.stringify(new Meaning(nodes).of(value, key));
}

/** Parts of one graph as plain values: one spelling for one meaning. */
class Meaning {
  readonly #nodes: readonly Node[];
  readonly #keysOf = keysInOrder();

  constructor(nodes: readonly Node[]) {
    this.#nodes = nodes;
  }

  /** @param key what the value stands under; a list in a list stands under nothing. */
  of(value: unknown, key: string): unknown {
    if (nodeId(value, key)) return this.of(this.#nodes[value] ?? null, '');
    if (typeof value !== 'object' || value === null) return value;
    return Array.isArray(value) ? this.#list(value, key) : this.#object(value);
  }

  #list(list: readonly unknown[], key: string): readonly unknown[] {
    const items = list.map((item) => this.of(item, typeof item === 'number' ? key : ''));
    return isUnordered(key) ? inOrderOfText(items) : items;
  }

  #object(value: object): object {
    const kind = 'kind' in value && typeof value.kind === 'string' && 'id' in value && typeof value.id === 'number' ? value.kind : null;
    const plain: Record<string, unknown> = {};
    for (const name of this.#keysOf(value)) {
      if (name === 'origin' || (kind !== null && name === 'id')) continue;
      plain[name] = this.of(Reflect.get(value, name), kind !== null && name === 'parts' ? `${kind} parts` : name);
    }
    return plain;
  }
}

/** Sorted by how they are spelled, code unit by code unit. */
function inOrderOfText(items: readonly unknown[]): readonly unknown[] {
  if (items.length < 2) return items;
  const spelled = items.map((item) => ({ item, text: JSON.stringify(item) }));
  return spelled.sort((a, b) => (a.text < b.text ? -1 : a.text > b.text ? 1 : 0)).map(({ item }) => item);
}

function isUnordered(key: string): boolean {
  return unordered.has(key) || key === 'any parts' || key === 'and parts' || key === 'or parts';
}

function nodeId(value: unknown, key: string): value is NodeId {
  return typeof value === 'number' && nodeKeys.has(key.endsWith(' parts') ? 'parts' : key);
}
