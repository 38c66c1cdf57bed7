import type { Around } from './assess-task.js';
import { attachmentOn } from './conditions/standing.js';
import { rest } from './rest.js';

/** A task that belongs to an attachment rests while that is off. */
export const ofAttachment: Around = (world, task, within) =>
  attachmentOn(world, task.attachment ?? '').truth === 'true' ? within() : rest(task, 'attachment-off');
