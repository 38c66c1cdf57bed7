/**
 * The door to this folder: text in, tree and diagnostics out.
 */
import { Lexer } from 'chevrotain';
import { diagnose } from '../diagnostics/catalogue-entry.js';
import { syntaxCatalogue } from '../diagnostics/catalogue/syntax.js';
import { collect } from '../diagnostics/collect.js';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { Grammar } from './grammar.js';
import { lex } from './lex.js';
import { defaultLimits, type ParseLimits } from './limits.js';
import { tooDeep } from './nesting.js';
import { hiddenCharacters } from './odd-characters.js';
import { endOf } from './token-edit.js';
import { makeVocabulary, type Vocabulary } from './tokens.js';
import type { FileNode } from './tree.js';

/** What became of a text. `file` is null only when there is no usable header, or when a limit was exceeded. */
export interface ParseResult {
  readonly file: FileNode | null;
  /** In reading order. */
  readonly diagnostics: readonly Diagnostic[];
}

/** What `parse` may be told beyond the text. */
export interface ParseOptions {
  readonly limits?: Partial<ParseLimits>;
}

interface Machinery {
  readonly vocabulary: Vocabulary;
  readonly lexer: Lexer;
  readonly grammar: Grammar;
}

// Building takes some milliseconds, so it is done once, and not on import. It holds nothing from one text to the next.
let built: Machinery | undefined;

function machinery(): Machinery {
  if (built !== undefined) return built;
  const vocabulary = makeVocabulary();
  const lexer = new Lexer([...vocabulary.patterns], { positionTracking: 'onlyOffset', skipValidations: true, ensureOptimizations: false });
  built = { vocabulary, lexer, grammar: new Grammar(vocabulary) };
  return built;
}

/**
 * Parses the text of one file. A mistake of the author's is a diagnostic, never an exception, and what could be read is in
 * the tree all the same.
 *
 * @param file index of the file in the compilation's list of sources; all spans carry it.
 * @example parse('schedule pump "Irrigation pump" language 1').file?.header.name.text // "pump"
 */
export function parse(text: string, file = 0, options: ParseOptions = {}): ParseResult {
  const limits = { ...defaultLimits, ...options.limits };
  if (text.length > limits.size) return refuse(tooLarge(text.length, file, limits.size));
  const { vocabulary, lexer, grammar } = machinery();
  const hidden = hiddenCharacters(text, file, limits.mistakes);
  const lexed = lex(text, file, lexer, vocabulary);
  const deep = tooDeep(lexed.tokens, vocabulary, limits.nesting);
  if (deep !== undefined) {
    const at = { file, start: deep.startOffset, end: endOf(deep) };
    return refuse(nestedTooDeep(at, limits.nesting), hidden);
  }
  const read = grammar.read(lexed.tokens, text, file, limits.mistakes);
  const diagnostics = collect(hidden, outsideTitles(lexed.diagnostics, read.diagnostics).slice(0, limits.mistakes), read.diagnostics);
  return { file: read.file === null ? null : { ...read.file, comments: lexed.comments }, diagnostics };
}

/** Words of a title without quotes are no names, so nothing is wrong with their form. */
function outsideTitles(lexical: readonly Diagnostic[], found: readonly Diagnostic[]): readonly Diagnostic[] {
  const titles = found.filter((each) => each.code === syntaxCatalogue.titleMissing.code);
  return titles.length === 0
    ? lexical
    : lexical.filter(({ at }) => !titles.some((title) => title.at.start <= at.start && at.end <= title.at.end));
}

function refuse(why: Diagnostic, others: readonly Diagnostic[] = []): ParseResult {
  return { file: null, diagnostics: collect([why], others) };
}

function tooLarge(length: number, file: number, limit: number): Diagnostic {
  return diagnose(syntaxCatalogue.tooLarge, {
    message: `The file has ${length} characters; the limit is ${limit}.`,
    at: { file, start: 0, end: 0 },
    help: 'Split it with `use`, or raise the limit where the host allows it.',
  });
}

function nestedTooDeep(at: Diagnostic['at'], limit: number): Diagnostic {
  return diagnose(syntaxCatalogue.tooDeep, {
    message: `Parentheses and \`not\` are nested more than ${limit} deep here.`,
    at,
    help: 'Take out the parentheses that change nothing.',
  });
}
