/**
 * Logbooks that lose nothing that was acknowledged: kept in a file (Node.js), in memory, or in a store of your own.
 *
 * The public entry `duewright/logbook`.
 */
export { fileLogbook, systemChance } from './logbook/file-logbook.js';
export { LogbookError } from './logbook/logbook-error.js';
export { memoryLogbook } from './logbook/memory-logbook.js';
export { mergeLogbooks } from './logbook/merge-logbooks.js';
export { planAppend } from './logbook/plan-append.js';
export { type LogbookLimits, readLogbook, readLogbookBytes } from './logbook/read-logbook.js';
export { verifyLogbook } from './logbook/verify-logbook.js';

export type { FileLogbookOptions } from './logbook/file-logbook.js';
export type { LogbookTrouble } from './logbook/logbook-error.js';
export type { LogbookStore } from './logbook/logbook-store.js';
export type { ChainHead, Logbook, LogbookLine, LogbookProblem } from './logbook/logbook.js';
export type { MemoryLogbook } from './logbook/memory-logbook.js';
export type { Merge } from './logbook/merge-logbooks.js';
export type { AppendOptions, AppendPlan, Draft, Receipt } from './logbook/plan-append.js';
export type { Verification } from './logbook/verify-logbook.js';
