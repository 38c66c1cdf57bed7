/**
 * Text to tokens: split by patterns, then each word given its own kind, then what was written in an odd form put right.
 */
import type { Span } from '../base/span.js';
import { diagnose } from '../diagnostics/catalogue-entry.js';
import { syntaxCodes } from '../diagnostics/codes/syntax.js';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { Machinery } from './machinery.js';
import type { Unreadable } from './split-tokens.js';
import { retype, type Token, type TokenKind } from './token.js';
import type { Vocabulary } from './tokens.js';
import type { OddForm } from './odd-form.js';
import type { CommentNode } from './tree.js';

/** The tokens that mean something, the comments, and what was wrong with the characters. */
export interface Lexed {
  readonly tokens: Token[];
  readonly comments: readonly CommentNode[];
  readonly diagnostics: readonly Diagnostic[];
}

/** How many odd forms of one text are told, the first ones: far more than `parse` tells, which takes some of them out. */
const MOST_TOLD = 1000;

/** Splits a text into tokens. Never throws: characters that begin no token are reported and left out. */
export function lex(
  text: string,
  file: number,
  { splitter, vocabulary, oddForm }: Pick<Machinery, 'splitter' | 'vocabulary' | 'oddForm'>,
): Lexed {
  const found = splitter.split(text);
  const tokens: Token[] = [];
  const comments: CommentNode[] = [];
  for (const token of found.tokens) {
    if (token.tokenType === vocabulary.Comment) comments.push(comment(token, file));
    else tokens.push(token);
  }
  const diagnostics = firstTold([...oddCharactersIn(found.unreadable, text, file), ...putRight(tokens, file, vocabulary, oddForm)]);
  return { tokens, comments, diagnostics };
}

function firstTold(diagnostics: readonly Diagnostic[]): readonly Diagnostic[] {
  return [...diagnostics].sort((a, b) => a.at.start - b.at.start).slice(0, MOST_TOLD);
}

function oddCharactersIn(unreadable: readonly Unreadable[], text: string, file: number): readonly Diagnostic[] {
  const found: Diagnostic[] = [];
  for (const each of unreadable) {
    const odd = found.length < MOST_TOLD ? oddCharacters(each, text, file) : null;
    if (odd !== null) found.push(odd);
  }
  return found;
}

/** Gives each word its own kind and each odd form the plain one that it stands for. */
function putRight(tokens: readonly Token[], file: number, vocabulary: Vocabulary, oddForm: OddForm): readonly Diagnostic[] {
  const words: Readonly<Record<string, TokenKind>> = vocabulary.word;
  const found: Diagnostic[] = [];
  let before: Token | undefined;
  for (const token of tokens) {
    if (token.tokenType === vocabulary.Name) {
      if (Object.hasOwn(words, token.image)) retype(token, words[token.image] ?? vocabulary.Name);
    } else {
      const odd = oddForm(token, before, file, vocabulary);
      if (found.length < MOST_TOLD) found.push(...odd);
    }
    before = token;
  }
  return found;
}

function comment(token: Token, file: number): CommentNode {
  return { kind: 'comment', at: { file, start: token.startOffset, end: token.startOffset + token.image.length }, text: token.image };
}

/** Signs for what the language says in words. */
const COMPARISONS: ReadonlyMap<string, string> = new Map([
  ['>', 'above'],
  ['<', 'below'],
  ['>=', 'at least'],
  ['≥', 'at least'],
  ['<=', 'at most'],
  ['≤', 'at most'],
]);

/** Hidden characters are reported elsewhere, wherever they stand; here only what can be seen. */
function oddCharacters({ offset, length }: Unreadable, text: string, file: number): Diagnostic | null {
  const at: Span = { file, start: offset, end: offset + length };
  // eslint-disable-next-line no-control-regex -- those are exactly what must not be shown
  const seen = text.slice(at.start, at.end).replace(/[\p{C}\p{Z}]/gu, '');
  const blank = text.slice(at.start, at.end).replace(/\p{C}/gu, '').trim();
  if (seen === '' && blank === '') return /\p{Zs}/u.test(text.slice(at.start, at.end)) ? oddSpace(at) : null;
  const shown = seen.length > 12 ? `${[...seen].slice(0, 12).join('')}…` : seen;
  const meant = COMPARISONS.get(seen);
  if (meant !== undefined) {
    return diagnose(syntaxCodes.oddCharacter, {
      message: `\`${seen}\` is written \`${meant}\`.`,
      at,
      fixes: [{ grade: 'sure', title: `Write \`${meant}\``, edits: [{ at, text: meant }] }],
    });
  }
  return diagnose(syntaxCodes.oddCharacter, {
    message: `\`${shown}\` has no meaning in a schedule.`,
    at,
    help: /^[;{}]+$/.test(seen)
      ? 'Delete it: each clause begins with its own word, and nothing stands between two of them.'
      : 'Delete it, or put it inside a text or a comment.',
    fixes: [{ grade: /^[;{}]+$/.test(seen) ? 'likely' : 'possible', title: `Delete \`${shown}\``, edits: [{ at, text: '' }] }],
  });
}

function oddSpace(at: Span): Diagnostic {
  return diagnose(syntaxCodes.oddCharacter, {
    message: 'This space is not an ordinary one.',
    at,
    fixes: [{ grade: 'sure', title: 'Write an ordinary space', edits: [{ at, text: ' ' }] }],
  });
}
