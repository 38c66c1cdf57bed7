/**
 * Comma-separated values as RFC 4180 has them, and as spreadsheets write them (semicolons, a byte order mark, bare line feeds).
 */

export interface CsvFormat {
  /** `,` if not given. */
  readonly separator?: string;
  /** Begin with a byte order mark, by which spreadsheets know UTF-8. */
  readonly mark?: boolean;
}

/** What a text held; on a `problem` (with its row, counted from 1) the rows before it. */
export interface CsvText {
  readonly rows: readonly (readonly string[])[];
  readonly separator: string;
  readonly problem: { readonly row: number; readonly what: string } | null;
}

// A spreadsheet takes a cell that begins so for a formula and runs it (OWASP, "CSV Injection").
const FORMULA = /^[=+\-@\t\r]/;
const NUMBER = /^-?\d+(\.\d+)?$/;

/**
 * Writes rows with CRLF; a cell with a separator, quote, line break or outer space is quoted.
 *
 * A text that a spreadsheet would run as a formula is shown with an apostrophe before it; {@link readCsv} takes it off again.
 * Numbers stay numbers, negative ones too.
 */
export function writeCsv(rows: readonly (readonly string[])[], format: CsvFormat = {}): string {
  const separator = format.separator ?? ',';
  const lines = rows.map((row) => `${row.map((cell) => quoted(guarded(cell), separator)).join(separator)}\r\n`);
  return (format.mark === true ? '\uFEFF' : '') + lines.join('');
}

function guarded(cell: string): string {
  return (FORMULA.test(cell) && !NUMBER.test(cell)) || cell.startsWith("'") ? `'${cell}` : cell;
}

function quoted(cell: string, separator: string): string {
  return /["\r\n]|^\s|\s$/.test(cell) || cell.includes(separator) ? `"${cell.replaceAll('"', '""')}"` : cell;
}

/** Reads rows; tells a semicolon or tab from a comma by the first line. Total: any text gives rows and perhaps a problem. */
export function readCsv(text: string): CsvText {
  const body = text.replace(/^\uFEFF/, '');
  const separator = separatorOf(body);
  const rows: string[][] = [];
  let at = 0;
  while (at < body.length) {
    const row: string[] = [];
    for (;;) {
      const cell = readCell(body, at, separator);
      if ('what' in cell) return { rows, separator, problem: { row: rows.length + 1, what: cell.what } };
      row.push(unguarded(cell.text));
      at = cell.end;
      if (body[at] !== separator) break;
      at += 1;
    }
    if (body[at] === '\r') at += 1;
    if (body[at] === '\n') at += 1;
    rows.push(row);
  }
  return { rows, separator, problem: null };
}

function unguarded(cell: string): string {
  return /^'[=+\-@\t\r']/.test(cell) ? cell.slice(1) : cell;
}

type Cell = { readonly text: string; readonly end: number } | { readonly what: string };

function readCell(body: string, at: number, separator: string): Cell {
  return body[at] === '"' ? readQuoted(body, at, separator) : readBare(body, at, separator);
}

function readBare(body: string, at: number, separator: string): Cell {
  let end = at;
  while (end < body.length && body[end] !== separator && body[end] !== '\n' && body[end] !== '\r') end += 1;
  return { text: body.slice(at, end), end };
}

function readQuoted(body: string, at: number, separator: string): Cell {
  const parts: string[] = [];
  for (let from = at + 1; ;) {
    const quote = body.indexOf('"', from);
    if (quote < 0) return { what: 'a quoted cell is not closed' };
    parts.push(body.slice(from, quote));
    const next = body[quote + 1];
    if (next === '"') {
      parts.push('"');
      from = quote + 2;
      continue;
    }
    if (next !== undefined && next !== separator && next !== '\r' && next !== '\n')
      return { what: 'something follows the closing quote of a cell' };
    return { text: parts.join(''), end: quote + 1 };
  }
}

function separatorOf(body: string): string {
  const first = body.slice(0, Math.max(0, body.search(/[\r\n]/)) || body.length).replace(/"(?:[^"]|"")*"/g, '');
  const counts = [',', ';', '\t'].map((sign): readonly [string, number] => [sign, first.split(sign).length]);
  return counts.reduce((best, each) => (each[1] > best[1] ? each : best))[0];
}
