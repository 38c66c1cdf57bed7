import { readDefects } from '../../history/read-defect.js';
import { defectIs } from '../conditions/standing.js';
import { defectHolds } from '../defect-holds.js';
import { withEnds } from '../ended-spells.js';
import { heldBy } from '../held-by.js';
import type { KindSet } from '../kinds.js';

/** Open defects and their classes. */
export const defects: KindSet = {
  conditions: { 'defect-is': defectIs },
  aspects: { ends: withEnds, openDefects: defectHolds, held: heldBy },
  facts: { defects: readDefects },
  entries: ['defect-opened', 'defect-closed'],
};
