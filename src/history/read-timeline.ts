/**
 * A history laid out whole: every sort of fact that entries can state.
 */
import type { Moment } from '../values/moment.js';
import type { Entry } from './entry.js';
import { everyFact } from './every-fact.js';
import { layOut } from './lay-out.js';
import type { MachineModel } from './schedule-names.js';
import type { Timeline } from './timeline.js';

/**
 * Lays out what `entries` say of the machine as of `now` (docs/meaning.md §1 to §3).
 *
 * Total: whatever the entries say, there is a timeline; what cannot be used is among its suspects or strays. The order of `entries`
 * does not matter.
 *
 * @param model the rule graph of the schedule, or the part of it that says what the machine has.
 * @example readTimeline(entries, graph, { day, minute: null }).meters.get('engine')?.points.at(-1)?.total
 */
export function readTimeline(entries: readonly Entry[], model: MachineModel, now: Moment): Timeline {
  return layOut(everyFact, entries, model, now);
}
