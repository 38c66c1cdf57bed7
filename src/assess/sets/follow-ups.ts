import { readDefects } from '../../history/read-defect.js';
import { readInstruments } from '../../history/read-instruments.js';
import { asked } from '../triggers/asked.js';
import { withEnds } from '../ended-spells.js';
import type { KindSet } from '../kinds.js';

/** Tasks that a reading or a defect asks for. */
export const followUps: KindSet = {
  triggers: { asked },
  aspects: { ends: withEnds },
  facts: { defects: readDefects, instruments: readInstruments },
  entries: ['readings', 'defect-opened', 'defect-closed'],
};
