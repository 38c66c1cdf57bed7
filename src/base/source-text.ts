/**
 * Lines and columns of a source file, worked out only when a person has to read them.
 */

/** A file's text with the offsets at which its lines start. */
export interface SourceText {
  /** As the host calls it: a path or a title. */
  readonly name: string;
  readonly text: string;
  /** Offset (UTF-16 code units) of each line's first character; the first is 0. */
  readonly lineStarts: readonly number[];
}

/** Both from 1; the column counts UTF-16 code units. */
export interface Position {
  readonly line: number;
  readonly column: number;
}

/** Prepares a text for {@link positionOf} and {@link lineOf}. Lines end with LF, CR LF or CR. */
export function sourceText(name: string, text: string): SourceText {
  const lineStarts = [0];
  for (const end of text.matchAll(/\r\n|\r|\n/g)) lineStarts.push(end.index + end[0].length);
  return { name, text, lineStarts };
}

/** The line and column of an offset; offsets outside the text count as its nearest end. */
export function positionOf(source: SourceText, offset: number): Position {
  const inside = Math.max(0, Math.min(offset, source.text.length));
  let low = 0;
  let high = source.lineStarts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((source.lineStarts[middle] ?? 0) <= inside) low = middle;
    else high = middle - 1;
  }
  return { line: low + 1, column: inside - (source.lineStarts[low] ?? 0) + 1 };
}

/** The text of a line (numbered from 1) without its line end; empty for a line that is not there. */
export function lineOf(source: SourceText, line: number): string {
  const start = source.lineStarts[line - 1];
  if (start === undefined) return '';
  let end = source.lineStarts[line] ?? source.text.length;
  while (end > start && isLineEnd(source.text.charCodeAt(end - 1))) end -= 1;
  return source.text.slice(start, end);
}

function isLineEnd(code: number): boolean {
  return code === 10 || code === 13;
}
