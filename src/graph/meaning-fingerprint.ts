/**
 * What a graph means, apart from how it was written down: for pinning an edition and for telling whether an edit changed anything.
 */
import { keysInOrder } from './canonical-json.js';
import { lists } from './names-in-graph.js';
import type { Node, NodeId, RuleGraph } from './rule-graph.js';
import { sha256 } from '../base/sha256.js';

/** Lists whose order says nothing. Parts of `whichever` are not among them: of equals, the part written first governs. */
const unordered: ReadonlySet<string> = /* @__PURE__ */ new Set([
  ...lists,
  ...['stops', 'places', 'walks', 'steps', 'nevers', 'fits', 'covers', 'restarts', 'follows', 'metBy', 'mends'],
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
  return sha256(new Speller(nodes).spell({ schedule: lasting, ...rest }, ''));
}

/** The canonical text of a part of a graph, with its nodes put in and its places left out: equal texts mean the same. */
export function meaningText(value: unknown, nodes: readonly Node[], key = ''): string {
  return new Speller(nodes).spell(value, key);
}

/** Spells parts of one graph. */
class Speller {
  readonly #nodes: readonly Node[];
  readonly #keysOf = keysInOrder();

  constructor(nodes: readonly Node[]) {
    this.#nodes = nodes;
  }

  spell(value: unknown, key: string): string {
    if (nodeId(value, key)) return this.spell(this.#nodes[value], '');
    if (Array.isArray(value)) return this.#list(value, key);
    return typeof value === 'object' && value !== null ? this.#object(value) : scalar(value);
  }

  #list(list: readonly unknown[], key: string): string {
    const items = list.map((item) => (nodeId(item, key) ? this.spell(this.#nodes[item], '') : this.spell(item, `${key}[]`)));
    return `[${(isUnordered(key) ? items.sort() : items).join(',')}]`;
  }

  #object(value: object): string {
    const kind = 'kind' in value && typeof value.kind === 'string' && 'id' in value && typeof value.id === 'number' ? value.kind : null;
    let text = '';
    for (const name of this.#keysOf(value)) {
      const member: unknown = Reflect.get(value, name);
      if (member === undefined || name === 'origin' || (kind !== null && name === 'id')) continue;
      const key = kind !== null && name === 'parts' ? `${kind} parts` : name;
      text += `${text === '' ? '' : ','}${JSON.stringify(name)}:${this.spell(member, key)}`;
    }
    return `{${text}}`;
  }
}

function isUnordered(key: string): boolean {
  return unordered.has(key) || key === 'any parts' || key === 'and parts' || key === 'or parts';
}

function nodeId(value: unknown, key: string): value is NodeId {
  return typeof value === 'number' && nodeKeys.has(key.endsWith(' parts') ? 'parts' : key);
}

function scalar(value: unknown): string {
  return typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean' ? JSON.stringify(value) : 'null';
}
