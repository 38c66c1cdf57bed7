/**
 * The titles and units of everything that an explanation mentions, so that it can be put into words without the schedule.
 */
import type { RuleGraph } from '../graph/rule-graph.js';
import type { Names } from './explanation.js';

/** Names for all ids that occur in `parts` as a value or a key; others are left out. */
export function namesIn(graph: RuleGraph, parts: unknown): Names {
  const words = new Set<string>();
  gather(parts, words);
  const titles = (things: readonly { readonly id: string; readonly title: string }[]): Record<string, string> =>
    byId(things, words, (thing) => thing.title);
  return {
    meters: byId(graph.meters, words, ({ title, unit }) => ({ title, unit })),
    gauges: byId(graph.gauges, words, ({ title, unit }) => ({ title, unit })),
    dipsticks: byId(graph.dipsticks, words, ({ title, litres }) => ({ title, litres })),
    duties: titles(graph.duties),
    events: titles(graph.events),
    attachments: titles(graph.attachments),
    defects: titles(graph.defects),
    tasks: titles(graph.tasks),
  };
}

/** Names for everything in a schedule. */
export function namesOf(graph: RuleGraph): Names {
  const { meters, gauges, dipsticks, duties, events, attachments, defects, tasks } = graph;
  return namesIn(
    graph,
    [meters, gauges, dipsticks, duties, events, attachments, defects, tasks].map((things) =>
      things.map((thing: { readonly id: string }) => thing.id),
    ),
  );
}

function byId<T extends { readonly id: string }, N>(
  things: readonly T[],
  words: ReadonlySet<string>,
  name: (thing: T) => N,
): Record<string, N> {
  return Object.fromEntries(things.filter((thing) => words.has(thing.id)).map((thing) => [thing.id, name(thing)]));
}

function gather(value: unknown, into: Set<string>): void {
  if (typeof value === 'string') into.add(value);
  else if (Array.isArray(value)) for (const item of value) gather(item, into);
  else if (typeof value === 'object' && value !== null) {
    for (const [key, item] of Object.entries(value)) {
      into.add(key);
      gather(item, into);
    }
  }
}
