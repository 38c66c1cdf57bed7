/** What owners set right: entries that they void, and readings that they confirm although these disagree with others (docs/meaning.md §2, §3). */
import { ofKind } from './dated-entry.js';
import type { Dated } from './dated-entry.js';
import { boundWith, type Dial, type Disagreement, disagreement, pointOf, type Reading, type Taken } from './dial.js';
import type { EntryId } from './entry.js';
import type { CorrectionFacts } from './facts.js';
import { grown, others, pillarsOf } from './pillars.js';
import { NO_BOUND } from './rise-bound.js';
import { type DayTaken, takeInTurn } from './take-day.js';
import type { StraySink } from './stray.js';
import type { MeterPoint } from './timeline.js';

/** How corrections are read. */
export const correctionFacts: CorrectionFacts = { voided: voidedEntries, confirmed: confirmedEntries, settle, settleDay };

/**
 * Which entries are voided: those named by a void that is not itself voided.
 *
 * Each void names one entry, so voids form chains; a chain is settled from its free end. What is left over runs in a circle,
 * where nothing says which end is free: none of those voids counts.
 */
function voidedEntries(seen: readonly Dated[], known: ReadonlySet<EntryId>, strays: StraySink): ReadonlySet<EntryId> {
  const voids = new Map(ofKind(seen, 'void').map(({ entry }) => [entry.id, entry]));
  const namers = new Map<EntryId, number>();
  for (const { entry: target } of voids.values()) namers.set(target, (namers.get(target) ?? 0) + 1);
  const voided = new Set<EntryId>();
  const settled = new Set<EntryId>();
  const free = [...voids.keys()].filter((id) => !namers.has(id));
  for (let id = free.pop(); id !== undefined; id = free.pop()) {
    const target = voids.get(id)?.entry;
    if (target === undefined || settled.has(id)) continue;
    settled.add(id);
    if (!known.has(target)) strays.report(id, `There is no entry \`${target}\` to void`);
    const left = (namers.get(target) ?? 1) - 1;
    namers.set(target, left);
    if (!voided.has(id)) voided.add(target);
    // A void is settled once one that counts names it, or once none of those that name it is open any more.
    if (voids.has(target) && (voided.has(target) || left === 0)) free.push(target);
  }
  for (const id of voids.keys()) {
    if (!settled.has(id)) strays.report(id, 'This void and the entry it names void each other; neither counts as a void');
  }
  return voided;
}

function confirmedEntries(standing: readonly Dated[], known: ReadonlySet<EntryId>, strays: StraySink): ReadonlyMap<EntryId, EntryId> {
  const confirmations = new Map<EntryId, EntryId>();
  for (const { entry } of ofKind(standing, 'confirm')) {
    if (!known.has(entry.entry)) strays.report(entry.id, `There is no entry \`${entry.entry}\` to confirm`);
    else if (!confirmations.has(entry.entry)) confirmations.set(entry.entry, entry.id);
  }
  return confirmations;
}

function settle(dial: Dial, reading: Reading, total: number, disagrees: Disagreement | null): Taken {
  const { confirmedBy } = reading;
  if (disagrees?.why === 'falls' && confirmedBy !== null) return takeFall(dial, reading, disagrees.against, confirmedBy);
  return takeRise(dial, reading, total);
}

/** A fall that the owner stands by is a dial that was set back: the life total goes on from where it stood. */
function takeFall(dial: Dial, reading: Reading, against: MeterPoint, confirmedBy: EntryId): Taken {
  const { total } = against;
  const rests = grown(dial.pillars, ...against.alongside, against.entry, confirmedBy);
  const point = pointOf(reading, total, others(rests, reading.entry));
  const pillars = grown(rests, reading.entry);
  const moved: Dial = { ...dial, offset: total - reading.shown, pillars, base: [reading.entry, confirmedBy] };
  return { kind: 'counts', point, dial: withPoint(moved, point, true) };
}

/** What it rests on beyond the pillars: its own confirmation, or the reading confirmed before it, where only that lets it count. */
function takeRise(dial: Dial, reading: Reading, total: number): Taken {
  const { confirmedBy } = reading;
  const leans = disagreement(dial, dial.lifeBound, total, reading.when) !== null;
  const on = confirmedBy === null ? dial.base : [confirmedBy];
  const rests = leans ? grown(dial.pillars, ...on) : dial.pillars;
  const point = pointOf(reading, total, others(rests, reading.entry));
  const base = confirmedBy === null ? dial.base : [reading.entry, confirmedBy];
  return { kind: 'counts', point, dial: withPoint({ ...dial, base }, point, confirmedBy !== null) };
}

/** `afresh`: later rises are measured from this point on. */
function withPoint(dial: Dial, point: MeterPoint, afresh: boolean): Dial {
  const bound = boundWith(dial, afresh ? NO_BOUND : dial.bound, point);
  return { ...dial, last: point, bound, lifeBound: boundWith(dial, dial.lifeBound, point) };
}

/** Values do not tell the order of a day on which the dial may be set back. The reading that is confirmed rests on that even if it would count without. */
function settleDay(dial: Dial, inOrder: readonly Reading[]): DayTaken | null {
  const confirmations = new Map(inOrder.flatMap(({ entry, confirmedBy }) => (confirmedBy === null ? [] : [[entry, confirmedBy] as const])));
  if (confirmations.size === 0) return null;
  const day = takeInTurn(dial, inOrder, { corrections: correctionFacts, pillars: pillarsOf });
  const points = day.points.map((point) => {
    const by = confirmations.get(point.entry);
    return by === undefined ? point : { ...point, alongside: grown(point.alongside, by) };
  });
  return { ...day, points };
}
