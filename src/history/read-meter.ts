/**
 * The readings of one meter, from however many entries, as a track of those that count and a list of those that do not.
 */
import { compareTexts } from '../base/compare-texts.js';
import { compareMoments } from '../values/moment.js';
import { grown, newDial, takeReading } from './dial.js';
import type { Dial, Reading } from './dial.js';
import type { DialFacts, Replacement } from './facts.js';
import type { MeterPoint, Suspect } from './timeline.js';

/** All that entries say about one meter; ticks. Replacements are in the order of the history, readings in any. */
export interface MeterRecord {
  readonly readings: readonly Reading[];
  readonly replacements: readonly Replacement[];
}

/** What became of them: those that count, in order, and those that do not. */
export interface MeterRead {
  readonly points: readonly MeterPoint[];
  readonly suspects: readonly Suspect[];
}

/**
 * Reads one meter (docs/meaning.md §2) in O(n log n).
 *
 * @param ticksPerDay ticks in 24 h if the meter counts time, else `null`: then it cannot rise too fast.
 * @param dials what replacements are read by; needed where there are some.
 */
export function readMeter(meter: string, ticksPerDay: number | null, record: MeterRecord, dials: DialFacts | undefined): MeterRead {
  const points: MeterPoint[] = [];
  const suspects: Suspect[] = [];
  let dial = newDial(meter, ticksPerDay);
  for (const { readings, replacements } of byDay(record)) {
    const parts = dials?.part(readings, replacements) ?? [readings];
    parts.forEach((part, index) => {
      const taken = takeSpell(dial, part);
      points.push(...taken.points);
      suspects.push(...taken.suspects);
      dial = taken.dial;
      const replacement = replacements[index];
      if (replacement === undefined || dials === undefined) return;
      const replaced = dials.replace(dial, replacement);
      if (replaced.taken.kind === 'counts') points.push(replaced.taken.point);
      else suspects.push(replaced.taken.suspect);
      dial = replaced.dial;
    });
  }
  return { points, suspects };
}

/** The days on which something was read, in order. */
function byDay(record: MeterRecord): readonly MeterRecord[] {
  const days = new Map<number, { readonly readings: Reading[]; readonly replacements: Replacement[] }>();
  const of = (day: number): { readonly readings: Reading[]; readonly replacements: Replacement[] } => {
    const there = days.get(day) ?? { readings: [], replacements: [] };
    days.set(day, there);
    return there;
  };
  for (const reading of record.readings) of(reading.when.day).readings.push(reading);
  for (const replacement of record.replacements) of(replacement.when.day).replacements.push(replacement);
  return [...days].sort(([a], [b]) => a - b).map(([, day]) => day);
}

interface Spell extends MeterRead {
  readonly dial: Dial;
}

/**
 * Takes in the readings of one day on one dial: those with minutes in that order, those without in the order of their values.
 *
 * Those with minutes are first tried alone, so that one that does not count cannot push the others out of place. Where one of the
 * day is confirmed, it may set the dial back, and values no longer tell the order: then those without minutes come first.
 */
function takeSpell(dial: Dial, readings: readonly Reading[]): Spell {
  const byValue = (a: Reading, b: Reading): number => a.shown - b.shown || compareTexts(a.entry, b.entry);
  const timed = readings.filter(({ when }) => when.minute !== null).sort((a, b) => compareMoments(a.when, b.when) || byValue(a, b));
  const untimed = readings.filter(({ when }) => when.minute === null).sort(byValue);
  if (untimed.length === 0 || timed.length === 0) return takeInTurn(dial, [...untimed, ...timed]);
  if (readings.some(({ confirmedBy }) => confirmedBy !== null))
    return withConfirmations(takeInTurn(dial, [...untimed, ...timed]), readings);
  const tried = takeInTurn(dial, timed);
  const out = new Set(tried.suspects.map(({ entry }) => entry));
  const both = takeInTurn(
    dial,
    mergeByValue(
      untimed,
      timed.filter(({ entry }) => !out.has(entry)),
    ),
  );
  return { ...both, suspects: [...tried.suspects, ...both.suspects] };
}

/** Where a confirmation had a say in the order of the day, its reading rests on it even if it would count without. */
function withConfirmations(spell: Spell, readings: readonly Reading[]): Spell {
  const confirmations = new Map(
    readings.flatMap(({ entry, confirmedBy }) => (confirmedBy === null ? [] : [[entry, confirmedBy] as const])),
  );
  const points = spell.points.map((point) => {
    const by = confirmations.get(point.entry);
    return by === undefined ? point : { ...point, alongside: grown(point.alongside, by) };
  });
  return { ...spell, points };
}

function takeInTurn(start: Dial, readings: readonly Reading[]): Spell {
  const points: MeterPoint[] = [];
  const suspects: Suspect[] = [];
  let dial = start;
  for (const reading of readings) {
    const taken = takeReading(dial, reading);
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
