import type { LooseDraft } from './loose-draft.js';

/** What some words add to a draft, or one sentence on what is not understood. */
export type Part = Partial<LooseDraft> | string;
