/** Work with the machine, as the judge reads it from the entries. */
import type { EntryOf } from '../../src/history/entry.js';
import { after, dayFrom, inOrder, minutesFrom, notBefore, type When } from './calendar.js';
import { rememberedOf } from './remembered.js';
import { minuteOf, whenOf, type World } from './world.js';

/** An hour in ticks. */
export const HOUR = 36_000;

export interface Work {
  readonly id: string;
  /** The start. */
  readonly when: When;
  /** `null` while it is under way. */
  readonly end: When | null;
  readonly ticks: number;
  readonly duties: readonly { readonly duty: string; readonly ticks: number }[];
  readonly attachments: readonly string[];
  readonly shift: string | null;
}

/** When an outing ended, as noted: `null` if nobody noted an end. */
export const endOf = rememberedOf((entry: EntryOf<'outing'>): When | null => {
  const start = whenOf(entry);
  if (entry.until !== undefined) {
    const minute = minuteOf(entry.until);
    const overnight = start.minute !== null && minute < start.minute ? 1 : 0;
    return { day: entry.untilOn === undefined ? start.day + overnight : dayFrom(entry.untilOn), minute };
  }
  if (entry.untilOn !== undefined) return { day: dayFrom(entry.untilOn), minute: null };
  if (entry.hours === undefined) return null;
  if (start.minute === null) return start;
  const total = start.minute + Math.round(entry.hours * 60);
  return { day: start.day + Math.floor(total / 1440), minute: total % 1440 };
});

/** Noted to end before it begins: it is none. */
export function endsTooSoon(entry: EntryOf<'outing'>): boolean {
  const end = endOf(entry);
  return end !== null && after(whenOf(entry), end);
}

/** Every outing on record, by its start. */
export const outings = rememberedOf((world: World): readonly Work[] =>
  world.entries.flatMap((entry) => (entry.kind === 'outing' && !endsTooSoon(entry) ? [workOf(world, entry)] : [])).sort(inOrder),
);

function workOf(world: World, entry: EntryOf<'outing'>): Work {
  const when = whenOf(entry);
  const end = over(world, entry);
  const ticks = end === null ? soFar(world, when) : timeOf(entry, when, end);
  const duties = (entry.duties ?? []).map((each) => ({
    duty: each.duty,
    ticks: each.hours === undefined ? ticks : Math.round(each.hours * HOUR),
  }));
  return { id: entry.id, when, end, ticks, duties, attachments: entry.attachments ?? [], shift: entry.shift ?? null };
}

/** When it ended, as seen from now. Whoever notes hours without an end notes them afterwards: it is over by now. */
function over(world: World, entry: EntryOf<'outing'>): When | null {
  const end = endOf(entry);
  if (end === null || !after(end, world.now)) return end;
  return entry.until === undefined && entry.untilOn === undefined ? world.now : null;
}

function soFar(world: World, start: When): number {
  return Math.max(0, (minutesFrom(start, world.now) ?? 0) * 600);
}

function timeOf(entry: EntryOf<'outing'>, start: When, end: When): number {
  if (entry.hours !== undefined) return Math.round(entry.hours * HOUR);
  const minutes = entry.until === undefined ? null : minutesFrom(start, end);
  return Math.max(0, (minutes ?? 0) * 600);
}

/** Those that are over, in the order in which they ended. */
export const ended = rememberedOf((world: World): readonly (Work & { readonly end: When })[] =>
  outings(world)
    .flatMap((work) => (work.end === null ? [] : [{ ...work, end: work.end }]))
    .sort((a, b) => inOrder({ when: a.end, id: a.id }, { when: b.end, id: b.id })),
);

/** The outing that is under way, the last to begin if several are. */
export function underWay(world: World): Work | undefined {
  return outings(world)
    .filter((work) => work.end === null)
    .at(-1);
}

/** Time at work not before a moment (§4 "work time"), in a duty if one is named. */
export function workSince(world: World, base: When | null, duty: string | undefined): number {
  return outings(world).reduce((sum, work) => sum + ofOuting(world, work, base, duty), 0);
}

/** Time at work not before one moment and before another, of each outing at least none. */
export function workBetween(world: World, from: When | null, to: When, duty: string | undefined): number {
  return outings(world).reduce((sum, work) => sum + Math.max(0, ofOuting(world, work, from, duty) - ofOuting(world, work, to, duty)), 0);
}

function ofOuting(world: World, work: Work, base: When | null, duty: string | undefined): number {
  return Math.round(timeIn(work, duty) * shareSince(world, work, base));
}

/** How much of an outing was in a duty; all of it where no duty is asked for. */
export function timeIn(work: Work, duty: string | undefined): number {
  if (duty === undefined) return work.ticks;
  return work.duties.filter((each) => each.duty === duty).reduce((sum, each) => sum + each.ticks, 0);
}

/** Which share of an outing lies after a moment; where the minutes do not tell, all of it if it ended on a later day. */
export function shareSince(world: World, work: Work, base: When | null): number {
  const end = work.end ?? world.now;
  if (base === null || notBefore(work.when, base)) return 1;
  if (after(base, end)) return 0;
  const whole = minutesFrom(work.when, end);
  const left = minutesFrom(base, end);
  if (whole === null || left === null) return end.day > base.day ? 1 : 0;
  return whole <= 0 ? 0 : left / whole;
}
