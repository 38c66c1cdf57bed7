import { correctionFacts } from '../../history/corrections.js';
import type { KindSet } from '../kinds.js';

/** Entries that are voided; readings that are confirmed although they disagree with others. */
export const corrections: KindSet = { facts: { corrections: correctionFacts }, entries: ['void', 'confirm'] };
