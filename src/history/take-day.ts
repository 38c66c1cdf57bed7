import { compareTexts } from '../base/compare-texts.js';
import { compareMoments } from '../values/moment.js';
import { takeReading } from './dial.js';
import type { Dial, Reading } from './dial.js';
import type { Facts } from './facts.js';
import type { MeterPoint, Suspect } from './timeline.js';

/** What became of the readings of one meter on one day, and the dial as they leave it. */
export interface DayTaken {
  readonly points: readonly MeterPoint[];
  readonly suspects: readonly Suspect[];
  readonly dial: Dial;
}

/** How the readings of one day are taken in. */
export type TakeDay = (dial: Dial, readings: readonly Reading[], facts: Partial<Facts>) => DayTaken;

/**
 * Takes in the readings of one day on one dial: those with minutes in that order, those without in the order of their values.
 *
 * Those with minutes are first tried alone, so that one that does not count cannot push the others out of place. Where one of the
 * day is confirmed, it may set the dial back, and values no longer tell the order: then those without minutes come first.
 */
export function takeDay(dial: Dial, readings: readonly Reading[], facts: Partial<Facts>): DayTaken {
  const inOrder = [...readings].sort((a, b) => compareMoments(a.when, b.when) || a.shown - b.shown || compareTexts(a.entry, b.entry));
  const timed = inOrder.filter(({ when }) => when.minute !== null);
  if (timed.length === 0 || timed.length === inOrder.length) return takeInTurn(dial, inOrder, facts);
  const settled = facts.corrections?.settleDay(dial, inOrder) ?? null;
  if (settled !== null) return settled;
  const { suspects } = takeInTurn(dial, timed, facts);
  const out = new Set(suspects.map(({ entry }) => entry));
  // INVARIANT: with those out, the ones with minutes never fall, so that sorting by value leaves them in their order.
  const byValue = inOrder.filter(({ entry }) => !out.has(entry)).sort((a, b) => a.shown - b.shown);
  const both = takeInTurn(dial, byValue, facts);
  return { ...both, suspects: [...suspects, ...both.suspects] };
}

/** Takes in readings one after the other. */
export function takeInTurn(start: Dial, readings: readonly Reading[], facts: Partial<Facts>): DayTaken {
  const points: MeterPoint[] = [];
  const suspects: Suspect[] = [];
  let dial = start;
  for (const reading of readings) {
    const taken = takeReading(dial, reading, facts);
    if (taken.kind === 'suspect') suspects.push(taken.suspect);
    else {
      points.push(taken.point);
      dial = taken.dial;
    }
  }
  return { points, suspects, dial };
}
