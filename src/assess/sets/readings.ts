import { readInstruments } from '../../history/read-instruments.js';
import { compare } from '../conditions/compare.js';
import { withReadings } from '../reading-holds.js';
import { heldBy } from '../held-by.js';
import type { KindSet } from '../kinds.js';

/** What gauges and dipsticks read: bands, holds and cautions, comparisons. */
export const readings: KindSet = {
  conditions: { compare },
  aspects: { reads: withReadings, held: heldBy },
  facts: { instruments: readInstruments },
  entries: ['readings'],
};
