import type { KindSet } from '../kinds.js';
import { baseOnTheBeat } from '../on-the-beat.js';

/** Limits that count from when they fell due, not from when they were done. */
export const beats: KindSet = { aspects: { beat: baseOnTheBeat } };
