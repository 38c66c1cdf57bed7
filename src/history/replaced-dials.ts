/** Meters whose dial was taken out for another: what came before counts on the one, what came after on the other (docs/meaning.md §2). */
import { unitsOf } from '../values/ticks.js';
import { type Dial, grown, type Reading, takeReading, type Taken } from './dial.js';
import type { DialFacts, Replacement } from './facts.js';

/** How replacements are read. */
export const dialFacts: DialFacts = { part, replace };

function part(readings: readonly Reading[], replacements: readonly Replacement[]): readonly (readonly Reading[])[] {
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
function replace(dial: Dial, final: Replacement): { readonly taken: Taken; readonly dial: Dial } {
  const { initial } = final;
  const taken = takeReading(dial, final);
  const after = taken.kind === 'counts' ? taken.dial : dial;
  const total = after.last?.total ?? dial.offset + final.shown;
  // A new dial that takes up where the old one stood shifts no total.
  const shifts = total - initial !== dial.offset;
  if (taken.kind === 'suspect') {
    const believed = after.last === null ? [] : [after.last.entry];
    return {
      taken,
      dial: { ...after, offset: total - initial, pillars: shifts ? grown(after.pillars, ...believed, final.entry) : after.pillars },
    };
  }
  const pillars = shifts ? grown(after.pillars, final.entry) : after.pillars;
  const point = { ...taken.point, shown: unitsOf(initial) };
  const next = { ...after, offset: total - initial, pillars, last: point };
  return { taken: { kind: 'counts', point, dial: next }, dial: next };
}
