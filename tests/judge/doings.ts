/** When a task was done (§3), and what its clock counts from. */
import { after, dayFrom, inOrder, type When } from './calendar.js';
import { lifeTotal, meterAtEntry } from './meters.js';
import { remembered, rememberedOf } from './remembered.js';
import { taskNamed, whenOf, type World } from './world.js';

export interface Done {
  readonly id: string;
  /** A restart or a statement sets the clock to when it was, whatever the counting rule. */
  readonly resets: boolean;
  /** `null` where a statement does not say. */
  readonly when: When | null;
  /** The meter's total then, or `null`. */
  readonly meter: (meter: string) => number | null;
}

/** A doing that is known by its day. */
export type Dated = Done & { readonly when: When };

function recorded(world: World, names: ReadonlySet<string>): readonly Dated[] {
  return world.entries.flatMap((entry) => {
    if (entry.kind !== 'done' || !entry.tasks.some((task) => names.has(task))) return [];
    const when = whenOf(entry);
    return [{ id: entry.id, resets: false, when, meter: (meter: string) => meterAtEntry(world, meter, entry.id, when) }];
  });
}

function stated(world: World, names: ReadonlySet<string>): readonly Done[] {
  return world.entries.flatMap((entry) => {
    if (entry.kind !== 'stated' || !names.has(entry.task)) return [];
    const when = entry.doneBy === undefined ? null : { day: dayFrom(entry.doneBy), minute: null };
    const meter = (id: string): number | null => {
      const shown = entry.doneAt !== undefined && Object.hasOwn(entry.doneAt, id) ? entry.doneAt[id] : undefined;
      return shown === undefined ? null : lifeTotal(world, id, shown, when ?? whenOf(entry));
    };
    return [{ id: entry.id, resets: true, when, meter }];
  });
}

/** The task and every task that covers it. */
function namesFor(world: World, task: string): ReadonlySet<string> {
  return new Set([task, ...world.graph.tasks.filter(({ covers }) => covers.includes(task)).map(({ id }) => id)]);
}

/** Each doing of a task: first those whose day nobody knows, then by day. */
export const doings: (world: World, task: string) => readonly Done[] = remembered((world: World, task: string) => {
  const names = namesFor(world, task);
  const own: readonly Done[] = [...recorded(world, names), ...stated(world, new Set([task]))];
  return inTime([...own, ...metByParts(world, task, own)]);
});

function inTime(all: readonly Done[]): readonly Done[] {
  return [...all].sort(earlier);
}

/** Those whose day nobody knows come before every other. */
function earlier(a: Done, b: Done): number {
  if (a.when === null || b.when === null) return a.when === b.when ? (a.id < b.id ? -1 : a.id > b.id ? 1 : 0) : a.when === null ? -1 : 1;
  return inOrder({ when: a.when, id: a.id }, { when: b.when, id: b.id });
}

/** `met by A, B`: the moments by which each of them has been done since the task was last done. */
function metByParts(world: World, task: string, own: readonly Done[]): readonly Done[] {
  const parts = taskNamed(world, task).metBy;
  if (parts.length === 0) return [];
  const steps = [
    ...own.map((done) => ({ done, part: null })),
    ...parts.flatMap((part) => doings(world, part).map((done) => ({ done, part }))),
  ].sort((a, b) => earlier(a.done, b.done));
  const met: Done[] = [];
  let last = '';
  let had = new Set<string>();
  for (const { done, part } of steps) {
    if (part !== null && done.id !== last) had.add(part);
    const complete = part !== null && parts.every((each) => had.has(each));
    if (complete) met.push(done);
    if (complete || part === null) [last, had] = [done.id, new Set()];
  }
  return met;
}

/** Those that are known by their day. */
export function dated(all: readonly Done[]): readonly Dated[] {
  return all.flatMap((done) => (done.when === null ? [] : [{ ...done, when: done.when }]));
}

/** What sets the clock of a task's limits: its doings, and those of the tasks that restart it. */
export function clock(world: World, task: string): readonly Done[] {
  const restarting = world.graph.tasks.filter(({ restarts }) => restarts.includes(task));
  return inTime([...doings(world, task), ...restarting.flatMap(({ id }) => doings(world, id).map((done) => ({ ...done, resets: true })))]);
}

/** The machine's start, if the logbook says when it entered service. */
export const start = rememberedOf((world: World): Dated | null => {
  const entry = world.entries
    .filter((each) => each.kind === 'machine')
    .sort((a, b) => inOrder({ when: whenOf(a), id: a.id }, { when: whenOf(b), id: b.id }))
    .at(-1);
  if (entry?.kind !== 'machine' || entry.inService === undefined) return null;
  const { meters } = entry;
  const when = { day: dayFrom(entry.inService), minute: null };
  return {
    id: entry.id,
    resets: true,
    when,
    meter: (meter) => (meters !== undefined && Object.hasOwn(meters, meter) ? Math.round((meters[meter] ?? 0) * 36_000) : 0),
  };
});

/** Whether a task was done at or after a moment. */
export function doneSince(world: World, task: string, when: When): boolean {
  return dated(doings(world, task)).some((done) => !after(when, done.when));
}

/** Whether a task was done after a moment. */
export function doneAfter(world: World, task: string, when: When): boolean {
  return dated(doings(world, task)).some((done) => after(done.when, when));
}
