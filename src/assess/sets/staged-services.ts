import { readEvents } from '../../history/read-events.js';
import { first } from '../triggers/first.js';
import { stages } from '../triggers/stages.js';
import type { KindSet } from '../kinds.js';

/** A first service; services at fixed points after the start or after an event. */
export const stagedServices: KindSet = { triggers: { stages, first }, facts: { events: readEvents }, entries: ['event'] };
