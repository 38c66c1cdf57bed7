import { assertNever } from '../../base/assert-never.js';
import type { OccasionNode } from '../../graph/rule-graph.js';
import type { EntryId } from '../../history/entry.js';
import { type Moment, notBefore } from '../../values/moment.js';
import type { Note } from '../assessment.js';
import { type EffectiveDoing, realDoings } from '../doings.js';
import { isAfterOuting, outingBefore, outingOver, type Round, workOn } from '../occasions.js';
import { dueSince, quiet, type Reach } from '../reach.js';
import type { TriggerContext } from '../trigger.js';
import type { World } from '../world.js';

/** Before or after work, each outing, each shift, or storage (docs/meaning.md §5). */
export function occasion(world: World, node: OccasionNode, context: TriggerContext): Reach {
  const last = realDoings(world, context.task).findLast((doing) => doing.when !== null);
  if (node.when === 'before')
    return node.of === 'storage' ? beforeStorage(world, node, last) : beforeWork(world, node, roundOf(node.of), last);
  return node.of === 'storage'
    ? afterStorage(world, node, last)
    : afterWork(world, node, node.of === 'work' ? 'work' : roundOf(node.of), last);
}

function roundOf(of: Exclude<OccasionNode['of'], 'storage'>): Round {
  switch (of) {
    case 'day':
    case 'outing':
    case 'shift':
      return of;
    case 'work':
      return 'day';
    default:
      return assertNever(of);
  }
}

function beforeWork(world: World, node: OccasionNode, round: Round, last: EffectiveDoing | undefined): Reach {
  const work = workOn(world, round);
  if (work === null) return settle(world, node, null, [], { is: 'no-work' });
  const before = outingBefore(world, round, work);
  const isDone = last?.when != null && (before === null || isAfterOuting(last.when, before));
  const note: Note = { is: 'work-on', intended: work.intended, lastEnd: before?.end ?? null, done: last?.when ?? null };
  const entries = [
    ...(work.outing === null ? [] : [work.outing.entry]),
    ...(before === null ? [] : [before.entry]),
    ...(last?.entries ?? []),
  ];
  return settle(world, node, isDone ? null : (work.outing?.when ?? world.now), entries, note);
}

function afterWork(world: World, node: OccasionNode, round: Round | 'work', last: EffectiveDoing | undefined): Reach {
  const over = outingOver(world, round);
  if (over?.end == null) return settle(world, node, null, [], { is: 'no-work' });
  return answeredBy(world, node, over.end, [over.entry], last);
}

function beforeStorage(world: World, node: OccasionNode, last: EffectiveDoing | undefined): Reach {
  const stored = world.timeline.storage.at(-1);
  const inStorage = stored !== undefined && stored.end === null;
  if (world.options.intent?.storage !== true && !inStorage) return settle(world, node, null, [], { is: 'no-work' });
  const out = outingOver(world, 'work');
  const since = out?.end ?? null;
  const isDone = last?.when != null && (since === null || notBefore(last.when, since));
  const entries = [...(inStorage ? [stored.begin.entry] : []), ...(out === null ? [] : [out.entry]), ...(last?.entries ?? [])];
  const note: Note = { is: 'work-on', intended: !inStorage, lastEnd: since, done: last?.when ?? null };
  return settle(world, node, isDone ? null : inStorage ? stored.begin.when : world.now, entries, note);
}

function afterStorage(world: World, node: OccasionNode, last: EffectiveDoing | undefined): Reach {
  const spell = world.timeline.storage.findLast(({ end }) => end !== null);
  if (spell?.end == null) return settle(world, node, null, [], { is: 'not-happened' });
  return answeredBy(world, node, spell.end.when, [spell.begin.entry, spell.end.entry], last);
}

/** Due since something happened, unless it was done since (the same day counts). */
function answeredBy(world: World, node: OccasionNode, since: Moment, entries: readonly EntryId[], last: EffectiveDoing | undefined): Reach {
  const isDone = last?.when != null && notBefore(last.when, since);
  return settle(world, node, isDone ? null : since, [...entries, ...(last?.entries ?? [])], {
    is: 'happened',
    when: since,
    done: last?.when ?? null,
  });
}

function settle(world: World, node: OccasionNode, due: Moment | null, entries: readonly EntryId[], note: Note): Reach {
  world.observe({ node: node.id, state: due === null ? 'clear' : 'due', entries: [...new Set(entries)], reachedAt: due, note });
  return due === null ? quiet(node.id) : dueSince(node.id, due);
}
