import { readInstruments } from '../../history/read-instruments.js';
import { readTopUps } from '../../history/read-top-ups.js';
import { meterAxis } from '../axes/meter-axis.js';
import { sooner } from '../triggers/sooner.js';
import type { KindSet } from '../kinds.js';

/** Sooner, by how fast a level falls. */
export const consumption: KindSet = {
  triggers: { sooner },
  axes: { meter: meterAxis },
  facts: { instruments: readInstruments, topUps: readTopUps },
  entries: ['readings', 'topped-up'],
};
