import type { Diagnostic, Fix } from '../diagnostics/diagnostic.js';
import type { EditorView } from './view.js';

/** A fix together with what it puts right. */
export interface QuickFix {
  readonly diagnostic: Diagnostic;
  readonly fix: Fix;
  /** The one to take if no other is asked for: the only one of its diagnostic that is sure. */
  readonly preferred: boolean;
}

/** The fixes of the diagnostics that touch a stretch of the file, the surest first. */
export function quickFixes({ checked, file }: EditorView, start: number, end: number): readonly QuickFix[] {
  const rank = { sure: 0, likely: 1, possible: 2 } as const;
  return checked.diagnostics
    .filter(({ at }) => at.file === file && at.start <= end && start <= at.end)
    .flatMap((diagnostic) => diagnostic.fixes.map((fix) => ({ diagnostic, fix, preferred: fix.grade === 'sure' && only(diagnostic, fix) })))
    .sort((a, b) => rank[a.fix.grade] - rank[b.fix.grade]);
}

/** Every sure fix of the file, for putting all of them right at once; none that would change what another has changed. */
export function sureFixes({ checked, file }: EditorView): readonly Fix[] {
  const taken: { readonly start: number; readonly end: number }[] = [];
  return checked.diagnostics.flatMap((diagnostic) => {
    const fix = diagnostic.fixes.find((each) => each.grade === 'sure' && only(diagnostic, each));
    if (fix === undefined) return [];
    const clashes = fix.edits.some(({ at }) => at.file !== file || taken.some((other) => at.start <= other.end && other.start <= at.end));
    if (clashes) return [];
    taken.push(...fix.edits.map(({ at }) => at));
    return [fix];
  });
}

function only(diagnostic: Diagnostic, fix: Fix): boolean {
  return diagnostic.fixes.filter(({ grade }) => grade === fix.grade).length === 1;
}
