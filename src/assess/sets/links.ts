import type { KindSet } from '../kinds.js';
import { coveringDoings, restartingDoings } from '../linked-doings.js';

/** Tasks whose doing counts as doing others, or sets their clock. */
export const links: KindSet = { aspects: { covers: coveringDoings, restarts: restartingDoings } };
