import type { OccasionNode } from '../../graph/rule-graph.js';
import type { EntryId } from '../../history/entry.js';
import { type Moment, notBefore } from '../../values/moment.js';
import type { Note } from '../assessment.js';
import { lastDoingSince } from '../doings.js';
import { isAfterOuting, outingBefore, outingOver, type Round, type WorkOn, workOn } from '../occasions.js';
import { dueSince, quiet, type Reach } from '../reach.js';
import { begunBy } from '../spells.js';
import type { TriggerContext } from '../trigger-context.js';
import type { World } from '../world.js';

/** Before or after work, each outing, each shift, or storage (docs/meaning.md §5). */
export function occasion(world: World, node: OccasionNode, context: TriggerContext): Reach {
  const { task } = context;
  if (node.when === 'on') return onDayOfWork(world, node, task);
  if (node.when === 'before')
    return node.of === 'storage' ? beforeStorage(world, node, task) : beforeWork(world, node, node.of === 'work' ? 'day' : node.of, task);
  return node.of === 'storage' ? afterStorage(world, node, task) : afterWork(world, node, node.of, task);
}

function beforeWork(world: World, node: OccasionNode, round: Round, task: string): Reach {
  const work = workOn(world, round);
  if (work === null) return settle(world, node, null, [], { is: 'no-work' });
  const before = outingBefore(world, round, work);
  const last = lastDoingSince(world, task, null);
  const isDone = last !== undefined && (before === null || isAfterOuting(last.when, before));
  const note: Note = { is: 'work-on', intended: work.intended, lastEnd: before?.end ?? null, done: last?.when ?? null };
  const entries = [
    ...(work.outing === null ? [] : [work.outing.entry]),
    ...(before === null ? [] : [before.entry]),
    ...(last?.entries ?? []),
  ];
  return asksForWork(world, node, work, isDone, entries, note);
}

/** Asked for on a day of work until it is done on that day, whatever was done on the days before. */
function onDayOfWork(world: World, node: OccasionNode, task: string): Reach {
  const work = workOn(world, 'day');
  if (work === null) return settle(world, node, null, [], { is: 'no-work' });
  const last = lastDoingSince(world, task, null);
  const isDone = last !== undefined && last.when.day >= work.day;
  const entries = [...(work.outing === null ? [] : [work.outing.entry]), ...(last?.entries ?? [])];
  const note: Note = { is: 'work-on', intended: work.intended, lastEnd: null, done: last?.when ?? null };
  return asksForWork(world, node, work, isDone, entries, note);
}

function afterWork(world: World, node: OccasionNode, round: Round | 'work', task: string): Reach {
  const over = outingOver(world, round);
  // What ended while the day or the shift goes on is passed over on the strength of the outing under way.
  const on = round === 'day' || round === 'shift' ? (workOn(world, 'outing')?.outing ?? null) : null;
  const passed = on === null ? [] : [on.entry];
  const during = on === null ? {} : { during: on.when };
  if (over?.end == null) return settle(world, node, null, passed, { is: 'no-work', ...during });
  return answeredBy(world, node, over.end, [over.entry, ...passed], task, during);
}

function beforeStorage(world: World, node: OccasionNode, task: string): Reach {
  const stored = world.timeline.storage.at(-1);
  const inStorage = stored !== undefined && stored.end === null;
  if (world.options.intent?.storage !== true && !inStorage) return settle(world, node, null, [], { is: 'no-work' });
  const out = outingOver(world, 'work');
  const since = out?.end ?? null;
  const last = lastDoingSince(world, task, since);
  const isDone = last !== undefined && (since === null || notBefore(last.when, since));
  const entries = [...(inStorage ? begunBy(world.timeline.storage) : []), ...(out === null ? [] : [out.entry]), ...(last?.entries ?? [])];
  const note: Note = { is: 'work-on', intended: !inStorage, lastEnd: since, done: last?.when ?? null };
  const begun = inStorage ? stored.begin.when : null;
  return settle(world, node, isDone ? null : (begun ?? world.now), entries, note, begun);
}

function afterStorage(world: World, node: OccasionNode, task: string): Reach {
  const spell = world.timeline.storage.findLast(({ end }) => end !== null);
  if (spell?.end == null) return settle(world, node, null, [], { is: 'not-happened' });
  return answeredBy(world, node, spell.end.when, [spell.begin.entry, spell.end.entry], task, {}, spell.begin.when);
}

/** Due since the outing that is on began, or now for one that is intended. */
function asksForWork(
  world: World,
  node: OccasionNode,
  { outing }: WorkOn,
  isDone: boolean,
  entries: readonly EntryId[],
  note: Note,
): Reach {
  return settle(world, node, isDone ? null : (outing?.when ?? world.now), entries, note, outing?.when ?? null);
}

/** Due since something happened, unless it was done since (the same day counts). */
function answeredBy(
  world: World,
  node: OccasionNode,
  since: Moment,
  entries: readonly EntryId[],
  task: string,
  during: { readonly during?: Moment } = {},
  begun: Moment | null = null,
): Reach {
  const last = lastDoingSince(world, task, since);
  const isDone = last !== undefined && notBefore(last.when, since);
  const note: Note = { is: 'happened', when: since, done: last?.when ?? null, ...during };
  return settle(world, node, isDone ? null : since, [...entries, ...(last?.entries ?? [])], note, begun);
}

/** `begun`: when the work or the storage that it was held against began. */
function settle(
  world: World,
  node: OccasionNode,
  due: Moment | null,
  entries: readonly EntryId[],
  note: Note,
  begun: Moment | null = null,
): Reach {
  const stood = begun === null ? {} : { stood: [{ on: 'moment', at: begun } as const] };
  world.observe({ node: node.id, state: due === null ? 'clear' : 'due', entries: [...new Set(entries)], reachedAt: due, note, ...stood });
  return due === null ? quiet(node.id) : dueSince(node.id, due);
}
