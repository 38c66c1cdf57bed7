/** What meters and instruments showed (§2 and §6). */
import type { Entry } from '../../src/history/entry.js';
import { addSpan, after, inOrder, minutesFrom, type When } from './calendar.js';
import { wasOn } from './attachments.js';
import { endOf, endsTooSoon, HOUR, outings, type Work } from './outings.js';
import { remembered } from './remembered.js';
import { whenOf, type World } from './world.js';

export interface MeterReading {
  readonly id: string;
  readonly when: When;
  /** The life total, in ticks. */
  readonly total: number;
  /** Where it is an outing that was counted: the outing. */
  readonly work?: Work;
}

/** When what an entry notes was taken: with an outing, at its end. `null` if that is still to come. */
export function takenAt(world: World, entry: Entry): When | null {
  if (entry.kind !== 'outing') return whenOf(entry);
  const end = endOf(entry);
  if (end === null || endsTooSoon(entry)) return whenOf(entry);
  if (!after(end, world.now)) return end;
  return entry.until === undefined && entry.untilOn === undefined ? world.now : null;
}

/** What one entry says that a dial showed: a reading, or the final value of a dial that was taken out. */
interface Shown {
  readonly id: string;
  readonly when: When;
  readonly shown: number;
  /** What the new dial shows, where one was put in. */
  readonly initial: number | null;
  readonly confirmed: boolean;
}

function ticks(units: number): number {
  return Math.round(units * HOUR);
}

const shownBy = remembered((world: World, meter: string): readonly Shown[] => {
  const confirmed = new Set(world.entries.flatMap((entry) => (entry.kind === 'confirm' ? [entry.entry] : [])));
  return world.entries.flatMap((entry): readonly Shown[] => {
    const when = takenAt(world, entry);
    if (when === null) return [];
    const common = { id: entry.id, when, confirmed: confirmed.has(entry.id) };
    if (entry.kind === 'meter-replaced' && entry.meter === meter)
      return [{ ...common, shown: ticks(entry.final), initial: ticks(entry.initial) }];
    const value = entry.meters !== undefined && Object.hasOwn(entry.meters, meter) ? entry.meters[meter] : undefined;
    return value === undefined ? [] : [{ ...common, shown: ticks(value), initial: null }];
  });
});

/** A dial in the course of its readings. */
interface Dial {
  /** Life total − ticks shown. */
  readonly offset: number;
  readonly counting: readonly MeterReading[];
  /** Where in `counting` the reading stands that was last confirmed: how fast the dial rose is measured from there. */
  readonly from: number;
}

/** Takes a reading in, if it stands against those before it. */
function take(dial: Dial, read: Shown, hours: boolean): Dial {
  const total = dial.offset + read.shown;
  const top = dial.counting.at(-1)?.total ?? -Infinity;
  const falls = total < top;
  const races = hours && dial.counting.slice(dial.from).some((earlier) => tooFast(earlier, { id: read.id, when: read.when, total }));
  if ((falls || races) && !read.confirmed) return dial;
  const stands = falls ? top : total;
  const counting = [...dial.counting, { id: read.id, when: read.when, total: stands }];
  return { offset: falls ? top - read.shown : dial.offset, counting, from: read.confirmed ? counting.length - 1 : dial.from };
}

function tooFast(earlier: MeterReading, reading: MeterReading): boolean {
  const minutes = minutesFrom(earlier.when, reading.when);
  const rise = reading.total - earlier.total;
  if (minutes !== null && rise > minutes * 600) return true;
  return rise > (reading.when.day - earlier.when.day + 1) * 24 * HOUR;
}

function takeAll(dial: Dial, reads: readonly Shown[], hours: boolean): Dial {
  return reads.reduce((so, read) => take(so, read, hours), dial);
}

