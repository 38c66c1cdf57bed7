/**
 * The titles and units of everything that an explanation mentions, so that it can be put into words without the schedule.
 */
import { addTo } from '../base/gather.js';
import { declaredEvents } from '../graph/noted-events.js';
import type { RuleGraph } from '../graph/rule-graph.js';
import type { Names } from './explanation.js';

/** The name of one thing, and among which things it is one. */
export interface Named {
  /** Its number among the names of the schedule. */
  readonly at: number;
  readonly among: keyof Names;
  readonly id: string;
  readonly name: Names[keyof Names][string];
}

/** What goes by an id, in a schedule: a task and an event may have the same. */
export type NamesById = ReadonlyMap<string, readonly Named[]>;

/** Names for those of the words that are ids; others are left out. */
export function namesIn(graph: RuleGraph, words: ReadonlySet<string>): Names {
  return namesWhere(graph, ({ id }) => words.has(id));
}

/** Names for everything in a schedule. */
export function namesOf(graph: RuleGraph): Names {
  return namesWhere(graph, () => true);
}

function namesWhere(graph: RuleGraph, isWanted: (thing: { readonly id: string }) => boolean): Names {
  const titles = (things: readonly { readonly id: string; readonly title: string }[]): Record<string, string> =>
    byId(things, isWanted, (thing) => thing.title);
  return {
    meters: byId(graph.meters, isWanted, ({ title, unit }) => ({ title, unit })),
    gauges: byId(graph.gauges, isWanted, ({ title, unit }) => ({ title, unit })),
    dipsticks: byId(graph.dipsticks, isWanted, ({ title, litres }) => ({ title, litres })),
    duties: titles(graph.duties),
    events: titles(declaredEvents(graph)),
    attachments: titles(graph.attachments),
    defects: titles(graph.defects),
    tasks: titles(graph.tasks),
  };
}

/** The names of a schedule for looking up. */
export function namesById(graph: RuleGraph): NamesById {
  const found = new Map<string, Named[]>();
  let at = 0;
  for (const [among, names] of Object.entries(namesOf(graph)) as [keyof Names, Names[keyof Names]][]) {
    for (const [id, name] of Object.entries<Named['name']>(names)) addTo(found, id, { at: at++, among, id, name });
  }
  // As a key it would reach into the object that holds it.
  found.delete('__proto__');
  return found;
}

/** What is named by a text or a key anywhere in a plain value. */
export function namedIn(value: unknown, known: NamesById): readonly Named[] {
  const found = new Set<Named>();
  eachWord(value, (word) => known.get(word)?.forEach((named) => found.add(named)));
  return [...found];
}

/** Most growths that are kept of one set of names: more than any task's history mentions in ways of its own. */
const MOST_KEPT = 200;

/**
 * Names that grow by one after the other. What they grow to is kept: whoever explains a schedule's tasks for many machines and moments meets the same
 * things mentioned again and again.
 */
export class GrowingNames {
  private readonly grown = new Map<number, GrowingNames>();

  /** `isNamed`: what has a name there, by its number. */
  constructor(
    readonly names: Names,
    private readonly isNamed: readonly boolean[],
    private readonly kept: { count: number } = { count: 0 },
  ) {}

  /** With some more; where all are there, the very same. */
  with(more: readonly Named[]): GrowingNames {
    return more.reduce<GrowingNames>(
      (all, one) => (all.isNamed[one.at] === true ? all : (all.grown.get(one.at) ?? all.grownBy(one))),
      this,
    );
  }

  private grownBy({ at, among, id, name }: Named): GrowingNames {
    const isNamed = [...this.isNamed];
    isNamed[at] = true;
    const grown = new GrowingNames({ ...this.names, [among]: { ...this.names[among], [id]: name } }, isNamed, this.kept);
    if (this.kept.count < MOST_KEPT) this.grown.set(at, grown);
    this.kept.count += 1;
    return grown;
  }
}

/** All that is written anywhere in a plain value, as a text or as a key. */
export function wordsIn(value: unknown): ReadonlySet<string> {
  const words = new Set<string>();
  eachWord(value, (word) => words.add(word));
  return words;
}

function byId<T extends { readonly id: string }, N>(
  things: readonly T[],
  isWanted: (thing: T) => boolean,
  name: (thing: T) => N,
): Record<string, N> {
  return Object.fromEntries(things.filter(isWanted).map((thing) => [thing.id, name(thing)]));
}

function eachWord(value: unknown, take: (word: string) => unknown): void {
  if (typeof value === 'string') take(value);
  else if (Array.isArray(value)) for (const item of value) eachWord(item, take);
  else if (typeof value === 'object' && value !== null) {
    for (const key of Object.keys(value)) {
      take(key);
      eachWord(Reflect.get(value, key), take);
    }
  }
}
