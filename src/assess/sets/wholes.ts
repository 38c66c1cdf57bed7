import { doingsByParts, withWholes } from '../whole-by-parts.js';
import type { KindSet } from '../kinds.js';

/** Tasks that count as done once their parts are. */
export const wholes: KindSet = { aspects: { metBy: { doings: doingsByParts, record: withWholes } } };
