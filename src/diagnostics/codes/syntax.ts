/**
 * Codes of the problems of spelling and grammar (DW1xx), apart from their pages, so that a compiler carries no more of them than this.
 */
import type { Code } from '../catalogue-entry.js';

/** Every problem that `parse` can report. */
export const syntaxCodes = {
  tooLarge: { code: 'DW101', severity: 'error' },
  tooDeep: { code: 'DW102', severity: 'error' },
  oddCharacter: { code: 'DW103', severity: 'error' },
  hiddenCharacter: { code: 'DW104', severity: 'error' },
  textNotClosed: { code: 'DW105', severity: 'error' },
  unknownEscape: { code: 'DW106', severity: 'error' },
  numberForm: { code: 'DW107', severity: 'error' },
  nameForm: { code: 'DW108', severity: 'error' },
  headerMissing: { code: 'DW110', severity: 'error' },
  reservedName: { code: 'DW111', severity: 'error' },
  misspelt: { code: 'DW112', severity: 'error' },
  strayWords: { code: 'DW113', severity: 'error' },
  unexpected: { code: 'DW114', severity: 'error' },
  titleMissing: { code: 'DW115', severity: 'error' },
  whicheverMissing: { code: 'DW116', severity: 'error' },
  tooMany: { code: 'DW119', severity: 'error' },
} as const satisfies Readonly<Record<string, Code>>;
