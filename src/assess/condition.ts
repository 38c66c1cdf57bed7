import { assertNever } from '../base/assert-never.js';
import type { NodeId } from '../graph/rule-graph.js';
import type { EntryId } from '../history/entry.js';
import type { Moment } from '../values/moment.js';
import type { DuePoint, Missing, Note, Truth } from './assessment.js';
import { compare } from './conditions/compare.js';
import { age, idle, season } from './conditions/calendar.js';
import { and, not, or } from './conditions/logic.js';
import { recent } from './conditions/recent.js';
import { attachmentIs, defectIs, dutyIs, positionIs } from './conditions/standing.js';
import { trend } from './conditions/trend.js';
import type { World } from './world.js';

/** What a condition came to. */
export interface Finding {
  readonly truth: Truth;
  /** The newest thing on record that makes it so; `null` if nothing on record does (it was always so, or nobody knows). */
  readonly evidence: Moment | null;
  readonly entries: readonly EntryId[];
  readonly missing: readonly Missing[];
  readonly note?: Note;
  /** The values of an axis that it was worked out from. */
  readonly stood?: readonly DuePoint[];
}

/** Evaluates a condition node, three-valued (Kleene), and writes it into the record. */
export function test(world: World, id: NodeId): Finding {
  world.step();
  const found = look(world, id);
  world.observe({
    node: id,
    truth: found.truth,
    since: found.evidence,
    entries: found.entries,
    ...(found.missing.length === 0 ? {} : { missing: found.missing }),
    ...(found.note === undefined ? {} : { note: found.note }),
    ...(found.stood === undefined ? {} : { stood: found.stood }),
  });
  return found;
}

function look(world: World, id: NodeId): Finding {
  const node = world.condition(id);
  switch (node.kind) {
    case 'and':
      return and(world, node);
    case 'or':
      return or(world, node);
    case 'not':
      return not(world, node);
    case 'position-is':
      return positionIs(world, node);
    case 'attachment-is':
      return attachmentIs(world, node);
    case 'defect-is':
      return defectIs(world, node);
    case 'duty-is':
      return dutyIs(world, node);
    case 'compare':
      return compare(world, node);
    case 'trend':
      return trend(world, node);
    case 'recent':
      return recent(world, node);
    case 'age':
      return age(world, node);
    case 'idle':
      return idle(world, node);
    case 'season':
      return season(world, node);
    default:
      return assertNever(node);
  }
}

/** A finding that nothing more needs saying of. */
export function found(truth: boolean, evidence: Moment | null, entries: readonly EntryId[], note?: Note): Finding {
  return { truth: truth ? 'true' : 'false', evidence, entries, missing: [], ...(note === undefined ? {} : { note }) };
}

/** A finding that cannot be made. */
export function unknown(missing: Missing, evidence: Moment | null = null, entries: readonly EntryId[] = []): Finding {
  return { truth: 'unknown', evidence, entries, missing: [missing] };
}
