/**
 * When a task counts as done (docs/meaning.md §3): by record, by a task that covers it, by its parts, by a statement; and when its
 * clock was set by a task that restarts it.
 */
import { compareTexts } from '../base/compare-texts.js';
import type { EntryId } from '../history/entry.js';
import { meterAt } from '../history/meter-at.js';
import type { MeterPoint } from '../history/timeline.js';
import { compareMoments, notBefore } from '../values/moment.js';
import type { Day, Moment } from '../values/moment.js';
import { carried } from './kinds.js';
import type { World } from './world.js';

/** A value on an axis (ticks, days or minutes) with the entries it rests on. */
export interface AxisValue {
  readonly value: number;
  readonly entries: readonly EntryId[];
}

export interface EffectiveDoing {
  readonly why: 'done' | 'stated' | 'restarted';
  /** `null`: stated without a day. */
  readonly when: Moment | null;
  readonly entries: readonly EntryId[];
  /** The meter's value at the doing; `null` where nobody noted it. */
  readonly meter: (meter: string) => AxisValue | null;
}

/** A doing whose day is known. */
export type DatedDoing = EffectiveDoing & { readonly when: Moment };

/** All doings of a task in order; those stated without a day come first. Restarts are among them, marked. */
export function doingsOf(world: World, task: string): readonly EffectiveDoing[] {
  const known = world.doings.get(task);
  if (known !== undefined) return known;
  const all = [...realDoings(world, task), ...(world.kinds.aspects.restarts?.(world, task) ?? [])];
  world.step(all.length);
  const ordered = all.sort(compareDoings);
  world.doings.set(task, ordered);
  return ordered;
}

/**
 * Doings that count as doing the task, restarts left out.
 *
 * Worked out apart from the restarts, which may run in a circle with `met by`: a whole that restarts its own part.
 */
export function realDoings(world: World, task: string): readonly EffectiveDoing[] {
  const known = world.realDoings.get(task);
  if (known !== undefined) return known;
  world.realDoings.set(task, []); // INVARIANT: checked schedules have no cycle; a hostile graph gets an empty list instead of a loop
  const outright = [...recorded(world, task), ...(world.kinds.aspects.stated?.(world, task) ?? [])];
  const { metBy = [] } = world.index.tasks.get(task) ?? {};
  const byParts = metBy.length === 0 ? [] : carried(world.kinds.aspects, 'metBy').doings(world, metBy, outright);
  const ordered = [...outright, ...byParts].sort(compareDoings);
  world.step(ordered.length);
  world.realDoings.set(task, ordered);
  return ordered;
}

/** Doings whose day is known, restarts left out, in order. */
export function datedDoings(world: World, task: string): readonly DatedDoing[] {
  return realDoings(world, task).filter((doing): doing is DatedDoing => doing.when !== null);
}

/** The last doing that is not before a moment; where there is none, the last. Only doings whose day is known. */
export function lastDoingSince(world: World, task: string, since: Moment | null): DatedDoing | undefined {
  const dated = datedDoings(world, task);
  return (since === null ? undefined : dated.findLast(({ when }) => notBefore(when, since))) ?? dated.at(-1);
}

function recorded(world: World, task: string): readonly EffectiveDoing[] {
  const doings = [...(world.timeline.doings.get(task) ?? []), ...(world.kinds.aspects.covers?.(world, task) ?? [])];
  return doings.map(({ when, entry, meters }) => ({
    why: 'done',
    when,
    entries: [entry],
    meter: (meter) => valueAt(meters.get(meter)) ?? meterValueAt(world, meter, when),
  }));
}

/** The total of a point with the entries that it rests on. */
export function valueAt(point: MeterPoint | null | undefined): AxisValue | null {
  return point == null ? null : { value: point.total, entries: [point.entry, ...point.alongside] };
}

/** The last reading not later than a moment. */
export function meterValueAt(world: World, meter: string, when: Moment): AxisValue | null {
  const track = world.timeline.meters.get(meter);
  const point = valueAt(track === undefined ? null : meterAt(track, when, world.kinds.facts.outings?.cut));
  // Outings are the whole of such a meter: before the first of them it stood at 0.
  return point ?? (world.index.meters.get(meter)?.fromOutings === true ? { value: 0, entries: [] } : null);
}

const beforeEverything: Moment = { day: -Infinity as Day, minute: null };

/** By when they were; those without a day first, ties by the entry. */
export function compareDoings(a: EffectiveDoing, b: EffectiveDoing): number {
  return compareMoments(a.when ?? beforeEverything, b.when ?? beforeEverything) || compareTexts(a.entries[0] ?? '', b.entries[0] ?? '');
}
