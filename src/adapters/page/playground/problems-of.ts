/**
 * Everything that is wrong on the desk, file by file: diagnostics of the schedule, and lines of the logbook that are not used.
 */
import { type Diagnostic, positionOf, type SourceText, type Span, sourceText } from '../../../index.js';
import type { LogbookProblem } from '../../logbook/logbook.js';
import { describeLogbookProblem } from '../../cli/describe-logbook-problem.js';
import type { Problem } from './told.js';

/** Diagnostics of a compilation; `onDesk` says by which path a file lies on the desk. */
export function scheduleProblems(
  diagnostics: readonly Diagnostic[],
  opened: readonly SourceText[],
  onDesk: (path: string) => string,
): readonly Problem[] {
  const sources = opened.map((source) => ({ ...source, name: onDesk(source.name) }));
  return diagnostics.map(({ at, severity, code, message, help, fixes, labels }) => ({
    ...placeOf(at, sources),
    severity,
    code,
    message,
    help: [...labels.map(({ at: there, text }) => `${whereInWords(there, sources)}: ${text}.`), ...(help === undefined ? [] : [help])].join(
      ' ',
    ),
    fixes: fixes.map(({ title, edits }) => ({
      title,
      edits: edits.map((edit) => ({ path: pathOf(edit.at, sources), start: edit.at.start, end: edit.at.end, text: edit.text })),
    })),
  }));
}

function placeOf(at: Span, sources: readonly SourceText[]): Pick<Problem, 'path' | 'start' | 'end' | 'line' | 'column'> {
  const source = sources[at.file];
  const { line, column } = source === undefined ? { line: 1, column: 1 } : positionOf(source, at.start);
  return { path: pathOf(at, sources), start: at.start, end: at.end, line, column };
}

function pathOf(at: Span, sources: readonly SourceText[]): string {
  return sources[at.file]?.name ?? '';
}

function whereInWords(at: Span, sources: readonly SourceText[]): string {
  const { path, line } = placeOf(at, sources);
  return `${path}:${line}`;
}

/** Lines of the logbook that are not used, or used with a reservation. */
export function logbookProblems(path: string, text: string, problems: readonly LogbookProblem[]): readonly Problem[] {
  const source = sourceText(path, text);
  return problems.map((problem) => {
    const start = source.lineStarts[problem.line - 1] ?? 0;
    const end = (source.lineStarts[problem.line] ?? text.length + 1) - 1;
    const message = describeLogbookProblem(path, problem).replace(`${path}:${problem.line}: `, '');
    const severity = problem.kind === 'unreadable' ? ('error' as const) : ('warning' as const);
    return {
      path,
      start,
      end: Math.max(start, end),
      line: problem.line,
      column: 1,
      severity,
      code: 'logbook',
      message,
      help: '',
      fixes: [],
    };
  });
}