/** One day on one dial: in order of minute; those without one by value. */
function takeDay(dial: Dial, reads: readonly Shown[], hours: boolean): Dial {
  const byValue = (a: Shown, b: Shown): number => a.shown - b.shown || inOrder(a, b);
  const timed = reads
    .filter(({ when }) => when.minute !== null)
    .sort((a, b) => (a.when.minute ?? 0) - (b.when.minute ?? 0) || byValue(a, b));
  const untimed = reads.filter(({ when }) => when.minute === null).sort(byValue);
  if (reads.some(({ confirmed }) => confirmed)) return takeAll(dial, [...untimed, ...timed], hours);
  const alone = takeAll(dial, timed, hours);
  const line = timed.filter(({ id }) => untimed.length === 0 || alone.counting.slice(dial.counting.length).some((each) => each.id === id));
  for (const each of untimed) {
    const place = line.findIndex(({ shown }, i) => shown >= each.shown && line.slice(i).every((later) => later.when.minute !== null));
    line.splice(place < 0 ? line.length : place, 0, each);
  }
  return takeAll(dial, line, hours);
}

/** The readings of a meter that count; for a meter that counts from outings, its total after each. */
export const readings = remembered((world: World, meter: string): readonly MeterReading[] => {
  const declared = world.graph.meters.find(({ id }) => id === meter);
  if (declared?.fromOutings === true) return fromOutings(world, declared.attachment, declared.unit);
  return dial(world, meter).counting;
});

/** The dial after everything that was read. */
function dial(world: World, meter: string): Dial {
  const hours = world.graph.meters.find(({ id }) => id === meter)?.unit === 'h';
  const all = shownBy(world, meter);
  let so: Dial = { offset: 0, counting: [], from: 0 };
  for (const day of [...new Set(all.map(({ when }) => when.day))].sort((a, b) => a - b)) {
    const today = all.filter(({ when }) => when.day === day);
    let open = today.filter(({ initial }) => initial === null);
    for (const swap of today.filter(({ initial }) => initial !== null).sort(inOrder)) {
      const old = open.filter((read) => onOldDial(read, swap));
      open = open.filter((read) => !old.includes(read));
      so = replaced(takeDay(so, old, hours), swap, hours);
    }
    so = takeDay(so, open, hours);
  }
  return so;
}

/** On the day of a replacement: by minute, else by the value that is nearer. */
function onOldDial(read: Shown, swap: Shown): boolean {
  if (read.when.minute !== null && swap.when.minute !== null && read.when.minute !== swap.when.minute)
    return read.when.minute < swap.when.minute;
  return Math.abs(read.shown - swap.shown) <= Math.abs(read.shown - (swap.initial ?? 0));
}

/** A new dial: its initial value stands for the total reached. */
function replaced(dial: Dial, swap: Shown, hours: boolean): Dial {
  const after = take(dial, swap, hours);
  const total = after.counting.at(-1)?.total ?? dial.offset + swap.shown;
  return { ...after, offset: total - (swap.initial ?? 0) };
}

/** What a value shown at a moment is as a life total: on the dial of the last reading that counts then. */
export function lifeTotal(world: World, meter: string, shown: number, when: When): number {
  const last = readings(world, meter)
    .filter((reading) => !after(reading.when, when))
    .at(-1);
  if (last === undefined || world.graph.meters.find(({ id }) => id === meter)?.fromOutings === true) return ticks(shown);
  const read = shownBy(world, meter).find(({ id }) => id === last.id);
  return ticks(shown) + last.total - (read?.initial ?? read?.shown ?? last.total);
}

/** After each outing on which it ran what they come to; those under way come last, and stand where they are now. */
function fromOutings(world: World, attachment: string | undefined, unit: string): readonly MeterReading[] {
  const byEnd = outings(world)
    .filter((work) => ran(world, attachment, work))
    .map((work) => ({ id: work.id, when: work.end ?? world.now, work }))
    .sort(inOrder);
  if (unit === 'service-days') return daysOut(byEnd);
  let total = 0;
  return byEnd.map((each) => ({ ...each, total: (total += each.work.ticks) }));
}

/** One more with each day on which there was an outing, as soon as the first of that day has begun. */
function daysOut(outs: readonly { readonly id: string; readonly when: When; readonly work: Work }[]): readonly MeterReading[] {
  const byStart = outs.map(({ id, when: end, work }) => ({ id, when: work.when, end })).sort(inOrder);
  const days: { readonly id: string; readonly when: When }[] = [];
  for (const { id, when, end } of byStart)
    for (let day = when.day; day <= end.day; day += 1)
      if (!days.some((known) => known.when.day === day)) days.push({ id, when: day === when.day ? when : { day, minute: null } });
  return days.sort(inOrder).map((each, before) => ({ ...each, total: (before + 1) * HOUR }));
}

