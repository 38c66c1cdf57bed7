import { meterAxis } from '../axes/meter-axis.js';
import { marks } from '../triggers/marks.js';
import type { KindSet } from '../kinds.js';

/** Every multiple of so much on a meter. */
export const meterMarks: KindSet = { triggers: { marks }, axes: { meter: meterAxis } };
