import type { Chance } from '../../../../src/adapters/logbook/entry-id.js';
import type { Draft } from '../../../../src/adapters/logbook/plan-append.js';

/** A clock that stands still and chance that counts up: the same ids on every run. */
export function steadyChance(start = Date.UTC(2026, 4, 12, 8, 30)): Chance {
  let count = start % 29;
  return { now: () => start, random: (below) => (count += 7) % below };
}

/** A reading with a note, so that lines differ in length; umlauts and signs, so that bytes and characters differ. */
export function reading(number: number, note = `Süd-Hang №${number}`): Draft {
  return { kind: 'reading', on: '2026-05-12', meters: { engine: 1300 + number / 10 }, note };
}

export const PLAIN = [
  '{"on":"2026-03-01","kind":"machine","model":"Tarn 55","serial":1234,"inService":"2024-03-01","id":"start"}',
  '{"on":"2026-03-02","kind":"reading","meters":{"engine":1200}}',
].join('\n');
