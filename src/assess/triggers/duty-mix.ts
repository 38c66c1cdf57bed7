import type { DutyMixNode } from '../../graph/rule-graph.js';
import type { EntryId } from '../../history/entry.js';
import type { Outing } from '../../history/timeline.js';
import { commonDivisor } from '../../values/common-divisor.js';
import type { Moment } from '../../values/moment.js';
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
    const shares = sharesBetween(world, node, base.when, doing.when, Math.max(0, value - base.anchor));
    if (node.count !== 'doing') outings.push(...shares.flatMap((share) => share.entries));
    return value + sumOf(node, shares).ordinaryLeft;
  };
  const found = baseOf(world, { ...node, amount, dueAt }, axis, doingsOf(world, context.task), context.fromStart);
  if ('missing' in found) return lacksBase(world, node, found);
  const { anchor, when, why, entries: cited } = found.base;
  const now = axis.now(when);
  if (now === null) return lacksNow(world, node, axis, found.base);
  const shares = sharesBetween(world, node, when, null, Math.max(0, now.value - anchor));
  const { used, ordinaryLeft } = sumOf(node, shares);
  const entries = [...now.entries, ...shares.flatMap((share) => share.entries)];
  return judge(world, node, axis, {
    base: { value: anchor, why, when, entries: [...new Set([...cited, ...outings])] },
    due: now.value + ordinaryLeft,
    now: { value: now.value, entries },
    mix: { used, shares },
  });
}

type Share = NonNullable<Observation['shares']>[number];

/** The sum over the duties, exact, and what is left of the interval if the rest is ordinary work. */
function sumOf(node: DutyMixNode, shares: readonly Share[]): { readonly used: number; readonly ordinaryLeft: number } {
  const whole = shares.reduce((lcm, share) => leastCommonMultiple(lcm, share.of), node.ticks);
  const spent = shares.reduce((sum, share) => sum + share.ticks * (whole / share.of), 0);
  return { used: spent / whole, ordinaryLeft: Math.ceil((whole - spent) / (whole / node.ticks)) };
}

/**
 * Splits the hours from a base to a doing, or to now, over the duties; an hour in several counts in the strictest, and what no outing
 * claims is ordinary. Never more than the meter shows.
 */
function sharesBetween(world: World, node: DutyMixNode, from: Moment | null, to: Moment | null, total: number): readonly Share[] {
  const strictest = [...node.duties].sort((a, b) => a.ticks - b.ticks);
  const sums = new Map(strictest.map(({ duty, ticks }) => [duty, { duty, of: ticks, ticks: 0, entries: [] as EntryId[] }]));
  let unclaimed = total;
  for (const outing of outingsWithin(world, from, to)) {
    const part = Math.max(0, shareSince(world, outing, from) - (to === null ? 0 : shareSince(world, outing, to)));
    let free = Math.min(Math.round(outing.ticks * part), unclaimed);
    for (const { duty } of strictest) {
      const claimed = Math.min(free, Math.round(hoursIn(outing, duty) * part));
      const sum = sums.get(duty);
      if (sum === undefined || claimed <= 0) continue;
      sum.ticks += claimed;
      sum.entries.push(outing.entry);
      free -= claimed;
      unclaimed -= claimed;
    }
  }
  return [{ duty: null, of: node.ticks, ticks: unclaimed, entries: [] }, ...sums.values()];
}

function hoursIn(outing: Outing, duty: string): number {
  return outing.duties.find((each) => each.duty === duty)?.ticks ?? 0;
}

function leastCommonMultiple(a: number, b: number): number {
  return (a / commonDivisor(a, b)) * b;
}
