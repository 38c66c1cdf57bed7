import { correctionFacts } from '../../history/corrections.js';
import { pillarsOf } from '../../history/pillars.js';
import type { KindSet } from '../kinds.js';

/** Entries that are voided; readings that are confirmed although they disagree with others. */
export const corrections: KindSet = { facts: { corrections: correctionFacts, pillars: pillarsOf }, entries: ['void', 'confirm'] };
