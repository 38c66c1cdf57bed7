/**
 * Puts diagnostics in the order in which a person reads the files, each once.
 */
import { compareTexts } from '../base/compare-texts.js';
import type { Diagnostic, Severity } from './diagnostic.js';

const rank: Readonly<Record<Severity, number>> = { error: 0, warning: 1, note: 2 };

/** By file, place, severity, code and message: the same set of diagnostics always comes out in the same order. */
export function compareDiagnostics(a: Diagnostic, b: Diagnostic): number {
  return (
    a.at.file - b.at.file ||
    a.at.start - b.at.start ||
    rank[a.severity] - rank[b.severity] ||
    a.at.end - b.at.end ||
    compareTexts(a.code, b.code) ||
    compareTexts(a.message, b.message)
  );
}

/** Sorts, and leaves out what says the same thing about the same place twice. */
export function collect(...lists: readonly (readonly Diagnostic[])[]): readonly Diagnostic[] {
  const sorted = lists.flat().sort(compareDiagnostics);
  return sorted.filter((each, index) => {
    const before = sorted[index - 1];
    return before === undefined || before.code !== each.code || before.message !== each.message || !sameSpan(before, each);
  });
}

function sameSpan(a: Diagnostic, b: Diagnostic): boolean {
  return a.at.file === b.at.file && a.at.start === b.at.start && a.at.end === b.at.end;
}

/** True if anything keeps the text from being used. */
export function hasErrors(diagnostics: readonly Diagnostic[]): boolean {
  return diagnostics.some((each) => each.severity === 'error');
}
