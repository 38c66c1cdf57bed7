import { hardStops as hold } from '../hard-stops.js';
import { heldBy } from '../held-by.js';
import type { KindSet } from '../kinds.js';

/** Limits that hold the machine once they are so late. */
export const hardStops: KindSet = { aspects: { hold, held: heldBy } };
