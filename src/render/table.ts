/**
 * Rows of text in columns that wrap, for people: no lines drawn, columns told apart by space.
 */
import type { Paint } from './style.js';
import { pad, wrap } from './wrap.js';

const GAP = 2;
/** Below this width columns would be too narrow to read: each cell after the first stands on a line of its own. */
const NARROW = 64;

/** Lines of a table. `weights`: the columns' shares of the width; a column that is empty in all rows is left out. The first is strong, the last quiet. */
export function table(rows: readonly (readonly string[])[], weights: readonly number[], width: number, paint: Paint): readonly string[] {
  if (width < NARROW) return rows.flatMap((row) => stacked(row, width, paint));
  const used = weights.map((weight, column) => (rows.some((row) => (row[column] ?? '') !== '') ? weight : 0));
  const widths = shareOut(used, width);
  return rows.flatMap((row) => sideBySide(row, widths, paint));
}

function stacked(row: readonly string[], width: number, paint: Paint): readonly string[] {
  const [title = '', ...rest] = row;
  const details = rest.filter((cell) => cell !== '').join('; ');
  return [...wrap(title, width).map(paint.strong), ...(details === '' ? [] : wrap(details, width - 4).map((line) => `    ${line}`))];
}

function shareOut(weights: readonly number[], width: number): readonly number[] {
  const columns = weights.filter((weight) => weight > 0).length;
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const room = width - GAP * Math.max(0, columns - 1);
  return weights.map((weight) => Math.floor((room * weight) / Math.max(1, total)));
}

function sideBySide(row: readonly string[], widths: readonly number[], paint: Paint): readonly string[] {
  const cells = widths.flatMap((width, column) => (width === 0 ? [] : [{ width, lines: wrap(row[column] ?? '', width), column }]));
  const height = Math.max(...cells.map(({ lines }) => lines.length));
  const last = widths.length - 1;
  return Array.from({ length: height }, (_, index) =>
    cells
      .map(({ width, lines, column }) => pad(dress(lines[index] ?? '', column, last, paint), width))
      .join(' '.repeat(GAP))
      .trimEnd(),
  );
}

function dress(cell: string, column: number, last: number, paint: Paint): string {
  if (cell === '') return '';
  if (column === 0) return paint.strong(cell);
  return column === last ? paint.quiet(cell) : cell;
}
