import type { Span } from '../base/span.js';
import type { FileNode } from '../syntax/tree.js';

/** A stretch that can be folded away behind its first line. */
export interface Fold {
  readonly at: Span;
  readonly kind: 'declaration' | 'comment';
}

/** Every declaration and every run of comment lines; which of them span lines, the editor knows. */
export function foldsOf({ header, declarations, comments }: FileNode, text: string): readonly Fold[] {
  const folds: Fold[] = [header, ...declarations].map(({ at }) => ({ at, kind: 'declaration' }));
  let run: Span | undefined;
  for (const { at } of comments.filter((each) => standsAlone(each.at, text))) {
    const joins = run !== undefined && /^(?:\r\n|\r|\n)[ \t]*$/.test(text.slice(run.end, at.start));
    if (!joins && run !== undefined) folds.push({ at: run, kind: 'comment' });
    run = joins && run !== undefined ? { ...run, end: at.end } : at;
  }
  if (run !== undefined) folds.push({ at: run, kind: 'comment' });
  return folds.filter(({ at }) => /[\r\n]/.test(text.slice(at.start, at.end)));
}

/** Whether nothing but space stands before a comment on its line. */
function standsAlone(at: Span, text: string): boolean {
  let start = at.start;
  while (start > 0 && /[ \t]/.test(text.charAt(start - 1))) start -= 1;
  return start === 0 || /[\r\n]/.test(text.charAt(start - 1));
}
