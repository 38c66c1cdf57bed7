import { compareTexts } from '../base/compare-texts.js';
import { compareMoments } from '../values/moment.js';
import { takeReading } from './dial.js';
import type { Dial, Reading } from './dial.js';
import type { CorrectionFacts } from './facts.js';
import type { MeterPoint, Suspect } from './timeline.js';

/** What became of the readings of one meter on one day, and the dial as they leave it. */
export interface DayTaken {
  readonly points: readonly MeterPoint[];
  readonly suspects: readonly Suspect[];
  readonly dial: Dial;
}

/** How the readings of one day are taken in. */
export type TakeDay = (dial: Dial, readings: readonly Reading[], corrections: CorrectionFacts | undefined) => DayTaken;

/**
 * Takes in the readings of one day on one dial: those with minutes in that order, those without in the order of their values.
 *
 * Those with minutes are first tried alone, so that one that does not count cannot push the others out of place. Where one of the
 * day is confirmed, it may set the dial back, and values no longer tell the order: then those without minutes come first.
 */
export function takeDay(dial: Dial, readings: readonly Reading[], corrections: CorrectionFacts | undefined): DayTaken {
  const byValue = (a: Reading, b: Reading): number => a.shown - b.shown || compareTexts(a.entry, b.entry);
  const timed = readings.filter(({ when }) => when.minute !== null).sort((a, b) => compareMoments(a.when, b.when) || byValue(a, b));
  const untimed = readings.filter(({ when }) => when.minute === null).sort(byValue);
  const untimedFirst = (): DayTaken => takeInTurn(dial, [...untimed, ...timed], corrections);
  if (untimed.length === 0 || timed.length === 0) return untimedFirst();
  if (corrections !== undefined && readings.some(({ confirmedBy }) => confirmedBy !== null))
    return corrections.cited(untimedFirst(), readings);
  const tried = takeInTurn(dial, timed, corrections);
  const out = new Set(tried.suspects.map(({ entry }) => entry));
  const both = takeInTurn(
    dial,
    mergeByValue(
      untimed,
      timed.filter(({ entry }) => !out.has(entry)),
    ),
    corrections,
  );
  return { ...both, suspects: [...tried.suspects, ...both.suspects] };
}

function takeInTurn(start: Dial, readings: readonly Reading[], corrections: CorrectionFacts | undefined): DayTaken {
  const points: MeterPoint[] = [];
  const suspects: Suspect[] = [];
  let dial = start;
  for (const reading of readings) {
    const taken = takeReading(dial, reading, corrections);
    if (taken.kind === 'suspect') suspects.push(taken.suspect);
    else {
      points.push(taken.point);
      dial = taken.dial;
    }
  }
  return { points, suspects, dial };
}

function mergeByValue(untimed: readonly Reading[], timed: readonly Reading[]): readonly Reading[] {
  const merged: Reading[] = [];
  let next = 0;
  for (const reading of timed) {
    for (let other = untimed[next]; other !== undefined && other.shown <= reading.shown; other = untimed[next]) {
      merged.push(other);
      next += 1;
    }
    merged.push(reading);
  }
  return [...merged, ...untimed.slice(next)];
}
