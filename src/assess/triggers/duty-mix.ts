import type { DutyMixNode } from '../../graph/rule-graph.js';
import type { EntryId } from '../../history/entry.js';
import { runsOn } from '../../history/count-outings.js';
import { meterAt } from '../../history/meter-at.js';
import type { Outing } from '../../history/timeline.js';
import { commonDivisor } from '../../values/common-divisor.js';
import { isAfter, type Moment } from '../../values/moment.js';
import type { Observation } from '../assessment.js';
import { axisOf } from '../axis.js';
import { type Base, baseOf } from '../base.js';
import { doingsOf, type EffectiveDoing } from '../doings.js';
import { judge } from '../judge.js';
import { shareSince } from '../outing-share.js';
import { outingsWithin } from '../outings-within.js';
import type { Reach } from '../reach.js';
import type { TriggerContext } from '../trigger-context.js';
import type { World } from '../world.js';
import { lacksBase, lacksNow } from './interval.js';

/**
 * An hour interval that hours in several duties use up in proportion: due when Σ hᵢ/Nᵢ ≥ 1.
 *
 * The sum is exact: every hour counts in whole L/Nᵢ, where L is the least common multiple of the intervals, and the limit is L.
 * Source: Palmgren–Miner linear damage, any machine-design textbook.
 */
export function dutyMix(world: World, node: DutyMixNode, context: TriggerContext): Reach {
  const amount = { on: 'meter', meter: node.meter, ticks: node.ticks } as const;
  const axis = axisOf(world, amount);
  // Where the beat is kept, the due point rests on the outings before each doing.
  const outings: EntryId[] = [];
  const dueAt = (base: Base, doing: EffectiveDoing, value: number): number => {
    const { shares } = sharesBetween(world, node, { from: base.when, to: doing.when, read: doing.when }, Math.max(0, value - base.anchor));
    outings.push(...shares.flatMap((share) => share.entries));
    return value + sumOf(node, shares).ordinaryLeft;
  };
  const found = baseOf(world, { ...node, amount, dueAt }, axis, doingsOf(world, context.task), context.fromStart);
  if ('missing' in found) return lacksBase(world, node, found);
  const { anchor, when, why, entries: cited } = found.base;
  const now = axis.now(when);
  if (now === null) return lacksNow(world, node, axis, found.base);
  const read = lastRead(world, node.meter);
  const { shares, unread } = sharesBetween(world, node, { from: when, to: null, read }, Math.max(0, now.value - anchor));
  const { used, ordinaryLeft } = sumOf(node, shares);
  const stands = now.value + unread;
  const entries = [...now.entries, ...shares.flatMap((share) => share.entries)];
  return judge(world, node, axis, {
    base: { value: anchor, why, when, entries: [...new Set([...cited, ...outings])] },
    due: stands + ordinaryLeft,
    now: { value: stands, entries },
    used,
    ...(unread > 0 ? { read: now.value } : {}),
    shares,
  });
}

type Share = NonNullable<Observation['shares']>[number];

/** The sum over the duties, exact, and what is left of the interval if the rest is ordinary work. */
function sumOf(node: DutyMixNode, shares: readonly Share[]): { readonly used: number; readonly ordinaryLeft: number } {
  const whole = shares.reduce((lcm, share) => leastCommonMultiple(lcm, share.of), node.ticks);
  const spent = shares.reduce((sum, share) => sum + share.ticks * (whole / share.of), 0);
  return { used: spent / whole, ordinaryLeft: Math.ceil((whole - spent) / (whole / node.ticks)) };
}

/** From a base to a doing, or to now (`null`), and when the meter was last read by then. */
interface Stretch {
  readonly from: Moment | null;
  readonly to: Moment | null;
  readonly read: Moment | null;
}

/**
 * Splits the hours of a stretch over the duties; an hour in several counts in the strictest, and what no outing claims is ordinary. Never more
 * than the meter shows, but for outings that went on after it was read: what they were in a duty comes on top (`unread`).
 */
function sharesBetween(
  world: World,
  node: DutyMixNode,
  stretch: Stretch,
  total: number,
): { readonly shares: readonly Share[]; readonly unread: number } {
  const strictest = [...node.duties].sort((a, b) => a.ticks - b.ticks);
  const sums = new Map(strictest.map(({ duty, ticks }) => [duty, { duty, of: ticks, ticks: 0, entries: [] as EntryId[] }]));
  let [unclaimed, unread] = [total, 0];
  for (const outing of outingsWithin(world, stretch.from, stretch.to)) {
    const on = onWhichItRuns(world, node.meter, outing);
    if (on === null) continue;
    const { shown, after } = partsOf(world, outing, stretch);
    unclaimed -= claim(outing, shown, Math.min(Math.round(outing.ticks * shown), unclaimed), strictest, on, sums);
    unread += claim(outing, after, Math.round(outing.ticks * after), strictest, on, sums);
  }
  return { shares: [{ duty: null, of: node.ticks, ticks: unclaimed, entries: [] }, ...sums.values()], unread };
}

/** Which share of an outing lies in a stretch and is in what the meter showed, and which came after. */
function partsOf(world: World, outing: Outing, { from, to, read }: Stretch): { readonly shown: number; readonly after: number } {
  const beyond = to === null ? 0 : shareSince(world, outing, to);
  const since = shareSince(world, outing, from);
  const went = read !== null && isAfter(outing.end ?? world.now, read);
  const after = went ? Math.max(0, Math.min(since, shareSince(world, outing, read)) - beyond) : 0;
  return { shown: Math.max(0, since - beyond) - after, after };
}

type Sums = ReadonlyMap<string, { ticks: number; readonly entries: EntryId[] }>;

/** Adds a share of an outing's hours in each duty to the sums, the strictest first, as long as there are `free` hours; and says how many it took. */
function claim(outing: Outing, part: number, free: number, strictest: DutyMixNode['duties'], on: readonly EntryId[], sums: Sums): number {
  let left = free;
  for (const { duty } of strictest) {
    const claimed = Math.min(left, Math.round(hoursIn(outing, duty) * part));
    const sum = sums.get(duty);
    if (sum === undefined || claimed <= 0) continue;
    sum.ticks += claimed;
    sum.entries.push(outing.entry, ...on);
    left -= claimed;
  }
  return free - left;
}

/** What it rests on that the meter ran during an outing; `null` if it did not. */
function onWhichItRuns({ index, timeline }: World, meter: string, outing: Outing): readonly EntryId[] | null {
  const spell = runsOn(index.meters.get(meter) ?? {}, outing, timeline.attachments);
  return spell === undefined ? null : spell === null || spell.begin.entry === outing.entry ? [] : [spell.begin.entry];
}

/** When a meter was last read; one that counts from outings shows every one of them. */
function lastRead({ timeline, now }: World, meter: string): Moment | null {
  const track = timeline.meters.get(meter);
  return track === undefined ? null : (meterAt(track, now)?.when ?? null);
}

function hoursIn(outing: Outing, duty: string): number {
  return outing.duties.find((each) => each.duty === duty)?.ticks ?? 0;
}

function leastCommonMultiple(a: number, b: number): number {
  return (a / commonDivisor(a, b)) * b;
}
