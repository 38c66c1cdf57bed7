/**
 * When a task counts as done (docs/meaning.md §3): by record, by a task that covers it, by its parts, by a statement; and when its
 * clock was set by a task that restarts it.
 */
import { compareTexts } from '../base/compare-texts.js';
import type { EntryId } from '../history/entry.js';
import { meterAt } from '../history/meter-at.js';
import type { Doing, MeterPoint, Statement } from '../history/timeline.js';
import { compareMoments, notBefore } from '../values/moment.js';
import type { Day, Moment } from '../values/moment.js';
import type { World } from './world.js';

/** A meter's life total in ticks, with the entries it rests on. */
export interface MeterValue {
  readonly ticks: number;
  readonly entries: readonly EntryId[];
}

export interface EffectiveDoing {
  readonly why: 'done' | 'stated' | 'restarted';
  /** `null`: stated without a day. */
  readonly when: Moment | null;
  readonly entries: readonly EntryId[];
  /** The meter's value at the doing; `null` where nobody noted it. */
  readonly meter: (meter: string) => MeterValue | null;
}

/** All doings of a task in order; those stated without a day come first. Restarts are among them, marked. */
export function doingsOf(world: World, task: string): readonly EffectiveDoing[] {
  const known = world.doings.get(task);
  if (known !== undefined) return known;
  const all = [...realDoings(world, task), ...restarts(world, task)];
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
  const ordered = [...recorded(world, task), ...stated(world, task), ...fromParts(world, task)].sort(compareDoings);
  world.step(ordered.length);
  world.realDoings.set(task, ordered);
  return ordered;
}

/** The last doing that is not before a moment; where there is none, the last. Only doings whose day is known. */
export function lastDoingSince(world: World, task: string, since: Moment | null): (EffectiveDoing & { readonly when: Moment }) | undefined {
  const dated = realDoings(world, task).filter((doing): doing is EffectiveDoing & { readonly when: Moment } => doing.when !== null);
  return (since === null ? undefined : dated.findLast(({ when }) => notBefore(when, since))) ?? dated.at(-1);
}

function recorded(world: World, task: string): readonly EffectiveDoing[] {
  const seen = new Set<EntryId>();
  const found: EffectiveDoing[] = [];
  for (const by of [task, ...(world.index.coveredBy.get(task) ?? [])]) {
    for (const doing of world.timeline.doings.get(by) ?? []) {
      if (seen.has(doing.entry)) continue;
      seen.add(doing.entry);
      found.push(fromRecord(world, doing, 'done'));
    }
  }
  return found;
}

function fromRecord(world: World, doing: Doing, why: 'done' | 'restarted'): EffectiveDoing {
  return {
    why,
    when: doing.when,
    entries: [doing.entry],
    meter: (meter) => noted(doing.meters.get(meter)) ?? meterValueAt(world, meter, doing.when),
  };
}

function noted(point: MeterPoint | null | undefined): MeterValue | null {
  return point == null ? null : { ticks: point.total, entries: [point.entry, ...point.alongside] };
}

/** The last reading not later than a moment. */
export function meterValueAt(world: World, meter: string, when: Moment): MeterValue | null {
  const track = world.timeline.meters.get(meter);
  const point = noted(track === undefined ? null : meterAt(track, when));
  // Outings are the whole of such a meter: before the first of them it stood at 0.
  return point ?? (world.index.meters.get(meter)?.fromOutings === true ? { ticks: 0, entries: [] } : null);
}

function stated(world: World, task: string): readonly EffectiveDoing[] {
  return (world.timeline.statements.get(task) ?? []).map((statement) => fromStatement(statement));
}

function fromStatement(statement: Statement): EffectiveDoing {
  return {
    why: 'stated',
    when: statement.doneBy === null ? null : { day: statement.doneBy, minute: null },
    entries: [statement.entry],
    meter: (meter) => {
      const ticks = statement.doneAt.get(meter);
      return ticks === undefined ? null : { ticks, entries: [statement.entry, ...(statement.dials.get(meter) ?? [])] };
    },
  };
}

function restarts(world: World, task: string): readonly EffectiveDoing[] {
  const by = world.index.restartedBy.get(task) ?? [];
  return by.flatMap((other) => realDoings(world, other).map((doing) => ({ ...doing, why: 'restarted' as const })));
}

/** `met by A, B`: done at the moment by which each part has been done since the last time. What one entry names was done at once. */
function fromParts(world: World, task: string): readonly EffectiveDoing[] {
  const parts = world.index.tasks.get(task)?.metBy ?? [];
  if (parts.length === 0) return [];
  const whole: EffectiveDoing[] = [];
  const outright = [...recorded(world, task), ...stated(world, task)].map((doing) => ({ part: null as string | null, doing }));
  const events = [...outright, ...parts.flatMap((part) => realDoings(world, part).map((doing) => ({ part, doing })))];
  events.sort((a, b) => compareDoings(a.doing, b.doing));
  let since = new Map<string, EffectiveDoing>();
  for (const [first, ...others] of atOnce(events)) {
    if (first === undefined) continue;
    const together = [first, ...others];
    const now = new Map(together.flatMap(({ part, doing }) => (part === null ? [] : [[part, doing] as const])));
    // Of several doings of a part the first is enough, unless the entry that completes the whole names it too.
    since = new Map([...now, ...since]);
    const isOutright = together.some(({ part }) => part === null);
    if (!isOutright && since.size < parts.length) continue;
    // The entry that completes it goes first: it is the one that says when.
    const all = [first.doing, ...new Map([...since, ...now]).values()];
    if (!isOutright) whole.push({ ...first.doing, entries: [...new Set(all.flatMap((each) => each.entries))] });
    since = new Map();
  }
  return whole;
}

/** Neighbours that the same entry states, together. */
function atOnce<T extends { readonly doing: EffectiveDoing }>(events: readonly T[]): readonly (readonly T[])[] {
  const groups: T[][] = [];
  for (const event of events) {
    const group = groups.at(-1);
    if (group?.[0] !== undefined && group[0].doing.entries[0] === event.doing.entries[0]) group.push(event);
    else groups.push([event]);
  }
  return groups;
}

const beforeEverything: Moment = { day: -Infinity as Day, minute: null };

function compareDoings(a: EffectiveDoing, b: EffectiveDoing): number {
  return compareMoments(a.when ?? beforeEverything, b.when ?? beforeEverything) || compareTexts(a.entries[0] ?? '', b.entries[0] ?? '');
}
