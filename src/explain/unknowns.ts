/**
 * What a task's answer would need and nobody has recorded.
 */
import type { Missing, Observation, TaskAssessment } from '../assess/assessment.js';
import { assertNever } from '../base/assert-never.js';
import type { NodeId } from '../graph/rule-graph.js';
import type { Unknown } from './explanation.js';

const NOTHING: readonly never[] = [];

/** Each once, with the first rule that misses it. */
export function unknownsOf(assessed: TaskAssessment, observations: readonly Observation[]): readonly Unknown[] {
  if (assessed.missing.length === 0 && observations.every(({ missing }) => missing === undefined)) return NOTHING;
  const found = new Map<string, Unknown>();
  for (const seen of observations) {
    for (const missing of seen.missing ?? []) note(found, missing, seen.node);
  }
  for (const missing of assessed.missing) note(found, missing, null);
  return [...found.values()];
}

function note(found: Map<string, Unknown>, missing: Missing, node: NodeId | null): void {
  const key = keyOf(missing);
  if (!found.has(key)) found.set(key, { missing, node, settledBy: settledBy(missing) });
}

/** The same for two that say the same. */
function keyOf(missing: Missing): string {
  const { what } = missing;
  if (what === 'reading') return `${what} ${missing.because} ${missing.instrument}`;
  return `${what} ${subjectOf(missing)} ${what === 'meter-at-doing' ? missing.entry : ''}`;
}

/** The id of what is not known of: an instrument, a meter, a task, a defect; nothing for the machine as a whole. */
export function subjectOf(missing: Missing): string {
  switch (missing.what) {
    case 'reading':
      return missing.instrument;
    case 'meter':
    case 'meter-at-doing':
      return missing.meter;
    case 'record':
      return missing.task;
    case 'class':
      return missing.defect;
    case 'time-of-day':
      return missing.entry ?? '';
    case 'in-service':
    case 'outing':
      return '';
    default:
      return assertNever(missing);
  }
}

function settledBy(missing: Missing): Unknown['settledBy'] {
  switch (missing.what) {
    case 'reading':
      return 'read-instrument';
    case 'meter':
      return 'read-meter';
    case 'meter-at-doing':
      return 'note-meter-at-doing';
    case 'record':
      return 'record-or-state';
    case 'in-service':
      return 'state-in-service';
    case 'outing':
      return 'record-outing';
    case 'class':
      return 'note-class';
    case 'time-of-day':
      return 'note-time';
    default:
      return assertNever(missing);
  }
}
