import type { MarksNode } from '../../graph/rule-graph.js';
import type { LimitFacts } from '../assessment.js';
import { type Axis, axisOf } from '../axis.js';
import { type AxisValue, doingsOf } from '../doings.js';
import { judge } from '../judge.js';
import type { Reach } from '../reach.js';
import type { TriggerContext } from '../trigger-context.js';
import type { World } from '../world.js';
import { lacksBase, lacksNow } from './interval.js';
import { baseForMarks, unmetMark } from '../marks.js';

/** Every multiple of so much on a meter (docs/meaning.md §4, "On marks"). */
export function marks(world: World, node: MarksNode, context: TriggerContext): Reach {
  const axis = axisOf(world, node.amount);
  const size = node.amount.ticks;
  const found = baseForMarks(world, axis, doingsOf(world, context.task));
  if (found !== null && 'missing' in found) return lacksBase(world, node, found);
  const now = axis.now(null);
  // Without a reading nobody can say which marks have passed, whatever they are counted from.
  if (now === null) return lacksNow(world, node, axis, { entries: [] });
  const latest = Math.floor(now.value / size) * size;
  if (found === null && latest > 0)
    return lacksBase(world, node, {
      missing: { what: 'record', task: context.task },
      unrecorded: true,
      entries: now.entries,
      limit: standsAt(axis, now),
    });
  const metUpTo = found === null ? 0 : found.value + (found.why === 'start' ? 0 : node.early.size);
  const next = (Math.floor(metUpTo / size) + 1) * size;
  const { due, missed } = unmetMark(next, latest, (latest - next) / size);
  const base = { value: due - size, why: found?.why ?? ('mark' as const), when: found?.when ?? null, entries: found?.entries ?? [] };
  return judge(world, node, axis, {
    base,
    due,
    now,
    ...(missed > 0 ? { note: { is: 'marks-missed', count: missed } as const } : {}),
    ...(found === null ? {} : { stood: [axis.point(found.value)] }),
  });
}

/** Of a limit without a base nothing is known but where its meter stands. */
function standsAt(axis: Axis, { value, entries }: AxisValue): LimitFacts {
  const now = { point: axis.point(value), entries };
  return { base: null, span: null, due: null, overdueAfter: null, comingUpFrom: null, now, left: null, used: null };
}
