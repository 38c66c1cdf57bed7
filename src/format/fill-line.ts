/**
 * One line of the layout, broken where it would be too long.
 */
import type { LogicalLine, Piece } from './lines.js';

/** Columns that a line may take, where it can be broken at all. */
const lineWidth = 120;

const indent = 2;

/** How wide the first column of each table is. */
export type TableWidths = ReadonlyMap<number, number>;

/** The width that each table's first column needs. */
export function tableWidths(lines: readonly LogicalLine[]): TableWidths {
  const widths = new Map<number, number>();
  for (const { pieces } of lines) {
    const cell = pieces.findIndex(({ before }) => before?.kind === 'cell');
    const table = pieces[cell]?.before;
    if (table?.kind === 'cell') widths.set(table.table, Math.max(widths.get(table.table) ?? 0, spaced(pieces.slice(0, cell)).length));
  }
  return widths;
}

/** The printed lines of one logical line, comments in them included; those above its first piece are left to the page. */
export function fillLine(line: LogicalLine, tables: TableWidths): readonly string[] {
  const margin = ' '.repeat(line.depth * indent);
  // What is told of a day stands below the first thing told of it; anything else is set in further than what may follow it.
  const hanging = `${margin}${' '.repeat(line.opens === 'moment' ? '2026-03-02 '.length : 2 * indent)}`;
  const printed: string[] = [];
  let now = margin;
  let empty = true;
  const newLine = (): void => {
    printed.push(now.trimEnd());
    now = hanging;
    empty = true;
  };
  line.pieces.forEach((piece, index) => {
    if (index > 0 && piece.above.length > 0) {
      if (!empty) newLine();
      printed.push(...piece.above.map(({ text }) => `${hanging}${text}`));
    }
    const joint = empty ? '' : jointBefore(piece, line.pieces[index - 1], now.length - margin.length, tables);
    if (!empty && mayBreak(piece, line.pieces[index - 1]) && now.length + joint.length + lengthFrom(line.pieces, index) > lineWidth)
      newLine();
    now += empty ? piece.text : `${joint}${piece.text}`;
    empty = false;
    if (piece.behind === undefined) return;
    now += `  ${piece.behind}`;
    newLine();
  });
  if (!empty) printed.push(now);
  return printed;
}

function mayBreak({ before }: Piece, last: Piece | undefined): boolean {
  return before !== undefined && last?.text !== '(';
}

/** What must fit on the line for a break before this piece to be unneeded: a part whole, anything else up to the next break. */
function lengthFrom(pieces: readonly Piece[], index: number): number {
  const part = isPart(pieces[index]) ? lengthUntil(pieces, index, isPart) : Infinity;
  // A part that is too long for any line is broken inside instead.
  return part <= lineWidth - 20 ? part : lengthUntil(pieces, index, mayBreak);
}

function lengthUntil(pieces: readonly Piece[], index: number, ends: (piece: Piece, last: Piece | undefined) => boolean): number {
  let length = 0;
  for (let at = index; at < pieces.length; at += 1) {
    const [piece, last] = [pieces[at], pieces[at - 1]];
    if (piece === undefined || (at > index && ends(piece, last))) break;
    length += piece.text.length + (at === index || glued(last, piece) ? 0 : 1);
  }
  return length;
}

function isPart(piece: Piece | undefined): boolean {
  return piece?.before?.kind === 'part' || piece?.before?.kind === 'cell';
}

function jointBefore(piece: Piece, last: Piece | undefined, column: number, tables: TableWidths): string {
  switch (piece.before?.kind) {
    case 'part':
      return '  ';
    case 'cell':
      return ' '.repeat(Math.max(0, (tables.get(piece.before.table) ?? 0) - column) + 2);
    default:
      return glued(last, piece) ? '' : ' ';
  }
}

function glued(last: Piece | undefined, piece: Piece): boolean {
  return last?.text === '(' || piece.text === ')' || piece.text === ',';
}

function spaced(pieces: readonly Piece[]): string {
  return pieces.map((piece, index) => `${index === 0 || glued(pieces[index - 1], piece) ? '' : ' '}${piece.text}`).join('');
}
