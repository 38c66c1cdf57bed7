import { outingFacts } from '../../history/read-outings.js';
import { workAxis } from '../axes/work-axis.js';
import type { KindSet } from '../kinds.js';

/** Spans of time at work. */
export const workTime: KindSet = { axes: { work: workAxis }, facts: { outings: outingFacts }, entries: ['outing'] };
