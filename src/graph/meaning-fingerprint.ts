/**
 * What a graph means, apart from how it was written down: for pinning an edition and for telling whether an edit changed anything.
 */
import { compareKeys } from './canonical-json.js';
import type { Node, NodeId, RuleGraph } from './rule-graph.js';
import { sha256 } from '../base/sha256.js';

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
  return sha256(new Speller(nodes).spell({ schedule: lasting, ...rest }, ''));
}

/** The canonical text of a part of a graph, with its nodes put in and its places left out: equal texts mean the same. */
export function meaningText(value: unknown, nodes: readonly Node[], key = ''): string {
  return new Speller(nodes).spell(value, key);
}

/** A member that is spelled: its name, the same as JSON with a colon, and where its value stands. */
interface Spelled {
  readonly name: string;
  readonly start: string;
  readonly key: string;
}

/** Spells parts of one graph; a class because it remembers which members objects of one shape have, of which a graph has thousands. */
class Speller {
  readonly #nodes: readonly Node[];
  readonly #shapes = new Map<string, readonly Spelled[]>();

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
    let text = '';
    for (const { name, start, key } of this.#membersOf(value)) {
      const member: unknown = Reflect.get(value, name);
      if (member !== undefined) text += `${text === '' ? '' : ','}${start}${this.spell(member, key)}`;
    }
    return `{${text}}`;
  }

  #membersOf(value: object): readonly Spelled[] {
    const kind = 'kind' in value && typeof value.kind === 'string' && 'id' in value && typeof value.id === 'number' ? value.kind : null;
    const names = Object.keys(value);
    const shape = JSON.stringify([kind, ...names]);
    const known = this.#shapes.get(shape);
    if (known !== undefined) return known;
    const kept = names.filter((name) => name !== 'origin' && !(kind !== null && name === 'id'));
    const members = kept.sort(compareKeys).map((name) => ({
      name,
      start: `${JSON.stringify(name)}:`,
      key: kind !== null && name === 'parts' ? `${kind} parts` : name,
    }));
    this.#shapes.set(shape, members);
    return members;
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
