import type { Event, RuleGraph } from './rule-graph.js';

/**
 * Events that somebody notes: not those that are the doing of a task, or happen on a day that the schedule names.
 *
 * @example notedEvents(graph).map(({ title }) => title) // what an app may offer under “What happened?”
 */
export function notedEvents(graph: Pick<RuleGraph, 'events'>): readonly Event[] {
  return declaredEvents(graph).filter(({ on }) => on === undefined);
}

/** Events that a schedule declares: not those that are the doing of a task. */
export function declaredEvents({ events }: Pick<RuleGraph, 'events'>): readonly Event[] {
  return events.filter(({ task }) => task === undefined);
}
