import { readEvents } from '../../history/read-events.js';
import { readRefuellings } from '../../history/read-refuellings.js';
import { event, refuelling } from '../triggers/happening.js';
import type { KindSet } from '../kinds.js';

/** After a declared event, after refuelling. */
export const happenings: KindSet = {
  triggers: { event, refuelling },
  facts: { events: readEvents, refuellings: readRefuellings },
  entries: ['event', 'refuelled'],
};
