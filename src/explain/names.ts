/**
 * The titles and units of everything that an explanation mentions, so that it can be put into words without the schedule.
 */
import { addTo } from '../base/gather.js';
import type { RuleGraph } from '../graph/rule-graph.js';
import type { Names } from './explanation.js';

/** The name of one thing, and among which things it is one. */
export interface Named {
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
    events: titles(graph.events.filter(({ task }) => task === undefined)),
    attachments: titles(graph.attachments),
    defects: titles(graph.defects),
    tasks: titles(graph.tasks),
  };
}

/** The names of a schedule for looking up. */
export function namesById(graph: RuleGraph): NamesById {
  const found = new Map<string, Named[]>();
  for (const [among, names] of Object.entries(namesOf(graph)) as [keyof Names, Names[keyof Names]][]) {
    for (const [id, name] of Object.entries<Named['name']>(names)) addTo(found, id, { among, id, name });
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

/** The names, with more of them; where all are there, the very same. `named`: what has a name there. */
export function withNames(names: Names, named: ReadonlySet<Named>, more: readonly (readonly Named[])[]): Names {
  const grown: { -readonly [Among in keyof Names]?: Record<string, Named['name']> } = {};
  let hasGrown = false;
  for (const some of more) {
    for (const one of some) {
      if (named.has(one)) continue;
      (grown[one.among] ??= { ...names[one.among] })[one.id] = one.name;
      hasGrown = true;
    }
  }
  return hasGrown ? { ...names, ...(grown as Partial<Names>) } : names;
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
