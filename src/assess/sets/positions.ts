import { readPositions } from '../../history/read-positions.js';
import { positionIs } from '../conditions/standing.js';
import type { KindSet } from '../kinds.js';

/** Where moving parts were left. */
export const positions: KindSet = {
  conditions: { 'position-is': positionIs },
  facts: { positions: readPositions },
  entries: ['stands'],
};
