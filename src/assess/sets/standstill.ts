import { outingFacts } from '../../history/read-outings.js';
import { idle } from '../conditions/calendar.js';
import { unworked, atWork } from '../conditions/work.js';
import type { KindSet } from '../kinds.js';

/** Whether work goes on; whether there was any since a task was done; how long there was none. */
export const standstill: KindSet = {
  conditions: { idle, unworked, 'at-work': atWork },
  facts: { outings: outingFacts },
  entries: ['outing'],
};
