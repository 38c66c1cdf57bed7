/** Occasions: before and after work, storage, and what happened (§5). */
import type { OccasionNode, ShortlyBeforeNode } from '../../src/graph/rule-graph.js';
import { after, inOrder, type When } from './calendar.js';
import { lineUp } from './defects.js';
import { dated, doings, doneSince } from './doings.js';
import { ended, outings, underWay, type Work } from './outings.js';
import { plain, type Outcome } from './outcome.js';
import { whenOf, type World } from './world.js';

export function occasion(world: World, node: OccasionNode, task: string): Outcome {
  if (node.when === 'on') return onDay(world, node, task);
  if (node.of === 'storage') return node.when === 'before' ? beforeStorage(world, node, task) : afterStorage(world, node, task);
  return node.when === 'after' ? afterWork(world, node, task) : beforeWork(world, node, task);
}

/** Due since a moment, or nothing asked for. */
export function asks(due: boolean, node: number, at: When | null): Outcome {
  return due ? plain('due', node, { reachedAt: at, due: at === null ? null : { on: 'moment', at } }) : plain('clear', node);
}

/** The outing that work belongs to, the day and the shift of it; `intended` stands for one that is yet to begin. */
interface On {
  readonly work: Work | null;
  readonly day: number;
  readonly shift: string | null;
}

function going(world: World): On | null {
  const open = underWay(world);
  if (open !== undefined) return { work: open, day: open.when.day, shift: open.shift };
  const { outing } = world.wanted;
  return outing === undefined ? null : { work: null, day: world.now.day, shift: outing.shift ?? null };
}

function begunToday(world: World): On | null {
  const work = outings(world).find(({ when }) => when.day === world.now.day);
  return work === undefined ? null : { work, day: world.now.day, shift: work.shift };
}

/** Whether an outing is of the same day's work, or shift, as the one that is on. */
function same(of: OccasionNode['of'], work: Work, on: On): boolean {
  if (of === 'day') return work.when.day >= on.day;
  return of === 'shift' && work.when.day === on.day && work.shift !== null && work.shift === on.shift;
}

function beforeWork(world: World, node: OccasionNode, task: string): Outcome {
  const on = going(world) ?? (node.of === 'day' ? begunToday(world) : null);
  if (on === null) return plain('clear', node.id);
  const { work } = on;
  const before = ended(world)
    .filter((each) => each.id !== work?.id && !same(node.of, each, on))
    .filter((each) => work === null || inOrder({ when: each.when, id: '' }, { when: work.when, id: '' }) < 0)
    .at(-1);
  const done = dated(doings(world, task)).some(({ when }) => before === undefined || after(when, before.end));
  return asks(!done, node.id, work?.when ?? world.now);
}

/** The minutes of a moment, of which nobody may have noted the time: the first and the last that it may have been. */
function spread({ day, minute }: When): { readonly first: number; readonly last: number } {
  return { first: day * 1440 + (minute ?? 0), last: day * 1440 + (minute ?? 1439) };
}

/** Not earlier than so long before the start: too early, in time or late, undone, or nobody can tell. */
export function shortlyBefore(world: World, node: ShortlyBeforeNode, task: string): Outcome {
  const on = going(world) ?? (node.of === 'day' ? begunToday(world) : null);
  if (on === null) return plain('clear', node.id);
  const told = world.wanted.outing?.start;
  const [began] = outings(world)
    .filter((each) => each.id === on.work?.id || same(node.of, each, on))
    .map(({ when }) => when);
  const start = began ?? (told === undefined ? world.now : { day: world.now.day, minute: told });
  const minutes = start.minute === null ? null : start.day * 1440 + start.minute - node.withinMinutes;
  const opens = minutes === null ? start : { day: Math.floor(minutes / 1440), minute: ((minutes % 1440) + 1440) % 1440 };
  if (after(opens, world.now)) return plain('coming-up', node.id, { due: { on: 'moment', at: opens } });
  const [from, all] = [spread(start), dated(doings(world, task)).map(({ when }) => spread(when))];
  if (all.some(({ first }) => first >= from.last - node.withinMinutes)) return plain('clear', node.id);
  if (all.some(({ last }) => last >= from.first - node.withinMinutes)) return plain('unknown', node.id);
  return asks(true, node.id, began === undefined && told === undefined ? world.now : opens);
}

/** Only what was done on the day that the work belongs to counts, or later. */
function onDay(world: World, node: OccasionNode, task: string): Outcome {
  const on = going(world) ?? begunToday(world);
  if (on === null) return plain('clear', node.id);
  return asks(!dated(doings(world, task)).some(({ when }) => when.day >= on.day), node.id, on.work?.when ?? world.now);
}

function afterWork(world: World, node: OccasionNode, task: string): Outcome {
  const on = going(world);
  const over = ended(world)
    .filter((work) => on === null || !same(node.of, work, on))
    .at(-1);
  return asks(over !== undefined && !doneSince(world, task, over.end), node.id, over?.end ?? null);
}

export function storageSpells(world: World): readonly { readonly begin: When; readonly end: When | null }[] {
  const all = world.entries.flatMap((entry) =>
    entry.kind === 'storage' ? [{ id: entry.id, when: whenOf(entry), opens: entry.phase === 'begins' }] : [],
  );
  const spells: { begin: When; end: When | null }[] = [];
  let open: { begin: When; end: When | null } | null = null;
  for (const day of [...new Set(all.map(({ when }) => when.day))].sort((a, b) => a - b)) {
    for (const step of lineUp(
      all.filter(({ when }) => when.day === day),
      open !== null,
    )) {
      if (step.opens && open === null) spells.push((open = { begin: step.when, end: null }));
      else if (!step.opens && open !== null) {
        open.end = step.when;
        open = null;
      }
    }
  }
  return spells;
}

function beforeStorage(world: World, node: OccasionNode, task: string): Outcome {
  const last = storageSpells(world).at(-1);
  const begun = last !== undefined && last.end === null ? last.begin : null;
  const end = ended(world).at(-1)?.end ?? null;
  const done = dated(doings(world, task)).some(({ when }) => end === null || !after(end, when));
  return asks((world.wanted.storage === true || begun !== null) && !done, node.id, begun ?? world.now);
}

function afterStorage(world: World, node: OccasionNode, task: string): Outcome {
  const end = storageSpells(world)
    .flatMap((spell) => (spell.end === null ? [] : [spell.end]))
    .at(-1);
  return asks(end !== undefined && !doneSince(world, task, end), node.id, end ?? null);
}
