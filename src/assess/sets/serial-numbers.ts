import type { KindSet } from '../kinds.js';
import { ofSerials } from '../of-serials.js';

/** Tasks for some serial numbers. */
export const serialNumbers: KindSet = { aspects: { serial: ofSerials } };
