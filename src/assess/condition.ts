import { assertNever } from '../base/assert-never.js';
import type { NodeId } from '../graph/rule-graph.js';
import { compare } from './conditions/compare.js';
import { age, idle, season } from './conditions/calendar.js';
import { and, not, or } from './conditions/logic.js';
import { recent } from './conditions/recent.js';
import { attachmentIs, defectIs, dutyIs, positionIs } from './conditions/standing.js';
import { trend } from './conditions/trend.js';
import { atWork, unworked } from './conditions/work.js';
import type { Finding } from './finding.js';
import type { World } from './world.js';

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
      return and(world, node, test);
    case 'or':
      return or(world, node, test);
    case 'not':
      return not(world, node, test);
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
    case 'unworked':
      return unworked(world, node);
    case 'at-work':
      return atWork(world);
    case 'season':
      return season(world, node);
    default:
      return assertNever(node);
  }
}
