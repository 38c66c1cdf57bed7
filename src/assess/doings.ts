/**
 * When a task counts as done (docs/meaning.md §3): by record, by a task that covers it, by its parts, by a statement; and when its
 * clock was set by a task that restarts it.
 */
import type { EntryId } from '../history/entry.js';
import type { Doing, MeterPoint, Statement } from '../history/timeline.js';
import { compareMoments } from '../values/moment.js';
import type { Day, Moment } from '../values/moment.js';
import { lastPointAt } from './meter-at.js';
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
  world.doings.set(task, []); // INVARIANT: checked schedules have no cycle; a hostile graph gets an empty list instead of a loop
  const all = [...recorded(world, task), ...stated(world, task), ...fromParts(world, task), ...restarts(world, task)];
  world.step(all.length);
  const ordered = all.sort(compareDoings);
  world.doings.set(task, ordered);
  return ordered;
}

/** Doings that count as doing the task, restarts left out. */
export function realDoings(world: World, task: string): readonly EffectiveDoing[] {
  return doingsOf(world, task).filter((doing) => doing.why !== 'restarted');
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

function noted(point: MeterPoint | undefined): MeterValue | null {
  return point === undefined ? null : { ticks: point.total, entries: [point.entry, ...point.alongside] };
}

/** The last reading not later than a moment. */
export function meterValueAt(world: World, meter: string, when: Moment): MeterValue | null {
  const point = noted(lastPointAt(world.timeline.meters.get(meter), when));
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
      return ticks === undefined ? null : { ticks, entries: [statement.entry] };
    },
  };
}

function restarts(world: World, task: string): readonly EffectiveDoing[] {
  const by = world.index.restartedBy.get(task) ?? [];
  return by.flatMap((other) => realDoings(world, other).map((doing) => ({ ...doing, why: 'restarted' as const })));
}

/** `met by A, B`: done at the moment by which each part has been done since the last time. */
function fromParts(world: World, task: string): readonly EffectiveDoing[] {
  const parts = world.index.tasks.get(task)?.metBy ?? [];
  if (parts.length === 0) return [];
  const whole: EffectiveDoing[] = [];
  const outright = recorded(world, task).map((doing) => ({ part: null as string | null, doing }));
  const events = [...outright, ...parts.flatMap((part) => realDoings(world, part).map((doing) => ({ part, doing })))];
  events.sort((a, b) => compareDoings(a.doing, b.doing));
  let since = new Map<string, EffectiveDoing>();
  for (const { part, doing } of events) {
    if (part === null) since = new Map();
    else since.set(part, doing);
    if (since.size < parts.length) continue;
    whole.push({ ...doing, entries: [...new Set([...since.values()].flatMap((each) => each.entries))] });
    since = new Map();
  }
  return whole;
}

const beforeEverything: Moment = { day: -Infinity as Day, minute: null };

function compareDoings(a: EffectiveDoing, b: EffectiveDoing): number {
  return compareMoments(a.when ?? beforeEverything, b.when ?? beforeEverything) || compareTexts(a.entries[0] ?? '', b.entries[0] ?? '');
}

function compareTexts(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
