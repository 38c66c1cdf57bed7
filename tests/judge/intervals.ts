/** Intervals and duty mixes: counted from doings, by the counting rule (§4). */
import type { CalendarAmount, DutyMixNode, IntervalNode, MeterAmount, WorkAmount } from '../../src/graph/rule-graph.js';
import { after, later, type When } from './calendar.js';
import type { Done } from './doings.js';
import { calendarLimit, meterLimit, nextBase, unknown, unrecorded, workLimit } from './limits.js';
import { meterNow, ran, readings } from './meters.js';
import { storageSpells } from './occasions.js';
import { outings, shareSince, timeIn, workBetween, type Work } from './outings.js';
import type { Outcome } from './outcome.js';
import type { World } from './world.js';

/** What sets a limit's clock. */
export interface Clock {
  readonly start: Done | null;
  /** Whether there may be a base before the first doing: not where stages came first. */
  readonly fromStart: boolean;
  readonly doings: readonly Done[];
}

/** The doings that can be followed; `null` where the last of them says nothing of the axis. */
function followed(clock: Clock, known: (done: Done) => boolean): readonly Done[] | null {
  const last = clock.doings.at(-1);
  return last !== undefined && !known(last) ? null : clock.doings.filter(known);
}

/** Of doings that have to be so far apart those that count. */
export function apartOnly(doings: readonly Done[], apart: CalendarAmount | undefined): readonly Done[] {
  const counting: Done[] = [];
  for (const done of doings) {
    const before = counting.findLast(({ when }) => when !== null)?.when ?? null;
    if (
      apart === undefined ||
      done.when === null ||
      before === null ||
      done.when.day >= later({ day: before.day, minute: null }, apart).day
    )
      counting.push(done);
  }
  return counting;
}

/** A rule that asks for so many counts from the first of the last so many; from the start, where there are fewer. */
function oftenEnough(node: IntervalNode, clock: Clock): Clock {
  if (node.doings === undefined) return clock;
  const counting = apartOnly(clock.doings, node.apart);
  const first = counting.at(-node.doings);
  return { ...clock, doings: first === undefined ? [] : [first] };
}

export function interval(world: World, node: IntervalNode, all: Clock): Outcome {
  const clock = oftenEnough(node, all);
  switch (node.amount.on) {
    case 'meter':
      return meterInterval(world, node, node.amount, clock);
    case 'calendar':
      return calendarInterval(world, node, node.amount, clock);
    case 'work':
      return workInterval(world, node, node.amount, clock);
  }
}

function meterInterval(world: World, node: IntervalNode, { meter, ticks }: MeterAmount, clock: Clock): Outcome {
  const doings = followed(clock, (done) => done.meter(meter) !== null);
  if (doings === null) return unknown(node);
  let base: number | undefined = clock.start?.meter(meter) ?? undefined;
  for (const done of doings) base = nextBase(node, base === undefined || done.resets ? null : base + ticks, done.meter(meter) ?? 0);
  return base === undefined ? unrecorded(node) : meterLimit(world, node, meter, base, base + ticks);
}

function calendarInterval(world: World, node: IntervalNode, span: CalendarAmount, clock: Clock): Outcome {
  const doings = followed(clock, ({ when }) => when !== null);
  if (doings === null) return unknown(node);
  let anchor = clock.start?.when ?? undefined;
  let k = 0;
  for (const { when, resets } of doings) {
    if (when === null) continue;
    const due = anchor === undefined || resets ? null : later(anchor, span, k + 1).day;
    if (due !== null && nextBase(node, due, when.day) === due && when.day !== due) k += 1;
    else if (due !== null && when.day === due && node.count === 'due-within-allowance') k += 1;
    else [anchor, k] = [when, 0];
  }
  if (anchor === undefined) return unrecorded(node);
  if (node.standstill !== undefined) {
    const due = putOff(world, anchor.day, later(anchor, span).day, node.standstill);
    return calendarLimit(world, node, anchor, { day: due, minute: null }, span.unit);
  }
  return calendarLimit(world, node, k === 0 ? anchor : later(anchor, span, k), later(anchor, span, k + 1), span.unit);
}

/** Storage that is long enough and began before the limit fell due puts it off, by its days since the base; the next may then count too. */
function putOff(world: World, base: number, due: number, atLeast: CalendarAmount): number {
  let off = due;
  for (const { begin, end } of storageSpells(world)) {
    const over = end?.day ?? world.now.day;
    if (begin.day < off && later(begin, atLeast).day <= over) off += Math.max(0, over - Math.max(begin.day, base));
  }
  return off;
}

