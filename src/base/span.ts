/**
 * A stretch of one source file, in UTF-16 code units: `start` inclusive, `end` exclusive.
 *
 * Lines and columns are never stored: {@link SourceText} works them out when a person has to read them.
 */
export interface Span {
  /** Index of the file in the compilation's list of sources; 0 is the file that was asked for. */
  readonly file: number;
  readonly start: number;
  readonly end: number;
}

/** The smallest span that holds both; the two must lie in one file. */
export function cover(first: Span, last: Span): Span {
  return { file: first.file, start: Math.min(first.start, last.start), end: Math.max(first.end, last.end) };
}
