import { readStorage } from '../../history/read-storage.js';
import { withEnds } from '../ended-spells.js';
import type { KindSet } from '../kinds.js';
import { stoodStill } from '../stored-time.js';

/** Storage that a limit of the calendar does not count. */
export const storedTime: KindSet = {
  aspects: { standstill: stoodStill, ends: withEnds },
  facts: { storage: readStorage },
  entries: ['storage'],
};
