/**
 * Answers to what an editor asks about one open file, in the protocol's terms.
 */
import { CodeActionKind, FoldingRangeKind, InsertTextFormat, MarkupKind, SemanticTokensBuilder } from 'vscode-languageserver';
import type { CodeAction, CodeLens, CompletionItem, DocumentSymbol, FoldingRange, Hover, Location, Position, Range, SemanticTokens, TextEdit, WorkspaceEdit } from 'vscode-languageserver'; // prettier-ignore
import { complete } from '../../editor/complete.js';
import { foldsOf } from '../../editor/folding.js';
import { hover } from '../../editor/hover.js';
import { lensesOf } from '../../editor/lenses.js';
import { definitionAt } from '../../editor/occurrences.js';
import { quickFixes, sureFixes } from '../../editor/quick-fixes.js';
import { referencesTo } from '../../editor/references-to.js';
import { renamableAt, rename } from '../../editor/rename.js';
import { semanticTokens } from '../../editor/semantic-tokens.js';
import { symbolsOf } from '../../editor/symbols.js';
import type { EditorView } from '../../editor/view.js';
import { format } from '../../format/format.js';
import { parse } from '../../index.js';
import type { Fix, SourceText, Span } from '../../index.js';
import type { Moment } from '../../values/moment.js';
import type { Desk, Schedule } from './desk.js';
import { logbookBeside } from './logbook-beside.js';
import { completionKind, symbolKind, toDiagnostic, toOffset, toPosition, toRange, tokenType } from './to-lsp.js';

/** An open file within its schedule. */
export interface Place {
  readonly desk: Desk;
  readonly schedule: Schedule;
  readonly view: EditorView;
  readonly source: SourceText;
  readonly uriOf: (file: number) => string;
}

/** What can be written next. */
export function completions({ view, source }: Place, position: Position): readonly CompletionItem[] {
  return complete(view, toOffset(source, position)).map(({ label, sort, detail, example, start, end }, index) => ({
    label,
    kind: completionKind(sort),
    detail,
    sortText: String(index).padStart(4, '0'),
    insertTextFormat: InsertTextFormat.PlainText,
    textEdit: { range: toRange(source, { start, end }), newText: label },
    ...(example === undefined ? {} : { documentation: { kind: MarkupKind.Markdown, value: code(example) } }),
  }));
}

function code(text: string): string {
  return `\`\`\`duewright\n${text}\n\`\`\``;
}

/** What the word under the pointer means, and where a task stands by the logbook beside the schedule. */
export function hoverAt({ desk, schedule, view, source }: Place, position: Position, now: Moment): Hover | null {
  const { graph } = desk.settle(schedule.path).compiled;
  const entries = logbookBeside(schedule.path);
  const found = hover(view, toOffset(source, position), graph, entries === undefined ? undefined : { entries, now });
  if (found === undefined) return null;
  const value = [...found.paragraphs.map(asMarkdown), ...(found.example === undefined ? [] : [code(found.example)])].join('\n\n');
  return { contents: { kind: MarkupKind.Markdown, value }, range: toRange(source, found.at) };
}

