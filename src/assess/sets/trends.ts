import { readInstruments } from '../../history/read-instruments.js';
import { outingFacts } from '../../history/read-outings.js';
import { trend } from '../conditions/trend.js';
import type { KindSet } from '../kinds.js';

/** Readings that climb or fall. */
export const trends: KindSet = {
  conditions: { trend },
  facts: { instruments: readInstruments, outings: outingFacts },
  entries: ['readings', 'outing'],
};
