import { readAttachments } from '../../history/read-attachment.js';
import { outingFacts } from '../../history/read-outings.js';
import { attachmentIs } from '../conditions/standing.js';
import { attaching } from '../triggers/happening.js';
import { ofAttachment } from '../of-attachment.js';
import { withEnds } from '../ended-spells.js';
import type { KindSet } from '../kinds.js';

/** Tasks that belong to an attachment; after attaching; whether one is on. */
export const attachments: KindSet = {
  triggers: { attaching },
  conditions: { 'attachment-is': attachmentIs },
  aspects: { ends: withEnds, attachment: ofAttachment },
  facts: { attachments: readAttachments, outings: outingFacts },
  entries: ['attached', 'detached', 'outing'],
};
