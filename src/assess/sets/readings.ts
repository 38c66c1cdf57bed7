import { readInstruments } from '../../history/read-instruments.js';
import { compare } from '../conditions/compare.js';
import { readingHolds } from '../reading-holds.js';
import type { KindSet } from '../kinds.js';

/** What gauges and dipsticks read: bands, holds and cautions, comparisons. */
export const readings: KindSet = {
  conditions: { compare },
  aspects: { reads: readingHolds },
  facts: { instruments: readInstruments },
  entries: ['readings'],
};
