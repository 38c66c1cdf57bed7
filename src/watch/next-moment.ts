/** Call me when: the next moment at which anything changes, if nothing is recorded until then. */
import { assessTimeline } from '../assess/assess.js';
import type { AssessOptions } from '../assess/assessment.js';
import type { RuleGraph } from '../graph/rule-graph.js';
import type { Entry } from '../history/entry.js';
import { readTimeline } from '../history/read-timeline.js';
import { firstMinute, type Day, type Moment } from '../values/moment.js';
import { momentsAhead } from './moments-ahead.js';
import { type Turn, turnBetween } from './turning.js';

/** The next moment at which anything changes. */
export interface NextMoment {
  readonly at: Moment;
  /** What changes; `null` if so many moments were looked at that the search gave up here: nothing changes before it. */
  readonly turn: Turn | null;
}

export interface NextOptions extends AssessOptions {
  /** How many days to look ahead. Default 3660. */
  readonly horizon?: number;
  /** Most moments, or values of one meter, to look at. Default 500. */
  readonly looks?: number;
}

const DEFAULT_HORIZON = 3660;
export const DEFAULT_LOOKS = 500;

/**
 * The first moment after `now` at which a state, the verdict, a hold or a caution changes of itself: a limit comes up, falls due or is
 * overdue, a reading grows too old, a season, an age, an idle time, an entry dated ahead begins to count. To the minute if `now` has
 * one, otherwise to the day. `null` if nothing does within the horizon.
 *
 * Nothing changes before the moment it names. It looks only at moments at which something can turn, and at each assesses anew, so what
 * it says of the moment is what `assess` says.
 */
export function nextMoment(graph: RuleGraph, entries: readonly Entry[], now: Moment, options: NextOptions = {}): NextMoment | null {
  const { horizon = DEFAULT_HORIZON, looks = DEFAULT_LOOKS } = options;
  const assessed = (at: Moment) => {
    const timeline = readTimeline(entries, graph, at);
    return { timeline, assessment: assessTimeline(graph, timeline, at, { ...options, withoutRecord: false }) };
  };
  const first = assessed(now);
  let [look, at] = [first, now];
  for (let count = 0; count < looks; count += 1) {
    const ahead = momentsAhead({ graph, entries, now: at, options, ...look });
    const next = ahead.reduce((least, each) => (each > firstMinute(at) && each < least ? each : least), Infinity);
    if (next > (now.day + horizon) * 1440) return null;
    at = { day: Math.floor(next / 1440) as Day, minute: now.minute === null ? null : next % 1440 };
    look = assessed(at);
    const turn = turnBetween(first.assessment, look.assessment);
    if (turn !== null) return { at, turn };
  }
  return { at, turn: null };
}