/** Whether a meter ran on an outing: that of an attachment only while it was on. */
export function ran(world: World, attachment: string | undefined, work: Work): boolean {
  return attachment === undefined || work.attachments.includes(attachment) || wasOn(world, attachment, work.when, work.id);
}

/** How much of a counted outing had passed by a moment before its end; nothing, where minutes do not tell. */
function passedBy({ when: end, work }: MeterReading, when: When): number {
  const [whole, left] = work === undefined ? [null, null] : [minutesFrom(work.when, end), minutesFrom(when, end)];
  if (work === undefined || whole === null || left === null) return 0;
  return left >= whole ? 0 : work.ticks - Math.round((work.ticks * left) / whole);
}

/** When a meter first stood at a value, or beyond it: the reading that shows it; in an outing that is counted, minute by minute. */
export function firstShows(world: World, meter: string, shows: (total: number) => boolean): When | null {
  const first = readings(world, meter).find(({ total }) => shows(total));
  if (first === undefined) return null;
  const whole = first.work === undefined ? null : minutesFrom(first.work.when, first.when);
  if (first.work === undefined || whole === null || first.work.ticks === 0) return first.when;
  const before = first.total - first.work.ticks;
  for (let minute = 0; minute < whole; minute += 1)
    if (shows(Math.floor(before + (first.work.ticks * minute) / whole))) return minutesLater(first.work.when, minute);
  return first.when;
}

function minutesLater(when: When, minutes: number): When {
  const all = when.day * 1440 + (when.minute ?? 0) + minutes;
  return { day: Math.floor(all / 1440), minute: all % 1440 };
}

/** A meter's total now, or `null` if it was never read. */
export function meterNow(world: World, meter: string): number | null {
  return meterAt(world, meter, world.now);
}

/** A meter's total at a moment: the last reading not later than it, and what had passed by then of the outing that ended next. */
export function meterAt(world: World, meter: string, when: When): number | null {
  const all = readings(world, meter);
  const last = all.filter((reading) => !after(reading.when, when)).at(-1);
  const next = all.find((reading) => after(reading.when, when));
  const part = next === undefined ? 0 : passedBy(next, when);
  if (last !== undefined || part > 0) return (last?.total ?? 0) + part;
  return world.graph.meters.find(({ id }) => id === meter)?.fromOutings === true ? 0 : null;
}

/** A meter's total at an entry: what it notes, else the last reading not later than it. */
export function meterAtEntry(world: World, meter: string, id: string, when: When): number | null {
  const noted =
    world.graph.meters.find((each) => each.id === meter)?.fromOutings === true
      ? undefined
      : readings(world, meter).find((reading) => reading.id === id);
  return noted === undefined ? meterAt(world, meter, when) : noted.total;
}

export interface Look {
  readonly id: string;
  readonly when: When;
  readonly value: number;
}

const WORDS = { 'below-low': -Infinity, low: 0, full: 1, 'above-full': Infinity } as const;

/** The readings of a gauge or dipstick, in order. */
export const looks = remembered((world: World, instrument: string): readonly Look[] =>
  world.entries
    .flatMap((entry) => {
      const value = entry.readings !== undefined && Object.hasOwn(entry.readings, instrument) ? entry.readings[instrument] : undefined;
      const when = takenAt(world, entry);
      return value === undefined || when === null ? [] : [{ id: entry.id, when, value: typeof value === 'number' ? value : WORDS[value] }];
    })
    .sort(inOrder),
);

/** Whether a reading is too old for its gauge. */
export function tooOld(world: World, instrument: string, look: Look): boolean {
  const { gauges, dipsticks } = world.graph;
  const fresh = [...gauges, ...dipsticks].find(({ id }) => id === instrument)?.freshFor;
  if (fresh === undefined) return false;
  if (fresh.unit !== 'minutes') return world.now.day > addSpan(look.when.day, fresh);
  const minutes = minutesFrom(look.when, world.now);
  return minutes === null ? look.when.day !== world.now.day : minutes > fresh.count;
}

/** The reading that stands: the latest, unless it is too old. */
export function standing(world: World, instrument: string): Look | null {
  const last = looks(world, instrument).at(-1);
  return last === undefined || tooOld(world, instrument, last) ? null : last;
}
