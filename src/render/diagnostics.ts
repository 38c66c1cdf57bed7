/**
 * Diagnostics as an author reads them: the place, the sentence, the line with the words underlined, other places that matter, what to do.
 */
import { lineOf, positionOf, type SourceText } from '../base/source-text.js';
import type { Span } from '../base/span.js';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { safeText } from './safe-text.js';
import { plainStyle, type Style } from './style.js';

/** As many as a person will read. */
const MOST_SHOWN = 300;

/**
 * All of them (of more than 300 the first, and how many others), in the order given, with a blank line between two; the empty text if there are none.
 *
 * Nothing in the result can command a terminal: names and source lines come from outside.
 *
 * @example
 * tarn-55.due:12:18: error DW220: There is no meter called `engin`.
 *   12 |   every 100 h of engin
 *      |                  ^^^^^
 *   help: Did you mean `engine`?
 *   fix: Write `engine`.
 */
export function renderDiagnostics(diagnostics: readonly Diagnostic[], sources: readonly SourceText[], style: Style = plainStyle()): string {
  const blocks = diagnostics.slice(0, MOST_SHOWN).map((each) => renderDiagnostic(each, sources, style));
  const others = diagnostics.length - blocks.length;
  return [...blocks, ...(others === 0 ? [] : [`And ${others} more, which are not shown.\n`])].join('\n');
}

/** One diagnostic, with a line end after its last line. */
function renderDiagnostic(diagnostic: Diagnostic, sources: readonly SourceText[], style: Style = plainStyle()): string {
  const { severity, code, message, labels, help, fixes, at } = diagnostic;
  const { strong } = style.paint;
  const lines = [
    `${placeOf(at, sources)}: ${strong(`${severity} ${code}`)}: ${safeText(message)}`,
    ...excerpt(at, sources, '^', '', style),
    ...labels.flatMap((label) => [...elsewhere(label.at, at, sources), ...excerpt(label.at, sources, '-', safeText(label.text), style)]),
    ...(help === undefined ? [] : [`  ${strong('help')}: ${safeText(help)}`]),
    ...fixes.map(({ grade, title }) => `  ${strong('fix')} (${grade}): ${safeText(title)}`),
  ];
  return lines.map((line) => `${line.trimEnd()}\n`).join('');
}

function placeOf(at: Span, sources: readonly SourceText[]): string {
  const source = sources[at.file];
  if (source === undefined) return '?';
  const { line, column } = positionOf(source, at.start);
  return `${safeText(source.name)}:${line}:${column}`;
}

/** The path, where a label is in another file than the diagnostic itself. */
function elsewhere(label: Span, main: Span, sources: readonly SourceText[]): readonly string[] {
  return label.file === main.file ? [] : [`  ${placeOf(label, sources)}`];
}

/** The source line and, below it, marks under the words that are meant. Only the first line of a long stretch is shown. */
function excerpt(at: Span, sources: readonly SourceText[], mark: string, text: string, style: Style): readonly string[] {
  const source = sources[at.file];
  if (source === undefined || source.text === '') return [];
  const { line, column } = positionOf(source, at.start);
  const whole = lineOf(source, line);
  const { shown, start, length } = clipped(whole, column - 1, Math.max(1, at.end - at.start), style.width - 10);
  const gutter = String(line).padStart(4);
  const marks = `${' '.repeat(start)}${mark.repeat(length)}${text === '' ? '' : ` ${text}`}`;
  return [`${style.paint.quiet(`  ${gutter} |`)} ${shown}`, `${style.paint.quiet(`  ${' '.repeat(gutter.length)} |`)} ${marks}`];
}

/** The part of a line around the words that are meant, made safe, with the place of the words in it. */
function clipped(
  line: string,
  start: number,
  length: number,
  width: number,
): { readonly shown: string; readonly start: number; readonly length: number } {
  const from = line.length > width && start > width / 2 ? start - Math.floor(width / 4) : 0;
  const to = Math.min(line.length, from + Math.max(width, 20));
  const before = cells(line.slice(from, start));
  const words = cells(line.slice(start, Math.min(start + length, to)));
  const after = cells(line.slice(Math.min(start + length, to), to));
  const lead = from > 0 ? '… ' : '';
  return {
    shown: `${lead}${[...before, ...words, ...after].join('')}${to < line.length ? ' …' : ''}`,
    start: lead.length + before.length,
    length: Math.max(1, words.length),
  };
}

/** One safe sign for each sign of the text, so that what stands below lines up. */
function cells(text: string): readonly string[] {
  return Array.from(text, (sign) => (/\s/.test(sign) ? ' ' : safeText(sign) || '\ufffd'));
}
