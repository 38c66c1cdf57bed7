import { outingFacts } from '../../history/read-outings.js';
import { meterAxis } from '../axes/meter-axis.js';
import { dutyIs } from '../conditions/standing.js';
import { dutyMix } from '../triggers/duty-mix.js';
import type { KindSet } from '../kinds.js';

/** Hours in several duties that add up; whether the work on hand is in a duty. */
export const duties: KindSet = {
  triggers: { 'duty-mix': dutyMix },
  conditions: { 'duty-is': dutyIs },
  axes: { meter: meterAxis },
  facts: { outings: outingFacts },
  entries: ['outing'],
};