/** What is overrun counts in the next interval; what is done early, in the allowance, does not. */
function workInterval(world: World, node: IntervalNode, amount: WorkAmount, clock: Clock): Outcome {
  const doings = followed(clock, ({ when }) => when !== null);
  if (doings === null) return unknown(node);
  let base: When | null = clock.start?.when ?? null;
  let carried = 0;
  let first = !clock.fromStart;
  for (const { when, resets } of doings) {
    if (when === null) continue;
    const done = carried + workBetween(world, base, when, amount.duty);
    carried = first || resets ? 0 : done - nextBase(node, amount.ticks, done);
    [base, first] = [when, false];
  }
  return workLimit(world, node, base, amount, carried);
}

/** Linear damage: an hour in a duty with interval N_d counts N / N_d hours. */
export function dutyMix(world: World, node: DutyMixNode, clock: Clock): Outcome {
  const doings = followed(clock, (done) => done.meter(node.meter) !== null);
  if (doings === null) return unknown(node);
  let base: number | undefined = clock.start?.meter(node.meter) ?? undefined;
  let since: When | null = clock.start?.when ?? null;
  for (const done of doings) {
    const total = done.meter(node.meter) ?? 0;
    const due: number | null =
      base === undefined || done.resets ? null : total + left(node, spent(world, node, base, since, done.when, total));
    base = nextBase(node, due, total);
    since = done.when;
  }
  if (base === undefined) return unrecorded(node);
  const read = readings(world, node.meter)
    .filter(({ when }) => !after(when, world.now))
    .at(-1);
  const shown = meterNow(world, node.meter);
  if (shown === null) return unknown(node);
  const unread = read === undefined ? { hours: 0, used: 0 } : sinceRead(world, node, since, read.when);
  const used = spent(world, node, base, since, null, shown, read?.when) + unread.used;
  const stands = shown + unread.hours;
  return { ...meterLimit(world, node, node.meter, base, stands + left(node, used), stands), used: used / node.ticks };
}

/** What is left of the interval, if it is ordinary work. */
function left(node: DutyMixNode, used: number): number {
  return Math.ceil(node.ticks - used - 1e-6);
}

function strictestFirst(node: DutyMixNode): DutyMixNode['duties'] {
  return [...node.duties].sort((a, b) => a.ticks - b.ticks);
}

/** The outings on which the meter runs. */
function itsOutings(world: World, node: DutyMixNode): readonly Work[] {
  const attachment = world.graph.meters.find(({ id }) => id === node.meter)?.attachment;
  return outings(world).filter((work) => ran(world, attachment, work));
}

/** The share of an outing that came after a reading: none where it ended by then. */
function afterReading(world: World, work: Work, read: When): number {
  return after(work.end ?? world.now, read) ? shareSince(world, work, read) : 0;
}

/** What is used up of the interval, in ticks of ordinary work: a whole number, but for what hours in a duty make of it. Up to when it was read. */
function spent(world: World, node: DutyMixNode, base: number, from: When | null, to: When | null, total: number, read?: When): number {
  let ordinary = Math.max(0, total - base);
  let used = 0;
  for (const work of itsOutings(world, node)) {
    const since = shareSince(world, work, from);
    const beyond = to !== null ? shareSince(world, work, to) : read === undefined ? 0 : Math.min(since, afterReading(world, work, read));
    const share = Math.max(0, since - beyond);
    let free = Math.min(Math.round(work.ticks * share), ordinary);
    for (const { duty, ticks } of strictestFirst(node)) {
      const here = Math.min(free, Math.round(timeIn(work, duty) * share));
      free -= here;
      ordinary -= here;
      used += (here * node.ticks) / ticks;
    }
  }
  return ordinary + used;
}

/** What duties took since the meter was read, on top of what it shows. */
function sinceRead(world: World, node: DutyMixNode, from: When | null, read: When): { readonly hours: number; readonly used: number } {
  let [hours, used] = [0, 0];
  for (const work of itsOutings(world, node)) {
    const share = Math.min(shareSince(world, work, from), afterReading(world, work, read));
    let free = Math.round(work.ticks * share);
    for (const { duty, ticks } of strictestFirst(node)) {
      const here = Math.min(free, Math.round(timeIn(work, duty) * share));
      free -= here;
      hours += here;
      used += (here * node.ticks) / ticks;
    }
  }
  return { hours, used };
}
