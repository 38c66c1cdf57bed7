/**
 * A walk-round that is under way: what it was planned from, and what is ticked. It outlives a page that is closed half way.
 *
 * The plan itself is not kept: the same graph, tasks, stance and end give the same lines again.
 */
import type { RuleGraph, Stance, WalkRound } from '../../../engine.js';
import { walkRound } from '../../../engine.js';
import type { ReadingValue } from './reading-fields.js';

export interface WalkProgress {
  /** The schedule that it was planned by: another edition begins anew. */
  readonly fingerprint: string;
  readonly tasks: readonly string[];
  readonly stance: Stance;
  readonly end: 'rest' | 'work';
  /** Numbers of lines. */
  readonly ticked: readonly number[];
  readonly readings: Readonly<Record<string, ReadingValue>>;
}

/** What was kept, if it belongs to this schedule. */
export function readProgress(text: string | null, graph: RuleGraph): WalkProgress | null {
  if (text === null) return null;
  try {
    const kept = JSON.parse(text) as WalkProgress;
    return kept.fingerprint === graph.fingerprint && Array.isArray(kept.tasks) && Array.isArray(kept.ticked) ? kept : null;
  } catch {
    return null;
  }
}

/** The plan that it follows. */
export function planOf({ tasks, stance, end }: WalkProgress, graph: RuleGraph): WalkRound {
  return walkRound(graph, tasks, { stance, end });
}

/** The tasks whose lines are ticked. */
export function tasksTicked(walk: WalkRound, ticked: readonly number[]): readonly string[] {
  return walk.lines.flatMap((line) => (line.kind === 'task' && ticked.includes(line.number) ? [line.task] : []));
}

/** How the machine stands after the last line that is ticked. */
function stanceAfter(walk: WalkRound, ticked: readonly number[]): Stance {
  const last = walk.lines.findLast(({ number }) => ticked.includes(number));
  return last?.stance ?? walk.start.stance;
}

/** The parts that stand otherwise than at the start: what is to be written down of the stance. `null` where nothing is. */
export function positionsChanged(walk: WalkRound, ticked: readonly number[]): Stance | null {
  const after = stanceAfter(walk, ticked);
  const changed = Object.entries(after).filter(([part, position]) => walk.start.stance[part] !== position);
  return changed.length === 0 ? null : Object.fromEntries(changed);
}
