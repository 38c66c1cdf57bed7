import { age, season } from '../conditions/calendar.js';
import type { KindSet } from '../kinds.js';

/** The time of year; the machine's age. */
export const seasons: KindSet = { conditions: { age, season } };
