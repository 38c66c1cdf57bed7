import { addExport } from './commands/export.js';
import { addImport } from './commands/import.js';
import { addMerge } from './commands/merge.js';
import { addRecord } from './commands/record.js';
import { addTakeover } from './commands/takeover.js';
import { addVerify } from './commands/verify.js';

/** The commands that write and look after logbooks, in the order in which help lists them. */
export const logbookCommands = [addRecord, addTakeover, addMerge, addVerify, addImport, addExport] as const;
