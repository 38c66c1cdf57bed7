import { meterAxis } from '../axes/meter-axis.js';
import { interval } from '../triggers/interval.js';
import { whichever } from '../triggers/whichever.js';
import type { KindSet } from '../kinds.js';

/** Every so much of a meter; whichever comes first of several rules; the several rules of one task. */
export const intervals: KindSet = { triggers: { interval, whichever, any: whichever }, axes: { meter: meterAxis } };
