/**
 * One source file's path and text, and the way from an offset to a line and a column.
 */

/** Both from 1. Columns count UTF-16 code units, as editors do. */
export interface LineColumn {
  readonly line: number;
  readonly column: number;
}

export interface SourceText {
  /** As the host knows it, with `/` between folders. */
  readonly path: string;
  readonly text: string;
  /** Offsets at which lines begin; the first is 0. Lines end at LF, CR LF or CR. */
  readonly lineStarts: readonly number[];
}

/** Prepares a text for questions about places in it. */
export function sourceText(path: string, text: string): SourceText {
  const lineStarts = [0];
  for (const match of text.matchAll(/\r\n|\n|\r/g)) lineStarts.push(match.index + match[0].length);
  return { path, text, lineStarts };
}

/** Line and column of an offset; an offset past the end is at the end of the last line. */
export function lineColumn(source: SourceText, offset: number): LineColumn {
  const line = lineAt(source.lineStarts, offset);
  return { line: line + 1, column: offset - (source.lineStarts[line] ?? 0) + 1 };
}

/** The text of a line (from 1), without its line end. */
export function lineText(source: SourceText, line: number): string {
  return source.text.slice(source.lineStarts[line - 1] ?? source.text.length, source.lineStarts[line] ?? source.text.length).replace(/[\r\n]+$/, '');
}

function lineAt(starts: readonly number[], offset: number): number {
  let low = 0;
  let high = starts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((starts[middle] ?? 0) <= offset) low = middle;
    else high = middle - 1;
  }
  return low;
}
