/**
 * Making diagnostics by the name of their entry in the catalogue.
 */
import type { Span } from '../base/span.js';
import { diagnose, type Finding } from '../diagnostics/catalogue-entry.js';
import { checkCodes } from '../diagnostics/codes/check.js';
import type { Diagnostic, Fix, FixGrade } from '../diagnostics/diagnostic.js';

/** A problem of meaning, as the catalogue calls it. */
export type CheckCode = keyof typeof checkCodes;

/** A diagnostic of the check catalogue. */
export function diagnostic(code: CheckCode, finding: Finding): Diagnostic {
  return diagnose(checkCodes[code], finding);
}

/** A fix that puts one text in the place of another. */
export function rewrite(grade: FixGrade, at: Span, text: string, title = `Write \`${text}\`.`): Fix {
  return { grade, title, edits: [{ at, text }] };
}
