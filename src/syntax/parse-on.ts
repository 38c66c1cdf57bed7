/**
 * The way through a text: bounds, tokens, grammar.
 */
import { diagnose } from '../diagnostics/catalogue-entry.js';
import { syntaxCodes } from '../diagnostics/codes/syntax.js';
import { collect } from '../diagnostics/collect.js';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { DeclarationMemory, Reading } from './grammar.js';
import type { Missing } from './grammar-part.js';
import { lex, type Lexed } from './lex.js';
import { defaultLimits, type ParseLimits } from './limits.js';
import type { Machinery } from './machinery.js';
import { giveUp } from './mistakes.js';
import { tooDeep, tooLong } from './nesting.js';
import { hiddenCharacters } from './odd-characters.js';
import { endOf } from './token.js';
import type { FileNode } from './tree.js';

/** What became of a text. `file` is null only when there is no usable header, or when a limit was exceeded. */
export interface ParseResult {
  readonly file: FileNode | null;
  /** In reading order. */
  readonly diagnostics: readonly Diagnostic[];
}

/** What became of a text, with what stands in it that the machinery has no parts for. */
export interface ReadText extends ParseResult {
  readonly missing: readonly Missing[];
}

/** What `parse` may be told beyond the text. */
export interface ParseOptions {
  readonly limits?: Partial<ParseLimits>;
}

/** As `parse`, with the tokens that it read, none of a text that was refused unread, and with what the machinery has no parts for. */
export function parseOn(machinery: Machinery, text: string, file = 0, options: ParseOptions = {}): ReadText & Pick<Lexed, 'tokens'> {
  const limits = { ...defaultLimits, ...options.limits };
  const large = refusedForSize(text, file, limits);
  if (large !== undefined) return { ...large, tokens: [] };
  const hidden = hiddenCharacters(text, file, limits.mistakes);
  const unreadable = refusedForHidden(hidden, limits);
  if (unreadable !== undefined) return { ...unreadable, tokens: [] };
  const lexed = lex(text, file, machinery);
  return { ...parseTokens(machinery, { ...lexed, hidden }, text, file, limits), tokens: lexed.tokens };
}

/** The tokens of a text with what its characters alone have wrong. */
export interface LexedText extends Lexed {
  readonly hidden: readonly Diagnostic[];
}

/** From tokens on: shared with the parser of texts that are being edited, which takes most of its tokens from before. */
export function parseTokens(
  { vocabulary, grammar }: Machinery,
  lexed: LexedText,
  text: string,
  file: number,
  limits: ParseLimits,
  memory?: DeclarationMemory,
): ReadText & Pick<Reading, 'altered'> {
  const { hidden } = lexed;
  const unreadable = refusedForHidden(hidden, limits);
  if (unreadable !== undefined) return { ...unreadable, altered: new Set() };
  const deep = tooDeep(lexed.tokens, vocabulary, limits.nesting);
  if (deep !== undefined) {
    const at = { file, start: deep.startOffset, end: endOf(deep) };
    return { ...refuse(nestedTooDeep(at, limits.nesting), hidden), altered: new Set() };
  }
  const long = tooLong(lexed.tokens, vocabulary, limits.words);
  if (long !== undefined) {
    const at = { file, start: long.startOffset, end: endOf(long) };
    return { ...refuse(declarationTooLong(at, limits.words), hidden), altered: new Set() };
  }
  const read = grammar.read(lexed.tokens, text, file, limits.mistakes, memory);
  // Of a text that is being edited they come piece by piece.
  const lexical = [...outsideTitles(lexed.diagnostics, read.diagnostics)].sort((a, b) => a.at.start - b.at.start);
  const diagnostics = collect(hidden, lexical.slice(0, limits.mistakes), read.diagnostics);
  const { file: tree, altered, missing } = read;
  return { file: tree === null ? null : { ...tree, comments: lexed.comments }, diagnostics, missing, altered };
}

/** Words of a title without quotes are no names, so nothing is wrong with their form; nor is it worth telling of a word that does not belong. */
function outsideTitles(lexical: readonly Diagnostic[], found: readonly Diagnostic[]): readonly Diagnostic[] {
  const titles = found.filter((each) => each.code === syntaxCodes.titleMissing.code);
  const told = found.filter((each) => each.code === syntaxCodes.unexpected.code || each.code === syntaxCodes.strayWords.code);
  if (titles.length + told.length === 0) return lexical;
  const isTold = ({ code, at }: Diagnostic): boolean =>
    code === syntaxCodes.nameForm.code && told.some((each) => each.at.start === at.start && each.at.end === at.end);
  return lexical.filter((each) => !isTold(each) && !titles.some((title) => title.at.start <= each.at.start && each.at.end <= title.at.end));
}

function refuse(why: Diagnostic, others: readonly Diagnostic[] = []): ReadText {
  return { file: null, diagnostics: collect([why], others), missing: [] };
}

/** What `parse` says of a text that is too long; undefined for any other. */
export function refusedForSize(text: string, file: number, limits: ParseLimits): ReadText | undefined {
  return text.length > limits.size ? refuse(tooLarge(text.length, file, limits.size)) : undefined;
}

/** A text with as many hidden characters as mistakes are told was not typed: nothing more is read of it. */
function refusedForHidden(hidden: readonly Diagnostic[], limits: ParseLimits): ReadText | undefined {
  const last = hidden.at(-1);
  return last === undefined || hidden.length < limits.mistakes ? undefined : refuse(giveUp(limits.mistakes, last.at), hidden);
}

function tooLarge(length: number, file: number, limit: number): Diagnostic {
  return diagnose(syntaxCodes.tooLarge, {
    message: `The file has ${length} characters; the limit is ${limit}.`,
    at: { file, start: 0, end: 0 },
    help: 'Split it with `use`, or raise the limit where the host allows it.',
  });
}

function declarationTooLong(at: Diagnostic['at'], limit: number): Diagnostic {
  return diagnose(syntaxCodes.tooLarge, {
    message: `One declaration has more than ${limit} words, numbers, texts and signs, up to here.`,
    at,
    help: 'Split it into several.',
  });
}

function nestedTooDeep(at: Diagnostic['at'], limit: number): Diagnostic {
  return diagnose(syntaxCodes.tooDeep, {
    message: `Parentheses and \`not\` are nested more than ${limit} deep here.`,
    at,
    help: 'Take out the parentheses that change nothing.',
  });
}
