import { assertNever } from '../base/assert-never.js';
import type { NodeId } from '../graph/rule-graph.js';
import type { Reach } from './reach.js';
import { asked } from './triggers/asked.js';
import { calendarMarks, calendarWindow } from './triggers/calendar-marks.js';
import { dutyMix } from './triggers/duty-mix.js';
import { first } from './triggers/first.js';
import { attaching, event, refuelling } from './triggers/happening.js';
import { interval } from './triggers/interval.js';
import { marks } from './triggers/marks.js';
import { occasion } from './triggers/occasion.js';
import { sooner } from './triggers/sooner.js';
import { stages } from './triggers/stages.js';
import { when } from './triggers/when.js';
import { whichever } from './triggers/whichever.js';
import { whileHolds } from './triggers/while.js';
import type { TriggerContext } from './trigger-context.js';
import type { World } from './world.js';

/** Evaluates a trigger node for one task; each kind has a file of its own. */
export function evaluate(world: World, id: NodeId, context: TriggerContext): Reach {
  world.step();
  const node = world.trigger(id);
  switch (node.kind) {
    case 'interval':
      return interval(world, node, context);
    case 'duty-mix':
      return dutyMix(world, node, context);
    case 'stages':
      return stages(world, node, context);
    case 'first':
      return first(world, node, context);
    case 'marks':
      return marks(world, node, context);
    case 'calendar-marks':
      return calendarMarks(world, node, context);
    case 'calendar-window':
      return calendarWindow(world, node, context);
    case 'whichever':
    case 'any':
      return whichever(world, node, context);
    case 'occasion':
      return occasion(world, node, context);
    case 'attaching':
      return attaching(world, node, context);
    case 'refuelling':
      return refuelling(world, node, context);
    case 'event':
      return event(world, node, context);
    case 'when':
      return when(world, node, context);
    case 'while':
      return whileHolds(world, node, context);
    case 'asked':
      return asked(world, node, context);
    case 'sooner':
      return sooner(world, node, context);
    default:
      return assertNever(node);
  }
}
