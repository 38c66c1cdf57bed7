/**
 * From our places, problems and sorts to those of the Language Server Protocol. Both count UTF-16 code units; the protocol's lines and
 * characters begin at 0.
 */
import { CompletionItemKind, DiagnosticSeverity, SymbolKind } from 'vscode-languageserver';
import type { Diagnostic as LspDiagnostic, Position, Range } from 'vscode-languageserver';
import { positionOf } from '../../base/source-text.js';
import type { Completion } from '../../editor/complete.js';
import type { TokenSort } from '../../editor/semantic-tokens.js';
import type { EditorSymbol } from '../../editor/symbols.js';
import type { Diagnostic, SourceText, Span } from '../../index.js';

/** An offset as a line and a character. */
export function toPosition(source: SourceText, offset: number): Position {
  const { line, column } = positionOf(source, offset);
  return { line: line - 1, character: column - 1 };
}

/** A line and a character as an offset; past the end of a line counts as its end. */
export function toOffset(source: SourceText, { line, character }: Position): number {
  const start = source.lineStarts[line] ?? source.text.length;
  const end = source.lineStarts[line + 1] ?? source.text.length;
  return Math.min(start + character, end);
}

/** A place as a range. */
export function toRange(source: SourceText, at: Pick<Span, 'start' | 'end'>): Range {
  return { start: toPosition(source, at.start), end: toPosition(source, at.end) };
}

const severities = { error: DiagnosticSeverity.Error, warning: DiagnosticSeverity.Warning, note: DiagnosticSeverity.Information } as const;

/** A problem; `uriOf` gives the address of a file of the schedule. */
export function toDiagnostic(
  sources: readonly SourceText[],
  uriOf: (file: number) => string,
  problem: Diagnostic,
): LspDiagnostic | undefined {
  const source = sources[problem.at.file];
  if (source === undefined) return undefined;
  const related = problem.labels.flatMap(({ at, text }) => {
    const other = sources[at.file];
    return other === undefined ? [] : [{ location: { uri: uriOf(at.file), range: toRange(other, at) }, message: text }];
  });
  return {
    range: toRange(source, problem.at),
    severity: severities[problem.severity],
    code: problem.code,
    source: 'duewright',
    message: problem.help === undefined ? problem.message : `${problem.message}\n${problem.help}`,
    ...(related.length === 0 ? {} : { relatedInformation: related }),
    ...(problem.code === 'DW226' ? { tags: [1] } : {}),
  };
}

const completionKinds: Readonly<Partial<Record<Completion['sort'], CompletionItemKind>>> = {
  word: CompletionItemKind.Keyword,
  declaration: CompletionItemKind.Keyword,
  unit: CompletionItemKind.Unit,
  state: CompletionItemKind.EnumMember,
  task: CompletionItemKind.Function,
  event: CompletionItemKind.Event,
  position: CompletionItemKind.Enum,
};

/** The picture beside a proposal. */
export function completionKind(sort: Completion['sort']): CompletionItemKind {
  return completionKinds[sort] ?? CompletionItemKind.Variable;
}

const symbolKinds: Readonly<Partial<Record<EditorSymbol['kind'], SymbolKind>>> = {
  header: SymbolKind.Module,
  task: SymbolKind.Function,
  change: SymbolKind.Function,
  remove: SymbolKind.Function,
  step: SymbolKind.Method,
  event: SymbolKind.Event,
  position: SymbolKind.Enum,
  rest: SymbolKind.Object,
  never: SymbolKind.Boolean,
  stop: SymbolKind.Boolean,
  example: SymbolKind.String,
};

/** The picture beside an entry of the outline. */
export function symbolKind(kind: EditorSymbol['kind']): SymbolKind {
  return symbolKinds[kind] ?? SymbolKind.Variable;
}

/** Kinds of token that every editor has a colour for. */
export const tokenTypes = [
  'keyword',
  'string',
  'number',
  'type',
  'comment',
  'function',
  'variable',
  'property',
  'enum',
  'event',
  'enumMember',
] as const;
export const tokenModifiers = ['declaration'] as const;

const tokenOf: Readonly<Record<TokenSort, (typeof tokenTypes)[number]>> = {
  keyword: 'keyword',
  text: 'string',
  number: 'number',
  date: 'number',
  unit: 'type',
  comment: 'comment',
  word: 'enumMember',
  task: 'function',
  step: 'function',
  stop: 'function',
  event: 'event',
  defect: 'event',
  hazard: 'event',
  position: 'enum',
  place: 'property',
  attachment: 'property',
  supply: 'property',
  meter: 'variable',
  gauge: 'variable',
  dipstick: 'variable',
  duty: 'variable',
};

/** The place of a sort's kind among {@link tokenTypes}. */
export function tokenType(sort: TokenSort): number {
  return tokenTypes.indexOf(tokenOf[sort]);
}
