import { asked } from '../triggers/asked.js';
import type { KindSet } from '../kinds.js';

/** Tasks that a reading or a defect asks for; a schedule with such a reading or defect takes the set for those too. */
export const followUps: KindSet = { triggers: { asked } };
