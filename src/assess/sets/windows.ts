import { outingFacts } from '../../history/read-outings.js';
import { shortlyBefore } from '../triggers/shortly-before.js';
import type { KindSet } from '../kinds.js';

/** Within so long before each day's work, outing or shift. */
export const windows: KindSet = {
  triggers: { 'shortly-before': shortlyBefore },
  facts: { outings: outingFacts },
  entries: ['outing'],
};
