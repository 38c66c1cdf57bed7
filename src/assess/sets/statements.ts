import { readStatements } from '../../history/read-statements.js';
import { statedDoings } from '../stated-doings.js';
import type { KindSet } from '../kinds.js';

/** What owners state without a record. */
export const statements: KindSet = { aspects: { stated: statedDoings }, facts: { statements: readStatements }, entries: ['stated'] };
