/** Limits that hold the machine once they are so late (docs/meaning.md §4, "Hard stops"). */
import type { LateHold, Margin, NodeId, Task } from '../graph/rule-graph.js';
import type { EntryId } from '../history/entry.js';
import type { Hold } from './assessment.js';
import type { LateStop, Reach } from './reach.js';

/** How a limit with a hard stop, and a task with such limits, hold the machine. */
export interface HardStops {
  /** The stop of a limit, where it is in force. */
  readonly inForce: typeof inForce;
  /** The stop that a limit which is unknown or unrecorded could hide. */
  readonly hidden: typeof hidden;
  /** What the stops of a task hold. */
  readonly holds: typeof holds;
}

export const hardStops: HardStops = { inForce, hidden, holds };

/** @param isPast whether the axis stands beyond a margin after the due point. */
function inForce(
  node: NodeId,
  { after, text }: LateHold,
  isPast: (margin: Margin) => boolean,
  entries: readonly EntryId[],
): readonly LateStop[] {
  return isPast(after) ? [{ node, text, truth: 'true', entries }] : [];
}

function hidden(node: NodeId, { text }: LateHold): readonly LateStop[] {
  return [{ node, text, truth: 'unknown', entries: [] }];
}

function holds(task: Task, { stops, missing }: Reach): readonly Hold[] {
  return stops.map((stop) => ({
    why: { is: 'late', task: task.id, node: stop.node },
    text: stop.text,
    truth: stop.truth,
    entries: stop.entries,
    missing: stop.truth === 'unknown' ? missing : [],
  }));
}
