/** Meters whose dial was taken out for another: what came before counts on the one, what came after on the other (docs/meaning.md §2). */
import { ticksOf, unitsOf } from '../values/ticks.js';
import type { Dated } from './dated-entry.js';
import { type Dial, type Reading, takeReading, type Taken } from './dial.js';
import type { DialFacts, Facts } from './facts.js';
import { grown } from './pillars.js';
import { type DayTaken, takeDay } from './take-day.js';
import type { MeterPoint, Suspect } from './timeline.js';

/** How replacements are read. */
export const dialFacts: DialFacts = { replacedBy, takeDay: takeParts };

/** The last reading of a dial that was taken out. */
interface Replacement extends Reading {
  readonly initial: number;
}

function replacedBy({ entry, when }: Dated): ReturnType<DialFacts['replacedBy']> {
  if (entry.kind !== 'meter-replaced') return null;
  return { meter: entry.meter, last: { when, shown: ticksOf(entry.final), initial: ticksOf(entry.initial) } };
}

function takeParts(start: Dial, day: readonly Reading[], facts: Partial<Facts>): DayTaken {
  const replacements = day.filter((reading): reading is Replacement => reading.initial !== undefined);
  const readings = day.filter(({ initial }) => initial === undefined);
  const points: MeterPoint[] = [];
  const suspects: Suspect[] = [];
  let dial = start;
  parted(readings, replacements).forEach((part, index) => {
    const taken = takeDay(dial, part, facts);
    points.push(...taken.points);
    suspects.push(...taken.suspects);
    dial = taken.dial;
    const replacement = replacements[index];
    if (replacement === undefined) return;
    const replaced = replace(dial, replacement, facts);
    if (replaced.taken.kind === 'counts') points.push(replaced.taken.point);
    else suspects.push(replaced.taken.suspect);
    dial = replaced.dial;
  });
  return { points, suspects, dial };
}

/** The readings of a day, parted by the replacements of that day: always one part more than there are replacements. */
function parted(readings: readonly Reading[], replacements: readonly Replacement[]): readonly (readonly Reading[])[] {
  const parts: Reading[][] = [[], ...replacements.map((): Reading[] => [])];
  for (const reading of readings) {
    const next = replacements.findIndex((replacement) => isBefore(reading, replacement));
    parts[next < 0 ? replacements.length : next]?.push(reading);
  }
  return parts;
}

/** Minutes decide where both have them; else the dial that the value is nearer to, the old one's final or the new one's initial. */
function isBefore(reading: Reading, replacement: Replacement): boolean {
  const [a, b] = [reading.when.minute, replacement.when.minute];
  if (a !== null && b !== null && a !== b) return a < b;
  return Math.abs(reading.shown - replacement.shown) <= Math.abs(reading.shown - replacement.initial);
}

/**
 * Puts another dial in place of this one: from here on `initial` stands for the life total reached.
 *
 * The final value is held against the readings before it like any other; if it is not believed, the total goes on from the last that is.
 */
function replace(dial: Dial, final: Replacement, facts: Partial<Facts>): { readonly taken: Taken; readonly dial: Dial } {
  const { initial } = final;
  const taken = takeReading(dial, final, facts);
  const after = taken.kind === 'counts' ? taken.dial : dial;
  const total = after.last?.total ?? dial.offset + final.shown;
  // A new dial that takes up where the old one stood shifts no total.
  const shifts = total - initial !== dial.offset;
  if (taken.kind === 'suspect') {
    const believed = after.last === null ? [] : [...after.last.alongside, after.last.entry];
    return {
      taken,
      dial: { ...after, offset: total - initial, pillars: shifts ? grown(after.pillars, ...believed, final.entry) : after.pillars },
    };
  }
  const pillars = shifts ? grown(after.pillars, ...taken.point.alongside, final.entry) : after.pillars;
  const point = { ...taken.point, shown: unitsOf(initial) };
  const next = { ...after, offset: total - initial, pillars, last: point };
  return { taken: { kind: 'counts', point, dial: next }, dial: next };
}
