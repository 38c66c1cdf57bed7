import { oneForEachId } from '../../history/same-id.js';
import type { KindSet } from '../kinds.js';

/** Logbooks that were put together, in which the same entry may stand twice, or two under the same id. */
export const mergedLogbooks: KindSet = { facts: { sameId: oneForEachId }, entries: ['sameId'] };
