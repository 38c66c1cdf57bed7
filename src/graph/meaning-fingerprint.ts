/**
 * What a graph means, apart from how it was written down: for pinning an edition and for telling whether an edit changed anything.
 */
import { compareTexts } from '../base/compare-texts.js';
import { keysInOrder } from './canonical-json.js';
import { lists } from './names-in-graph.js';
import type { Node, RuleGraph } from './rule-graph.js';
import { type Digest, sha256 as ours } from '../base/sha256.js';

/** Lists whose order says nothing. Parts of `whichever` are not among them: of equals, the part written first governs. */
const unordered: ReadonlySet<string> = /* @__PURE__ */ new Set([
  ...lists,
  ...['stops', 'places', 'walks', 'steps', 'nevers', 'fits', 'covers', 'restarts', 'follows', 'metBy', 'mends'],
]);

/** Nodes of which the order of their parts says nothing. */
const anyOrder: ReadonlySet<string> = /* @__PURE__ */ new Set(['any', 'and', 'or']);

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
  const meaning = new Meaning(nodes);
  return JSON.stringify(isNode(value) ? meaning.ofNode(value) : meaning.of(value, key));
}

/** Parts of one graph as plain values: one spelling for one meaning. */
class Meaning {
  readonly #nodes: readonly Node[];
  readonly #keysOf = keysInOrder();

  constructor(nodes: readonly Node[]) {
    this.#nodes = nodes;
  }

  /** @param key what the value stands under; what is in a list of lists or objects stands under nothing. */
  of(value: unknown, key: string): unknown {
    if (typeof value === 'number') return nodeKeys.has(key) ? this.ofNode(this.#nodes[value]) : value;
    if (typeof value !== 'object' || value === null) return value;
    return Array.isArray(value) ? this.#list(value, key) : this.#object(value);
  }

  #list(list: readonly unknown[], key: string): readonly unknown[] {
    // Most lists of a task are empty.
    if (list.length === 0) return list;
    const items = list.map((item) => this.of(item, typeof item === 'number' ? key : ''));
    return unordered.has(key) ? inOrderOfText(items) : items;
  }

  #object(value: object): object {
    const plain: Record<string, unknown> = {};
    for (const name of this.#keysOf(value)) if (name !== 'origin') plain[name] = this.of(Reflect.get(value, name), name);
    return plain;
  }

  /** Its number says nothing, and where its parts are told apart by their kind alone, their order does not. */
  ofNode(node: Node | undefined): object | null {
    if (node === undefined) return null;
    const { id: _, ...rest } = node;
    const plain = this.#object(rest);
    return 'parts' in plain && anyOrder.has(node.kind) ? { ...plain, parts: inOrderOfText(plain.parts as readonly unknown[]) } : plain;
  }
}

/** A node, or a copy of one. */
function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && 'kind' in value && 'id' in value && typeof value.id === 'number';
}

/** Sorted by how they are spelled, code unit by code unit. */
function inOrderOfText(items: readonly unknown[]): readonly unknown[] {
  if (items.length < 2) return items;
  const spelled = items.map((item) => ({ item, text: JSON.stringify(item) }));
  return spelled.sort((a, b) => compareTexts(a.text, b.text)).map(({ item }) => item);
}
