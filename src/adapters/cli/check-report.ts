import { positionOf } from '../../base/source-text.js';
import type { Span } from '../../base/span.js';
import type { Compiled, Diagnostic } from '../../index.js';

/** A place in a file, for programs: lines and columns from 1, columns in UTF-16 code units, the end just past the last one. */
export interface ReportedPlace {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

/** One diagnostic, its places worked out. */
export interface ReportedDiagnostic {
  readonly code: string;
  readonly severity: Diagnostic['severity'];
  readonly message: string;
  readonly at: ReportedPlace;
  readonly labels: readonly { readonly at: ReportedPlace; readonly text: string }[];
  readonly help?: string;
  readonly fixes: readonly {
    readonly grade: Diagnostic['fixes'][number]['grade'];
    readonly title: string;
    readonly edits: readonly { readonly at: ReportedPlace; readonly text: string }[];
  }[];
}

/** What `duewright check --json` answers for each schedule. */
export interface CheckReport {
  readonly format: 'duewright-check-report';
  readonly version: 1;
  /** The path as it was given. */
  readonly schedule: string;
  /** Of the compiled graph; `null` if there are errors. */
  readonly fingerprint: string | null;
  readonly tasks: number;
  readonly errors: number;
  readonly warnings: number;
  readonly diagnostics: readonly ReportedDiagnostic[];
}

/** Lays the diagnostics of a compilation out for programs. */
export function checkReport(schedule: string, { graph, diagnostics, sources }: Compiled): CheckReport {
  const place = (at: Span): ReportedPlace => placeIn(sources, at);
  const count = (severity: Diagnostic['severity']): number => diagnostics.filter((each) => each.severity === severity).length;
  return {
    format: 'duewright-check-report',
    version: 1,
    schedule,
    fingerprint: graph?.fingerprint ?? null,
    tasks: graph?.tasks.length ?? 0,
    errors: count('error'),
    warnings: count('warning'),
    diagnostics: diagnostics.map((each) => reported(each, place)),
  };
}

function reported(
  { code, severity, message, at, labels, help, fixes }: Diagnostic,
  place: (at: Span) => ReportedPlace,
): ReportedDiagnostic {
  return {
    code,
    severity,
    message,
    at: place(at),
    labels: labels.map((label) => ({ at: place(label.at), text: label.text })),
    ...(help === undefined ? {} : { help }),
    fixes: fixes.map((fix) => ({ ...fix, edits: fix.edits.map((edit) => ({ at: place(edit.at), text: edit.text })) })),
  };
}

function placeIn(sources: Compiled['sources'], at: Span): ReportedPlace {
  const source = sources[at.file];
  if (source === undefined) return { file: '', line: 1, column: 1, endLine: 1, endColumn: 1 };
  const start = positionOf(source, at.start);
  const end = positionOf(source, at.end);
  return { file: source.name, line: start.line, column: start.column, endLine: end.line, endColumn: end.column };
}
