import { nearName } from '../../base/near-name.js';
import type { KindSet } from '../kinds.js';

/** The name that was probably meant by one that the schedule does not have. */
export const suggestions: KindSet = { facts: { meant: nearName } };
