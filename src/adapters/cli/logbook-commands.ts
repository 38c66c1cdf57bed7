import { addExport } from './commands/export.js';
import { addFieldPage } from './commands/field-page.js';
import { addFleet } from './commands/fleet.js';
import { addImport } from './commands/import.js';
import { addMerge } from './commands/merge.js';
import { addPlayground } from './commands/playground.js';
import { addRecord } from './commands/record.js';
import { addTakeover } from './commands/takeover.js';
import { addVerify } from './commands/verify.js';
import { addStances, addWalk } from './commands/walk.js';

/** Walk-rounds, pages, and the commands that write and look after logbooks: those that are loaded only when asked for, in the order in which help lists them. */
export const logbookCommands = [
  addWalk,
  addStances,
  addRecord,
  addTakeover,
  addMerge,
  addVerify,
  addImport,
  addExport,
  addFieldPage,
  addFleet,
  addPlayground,
] as const;
