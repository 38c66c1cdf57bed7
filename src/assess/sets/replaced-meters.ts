import { pillarsOf } from '../../history/pillars.js';
import { dialFacts } from '../../history/replaced-dials.js';
import type { KindSet } from '../kinds.js';

/** Meters that were replaced. */
export const replacedMeters: KindSet = { facts: { dials: dialFacts, pillars: pillarsOf }, entries: ['meter-replaced'] };
