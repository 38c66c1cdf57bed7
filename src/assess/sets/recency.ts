import { readEvents } from '../../history/read-events.js';
import { readInstruments } from '../../history/read-instruments.js';
import { recent } from '../conditions/recent.js';
import type { KindSet } from '../kinds.js';

/** Whether something was read, done or happened lately. */
export const recency: KindSet = {
  conditions: { recent },
  facts: { events: readEvents, instruments: readInstruments },
  entries: ['readings', 'event'],
};
