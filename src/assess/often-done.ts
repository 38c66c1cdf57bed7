/** Rules that ask for so many doings (docs/meaning.md §4, "So many times"): which of the doings count, and which of them is the one to count from. */
import { dayAfter } from '../graph/calendar-amount.js';
import type { CalendarAmount, IntervalNode } from '../graph/rule-graph.js';
import type { DuePoint, Note } from './assessment.js';
import type { Axis } from './axis.js';
import { baseOf, type BaseResult, type NoBase, pointsOf } from './base.js';
import { type DatedDoing, doingsOf, type EffectiveDoing } from './doings.js';
import type { TriggerContext } from './trigger-context.js';
import type { World } from './world.js';

type DoingsCounted = Extract<Note, { is: 'doings-counted' }>;

/** Doings in their order, and of those that have to be so far apart which came too soon to count. */
export interface FarApart {
  readonly counting: readonly EffectiveDoing[];
  readonly tooSoon: readonly { readonly doing: DatedDoing; readonly after: DatedDoing }[];
}

/** Counts from the first of the last so many; where there are fewer, from the machine's start, if that counts. */
export function baseOfSeveral(world: World, node: IntervalNode, axis: Axis, context: TriggerContext): BaseResult {
  const times = node.doings ?? 1;
  const all = farApart(doingsOf(world, context.task), node.apart);
  const last = all.counting.slice(-times);
  world.step(last.length);
  const missed = tooSoonAfter(all, last);
  const cited = [...last, ...missed.map(({ doing }) => doing)];
  const counted = last.map((doing) => ({ when: doing.when, at: pointAt(axis, doing) }));
  const note: DoingsCounted = { is: 'doings-counted', counted, of: times, ...tooSoonNote(missed) };
  const stood = counted.flatMap(({ at }) => at ?? []);
  const found = baseOf(world, node, axis, last.length < times ? [] : last.slice(0, 1), context.fromStart);
  if ('base' in found) return { base: { ...found.base, entries: entriesOf(cited, found.base.entries) }, note, stood };
  return withLater({ ...found, entries: entriesOf(cited, found.entries), note }, last);
}

function pointAt(axis: Axis, doing: EffectiveDoing): DuePoint | null {
  const stood = axis.at(doing, null);
  return stood === null ? null : axis.point(stood.value);
}

/** The doings that are so long after the last before them that counts, and the others; one whose day nobody knows counts. */
export function farApart(doings: readonly EffectiveDoing[], apart: CalendarAmount | undefined): FarApart {
  if (apart === undefined) return { counting: doings, tooSoon: [] };
  const counting: EffectiveDoing[] = [];
  const tooSoon: FarApart['tooSoon'][number][] = [];
  let after: DatedDoing | null = null;
  for (const doing of doings) {
    if (!isDated(doing)) counting.push(doing);
    else if (after !== null && doing.when.day < dayAfter(after.when.day, apart)) tooSoon.push({ doing, after });
    else {
      counting.push(doing);
      after = doing;
    }
  }
  return { counting, tooSoon };
}

function isDated(doing: EffectiveDoing): doing is DatedDoing {
  return doing.when !== null;
}

/** Those that came too soon after one of some doings. */
export function tooSoonAfter({ tooSoon }: FarApart, counted: readonly EffectiveDoing[]): FarApart['tooSoon'] {
  return tooSoon.filter(({ after }) => counted.includes(after));
}

/** What is told of doings that came too soon to count; nothing where none did. */
export function tooSoonNote(missed: FarApart['tooSoon']): Pick<DoingsCounted, 'tooSoon'> {
  if (missed.length === 0) return {};
  return { tooSoon: missed.map(({ doing, after }) => ({ when: doing.when, after: after.when, entry: doing.entries[0] ?? '' })) };
}

/** Which of several doings is the one that a rule counts from goes by how many there are. */
export function withLater(found: NoBase, counted: readonly EffectiveDoing[]): NoBase {
  const later = counted.flatMap(({ when }) => pointsOf(when));
  const stood = [...(found.stood ?? []), ...later];
  return { ...found, entries: entriesOf(counted, found.entries), ...(stood.length === 0 ? {} : { stood }) };
}

/** What several doings rest on, after other entries. */
export function entriesOf(doings: readonly EffectiveDoing[], others: NoBase['entries']): NoBase['entries'] {
  return [...new Set([...others, ...doings.flatMap((doing) => doing.entries)])];
}
