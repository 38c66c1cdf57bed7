import { outingFacts } from '../../history/read-outings.js';
import { readStorage } from '../../history/read-storage.js';
import { occasion } from '../triggers/occasion.js';
import { withEnds } from '../ended-spells.js';
import type { KindSet } from '../kinds.js';

/** Before, after and on days of work, outings, shifts; before and after storage. */
export const occasions: KindSet = {
  triggers: { occasion },
  aspects: { ends: withEnds },
  facts: { outings: outingFacts, storage: readStorage },
  entries: ['outing', 'storage'],
};