/** An author's words are shown as they are, whatever they look like. Backticks are ours: they set off a word. */
function asMarkdown(text: string): string {
  return text.replace(/[\\*_{}[\]<>#|~!]/g, '\\$&');
}

/** Where what is named is declared. */
export function definition(place: Place, position: Position): Location | null {
  const at = definitionAt(place.view, toOffset(place.source, position));
  return at === undefined ? null : (locationOf(place, at) ?? null);
}

/** Every place that names it, in all schedules that the file is part of. */
export function references(places: readonly Place[], position: Position, declaration: boolean): readonly Location[] {
  const found = places.flatMap((place) =>
    referencesTo(place.view, toOffset(place.source, position), declaration).flatMap((at) => locationOf(place, at) ?? []),
  );
  return [...new Map(found.map((each) => [JSON.stringify(each), each])).values()];
}

function locationOf({ schedule, uriOf }: Place, at: Span): Location | undefined {
  const source = schedule.checked.sources[at.file];
  return source === undefined ? undefined : { uri: uriOf(at.file), range: toRange(source, at) };
}

/** The name that can be changed here. */
export function renamable({ view, source }: Place, position: Position): Range | null {
  const at = renamableAt(view, toOffset(source, position));
  return at === undefined ? null : toRange(source, at);
}

/** The change of a name in all files of all schedules that the file is part of; or why not, if any of them cannot have it. */
export function renaming(places: readonly Place[], position: Position, name: string): WorkspaceEdit | { readonly refused: string } {
  const found = places.map((place) => ({ place, renaming: rename(place.view, toOffset(place.source, position), name) }));
  const edits: AddressedEdit[] = [];
  for (const { place, renaming: each } of found) {
    if ('refused' in each) return each;
    edits.push(...addressed(place, each.edits));
  }
  return workspaceEdit(edits);
}

interface AddressedEdit {
  readonly uri: string;
  readonly edit: TextEdit;
}

function addressed({ schedule, uriOf }: Place, edits: Fix['edits']): readonly AddressedEdit[] {
  return edits.flatMap(({ at, text }) => {
    const source = schedule.checked.sources[at.file];
    return source === undefined ? [] : [{ uri: uriOf(at.file), edit: { range: toRange(source, at), newText: text } }];
  });
}

/** Each edit once, however many schedules it was found in. */
function workspaceEdit(edits: readonly AddressedEdit[]): WorkspaceEdit {
  const changes: Record<string, TextEdit[]> = {};
  for (const { uri, edit } of new Map(edits.map((each) => [JSON.stringify(each), each])).values()) (changes[uri] ??= []).push(edit);
  return { changes };
}

function editOf(place: Place, edits: Fix['edits']): WorkspaceEdit {
  return workspaceEdit(addressed(place, edits));
}

/** The outline. */
export function symbols({ source }: Place): readonly DocumentSymbol[] {
  const { file } = parse(source.text);
  return file === null
    ? []
    : symbolsOf(file).map(({ name, detail, kind, at, selection }) => ({
        name,
        detail,
        kind: symbolKind(kind),
        range: toRange(source, at),
        selectionRange: toRange(source, selection),
      }));
}

/** What can be folded away. */
export function folds({ source }: Place): readonly FoldingRange[] {
  const { file } = parse(source.text);
  return file === null
    ? []
    : foldsOf(file, source.text).map(({ at, kind }) => ({
        startLine: toPosition(source, at.start).line,
        endLine: toPosition(source, at.end).line,
        ...(kind === 'comment' ? { kind: FoldingRangeKind.Comment } : {}),
      }));
}

/** The sort of every word. */
export function colours({ view, source }: Place): SemanticTokens {
  const builder = new SemanticTokensBuilder();
  for (const { start, end, sort, declares } of semanticTokens(view)) {
    const { line, character } = toPosition(source, start);
    builder.push(line, character, end - start, tokenType(sort), declares ? 1 : 0);
  }
  return builder.build();
}

/** The whole text laid out, where it can be read. */
export function formatting({ source }: Place): readonly TextEdit[] {
  const formatted = format(source.text);
  if (!('text' in formatted) || formatted.text === source.text) return [];
  return [{ range: toRange(source, { start: 0, end: source.text.length }), newText: formatted.text }];
}

/** The fixes of what is wrong in a range, and all that are sure at once. */
export function actions(place: Place, range: Range): readonly CodeAction[] {
  const { view, source, schedule, uriOf } = place;
  const single = quickFixes(view, toOffset(source, range.start), toOffset(source, range.end)).map(({ diagnostic, fix, preferred }) => {
    const told = toDiagnostic(schedule.checked.sources, uriOf, diagnostic);
    return {
      title: fix.grade === 'possible' ? `${fix.title} (one of several)` : fix.title,
      kind: CodeActionKind.QuickFix,
      isPreferred: preferred,
      edit: editOf(place, fix.edits),
      ...(told === undefined ? {} : { diagnostics: [told] }),
    };
  });
  const sure = sureFixes(view);
  if (sure.length === 0) return single;
  const all = {
    title: 'Put right all that is sure',
    kind: CodeActionKind.SourceFixAll,
    edit: editOf(
      place,
      sure.flatMap(({ edits }) => edits),
    ),
  };
  return [...single, all];
}

/** Above each worked example whether it holds. An attachment's are run by its own schedule; a part has none to run by itself. */
export function lenses({ desk, schedule, view, source }: Place): readonly CodeLens[] {
  const { compiled, examples } = desk.settle(desk.pathOf(schedule, view.file));
  if (compiled.model?.header.role === 'part') return [];
  return lensesOf(compiled, examples).map(({ at, words }) => ({ range: toRange(source, at), command: { title: words, command: '' } }));
}
