/** Rules that ask for so many doings (docs/meaning.md §4, "So many times"): which of the doings count, and which of them is the one to count from. */
import { dayAfter } from '../graph/calendar-amount.js';
import type { CalendarAmount, IntervalNode } from '../graph/rule-graph.js';
import type { DuePoint } from './assessment.js';
import type { Axis } from './axis.js';
import { baseOf, type BaseResult, type NoBase } from './base.js';
import { doingsOf, type EffectiveDoing } from './doings.js';
import type { TriggerContext } from './trigger-context.js';
import type { World } from './world.js';

/** Where a rule that asks for so many doings within a span counts from, and where its axis stood at each of them: the first of the last so many. */
export function baseOfSeveral(
  world: World,
  node: IntervalNode,
  axis: Axis,
  context: TriggerContext,
): { readonly found: BaseResult; readonly stood?: readonly DuePoint[] } {
  const times = node.doings ?? 1;
  const last = farApart(doingsOf(world, context.task), node.apart).slice(-times);
  world.step(last.length);
  if (last.length < times) {
    const found = baseOf(world, node, axis, [], context.fromStart);
    // Past what stands first it is one of them that makes it ask for more.
    const past = context.fromStart ? [] : last.slice(0, 1);
    return { found: 'missing' in found ? { ...found, entries: entriesOf(past, found.entries) } : found };
  }
  const found = baseOf(world, node, axis, last.slice(0, 1), context.fromStart);
  if ('missing' in found) return { found: withLater(found, last) };
  const stood = last.flatMap((doing) => axis.at(doing, null) ?? []).map(({ value }) => axis.point(value));
  return { found: { base: { ...found.base, entries: entriesOf(last, found.base.entries) } }, stood };
}

/** The doings that are so long after the last before them that counts; one whose day nobody knows counts. */
export function farApart(doings: readonly EffectiveDoing[], apart: CalendarAmount | undefined): readonly EffectiveDoing[] {
  if (apart === undefined) return doings;
  let from = -Infinity;
  return doings.filter(({ when }) => {
    if (when === null) return true;
    if (when.day < from) return false;
    from = dayAfter(when.day, apart);
    return true;
  });
}

/** Which of several doings is the one that a rule counts from goes by how many there are. */
export function withLater(found: NoBase, counted: readonly EffectiveDoing[]): NoBase {
  return { ...found, entries: entriesOf(counted, found.entries), later: counted.flatMap(({ when }) => when ?? []) };
}

/** What several doings rest on, after other entries. */
export function entriesOf(doings: readonly EffectiveDoing[], others: NoBase['entries']): NoBase['entries'] {
  return [...new Set([...others, ...doings.flatMap((doing) => doing.entries)])];
}
