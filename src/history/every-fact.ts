import { nearName } from '../base/near-name.js';
import type { Facts } from './facts.js';
import { correctionFacts } from './corrections.js';
import { pillarsOf } from './pillars.js';
import { readAttachments } from './read-attachment.js';
import { readDefects } from './read-defect.js';
import { readEvents } from './read-events.js';
import { readInstruments } from './read-instruments.js';
import { outingFacts } from './read-outings.js';
import { readPositions } from './read-positions.js';
import { readRefuellings } from './read-refuellings.js';
import { readStatements } from './read-statements.js';
import { readStorage } from './read-storage.js';
import { readTopUps } from './read-top-ups.js';
import { oneForEachId } from './same-id.js';
import { dialFacts } from './replaced-dials.js';

/** A reader for every sort of fact. */
export const everyFact: Facts = {
  sameId: oneForEachId,
  outings: outingFacts,
  corrections: correctionFacts,
  dials: dialFacts,
  pillars: pillarsOf,
  attachments: readAttachments,
  defects: readDefects,
  events: readEvents,
  instruments: readInstruments,
  positions: readPositions,
  refuellings: readRefuellings,
  statements: readStatements,
  storage: readStorage,
  topUps: readTopUps,
  meant: nearName,
};
