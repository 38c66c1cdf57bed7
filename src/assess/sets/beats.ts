import type { KindSet } from '../kinds.js';
import { onTheBeat } from '../on-the-beat.js';

/** Limits that count from when they fell due, not from when they were done. */
export const beats: KindSet = { aspects: { beat: onTheBeat } };
