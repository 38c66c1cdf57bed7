import type { RuleGraph } from '../graph/rule-graph.js';
import type { Entry } from '../history/entry.js';
import type { Moment } from '../values/moment.js';
import { type NextMeter, nextMeters } from './next-meters.js';
import { type NextMoment, type NextOptions, nextMoment } from './next-moment.js';

/** When to look again: by the calendar and the clock, and by each meter. */
export interface NextChange {
  readonly moment: NextMoment | null;
  readonly meters: readonly NextMeter[];
}

/**
 * Call me when: the next moment, and the next value of each meter, at which anything changes state.
 *
 * Between now and the moment, while nothing is recorded, and between the last reading of a meter and its value, nothing changes. Time at
 * work counts with the outings that record it; while one is under way it is part of the moment.
 *
 * @example nextChange(graph, entries, now).moment?.at // put this into the alarm
 */
export function nextChange(graph: RuleGraph, entries: readonly Entry[], now: Moment, options: NextOptions = {}): NextChange {
  return { moment: nextMoment(graph, entries, now, options), meters: nextMeters(graph, entries, now, options) };
}
