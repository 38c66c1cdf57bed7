/**
 * The kinds of token: a few with patterns, and one for each word of the language.
 *
 * The lexer knows only the patterns; a word's own kind is looked up by its text afterwards ({@link wordKind}), which keeps
 * the lexer small and makes `engine-oil` one name rather than a keyword with a tail.
 */
import { createToken, Lexer, type TokenType } from 'chevrotain';
import { MONTH_NAMES } from '../values/calendar.js';
import { unitSpellings } from '../values/units.js';
import {
  clauseWords,
  declarationWords,
  joiningWords,
  reservedWords,
  softWords,
  stepWords,
  type ReservedWord,
  type SoftWord,
} from './words.js';

/** Kinds that the parser may ask for, made together because they refer to one another. */
export interface Vocabulary {
  readonly Unit: TokenType;
  readonly Position: TokenType;
  readonly Name: TokenType;
  readonly Text: TokenType;
  readonly Number: TokenType;
  readonly Date: TokenType;
  readonly Time: TokenType;
  readonly Month: TokenType;
  readonly UnitSign: TokenType;
  readonly Percent: TokenType;
  readonly DaysWork: TokenType;
  readonly LParen: TokenType;
  readonly RParen: TokenType;
  readonly Comma: TokenType;
  /** Written wrongly, and put right by `tidy`: each becomes one of the kinds above. */
  readonly odd: {
    readonly word: TokenType;
    readonly text: TokenType;
    readonly number: TokenType;
    readonly date: TokenType;
    readonly time: TokenType;
  };
  readonly word: Readonly<Record<ReservedWord | SoftWord, TokenType>>;
  /** What a declaration can begin with (`at` aside), and a clause of a task or of a step. */
  readonly opensDeclaration: ReadonlySet<TokenType>;
  readonly opensTaskClause: ReadonlySet<TokenType>;
  readonly opensStepClause: ReadonlySet<TokenType>;
  /** In the order in which the lexer tries them. */
  readonly patterns: readonly TokenType[];
  readonly all: readonly TokenType[];
}

const LETTER = 'A-Za-z_\\u00aa-\\u024f\\u0370-\\u03ff\\u0400-\\u04ff';
const WORD_END = `(?![${LETTER}0-9-]|'s)`;

/** Makes the kinds of token. Nothing happens on import: the parser calls this once, when it is first needed. */
export function makeVocabulary(): Vocabulary {
  const Unit = createToken({ name: 'Unit', label: 'a unit', pattern: Lexer.NA });
  const Position = createToken({ name: 'Position', label: 'the name of a position or state', pattern: Lexer.NA });
  const Name = createToken({ name: 'Name', label: 'a name', pattern: wordPattern(), categories: [Unit, Position] });
  const lexical = lexicalKinds(Unit);
  const odd = oddKinds();
  const word = wordKinds(Name, Position);
  const { WhiteSpace, Comment, ...kinds } = lexical;
  const patterns = [
    WhiteSpace, Comment, kinds.Text, odd.text, odd.date, kinds.Date, odd.time, kinds.Time, odd.number, kinds.Number, kinds.DaysWork,
    kinds.UnitSign, kinds.Month, Name, odd.word, kinds.LParen, kinds.RParen, kinds.Comma, kinds.Percent,
  ]; // prettier-ignore
  const opens = {
    opensDeclaration: new Set(declarationWords.map((each) => word[each])),
    opensTaskClause: new Set(clauseWords.map((each) => word[each])),
    opensStepClause: new Set(stepWords.map((each) => word[each])),
  };
  return { Unit, Position, Name, ...kinds, ...opens, odd, word, patterns, all: [Unit, Position, ...patterns, ...Object.values(word)] };
}

function wordPattern(): RegExp {
  return new RegExp(`[a-z][a-z0-9]*(?:-[a-z0-9]+)*(?:\\.[a-z][a-z0-9]*(?:-[a-z0-9]+)*)*${WORD_END}`);
}

function lexicalKinds(Unit: TokenType) {
  return {
    WhiteSpace: createToken({ name: 'WhiteSpace', label: 'space', pattern: /[ \t\r\n]+/, group: Lexer.SKIPPED }),
    Comment: createToken({ name: 'Comment', label: 'a comment', pattern: /#[^\r\n]*/, group: 'comments' }),
    Text: createToken({ name: 'Text', label: 'a text in quotes', pattern: /"[^"\\\r\n]*(?:\\[^\r\n][^"\\\r\n]*)*"/ }),
    Date: createToken({ name: 'Date', label: 'a date such as 2026-03-02', pattern: /\d{4}-\d{2}-\d{2}(?![\d-])/ }),
    Time: createToken({ name: 'Time', label: 'a time such as 07:30', pattern: /\d{2}:\d{2}(?![\d:])/ }),
    Number: createToken({ name: 'Number', label: 'a number', pattern: /-?\d+(?:\.\d+)?/ }),
    DaysWork: createToken({ name: 'DaysWork', label: "`day's`", pattern: /day['’]s(?![a-z0-9-])/ }),
    UnitSign: createToken({ name: 'UnitSign', label: 'a unit', pattern: unitSignPattern(), categories: [Unit] }),
    Month: createToken({ name: 'Month', label: 'a month', pattern: new RegExp(`(?:${MONTH_NAMES.join('|')})(?![${LETTER}0-9-])`) }),
    LParen: createToken({ name: 'LParen', label: '`(`', pattern: '(' }),
    RParen: createToken({ name: 'RParen', label: '`)`', pattern: ')' }),
    Comma: createToken({ name: 'Comma', label: 'a comma', pattern: ',' }),
    Percent: createToken({ name: 'Percent', label: '`%`', pattern: '%', categories: [Unit] }),
  };
}

function oddKinds(): Vocabulary['odd'] {
  return {
    word: createToken({ name: 'OddWord', label: 'a word', pattern: new RegExp(`[${LETTER}°][${LETTER}0-9.°²³'’-]*`) }),
    text: createToken({
      name: 'OddText',
      label: 'a text',
      pattern: /"[^"\\\r\n]*(?:\\[^\r\n][^"\\\r\n]*)*\\?|[“”„«'‘’][^"“”„«»'‘’\r\n]*["“”»'‘’]?/,
    }),
    number: createToken({ name: 'OddNumber', label: 'a number', pattern: /-?\d+(?:,\d+)+(?:\.\d+)?/ }),
    date: createToken({ name: 'OddDate', label: 'a date', pattern: /\d{4}-(?:\d-\d{1,2}|\d\d-\d)(?![\d-])|\d{1,2}[./]\d{1,2}[./]\d{4}/ }),
    time: createToken({ name: 'OddTime', label: 'a time', pattern: /\d:\d{2}(?![\d:])/ }),
  };
}

/** Units that are no names: those with a capital or a sign. Longer ones first, so that `m³` is not cut to `m`. */
function unitSignPattern(): RegExp {
  const signs = unitSpellings().filter((each) => each !== '%' && !/^[a-z][a-z0-9-]*( |$)/.test(each));
  const ordered = [...signs].sort((a, b) => b.length - a.length || (a < b ? -1 : 1));
  return new RegExp(`(?:${ordered.join('|')})(?![${LETTER}0-9·²³-])`);
}

function wordKinds(Name: TokenType, Position: TokenType): Vocabulary['word'] {
  const kinds: Record<string, TokenType> = {};
  for (const word of reservedWords) kinds[word] = wordKind(word, word === 'on' ? [Position] : []);
  for (const word of softWords) kinds[word] = wordKind(word, [Name]);
  return kinds as Vocabulary['word'];
}

/** As `createToken` makes it, which would look through all categories for each; the parser numbers them all together when it is built. */
function wordKind(word: string, categories: TokenType[]): TokenType {
  return { name: `word-${word}`, LABEL: `\`${word}\``, PATTERN: Lexer.NA, CATEGORIES: categories };
}

/** What the word opens, if it opens anything. */
export function opensDeclaration(word: string): boolean {
  return (declarationWords as readonly string[]).includes(word);
}

/** True for the first words of clauses. */
export function opensClause(word: string): boolean {
  return (clauseWords as readonly string[]).includes(word);
}

/** True for the words that join. */
export function isJoining(word: string): boolean {
  return (joiningWords as readonly string[]).includes(word);
}

/** Every word that has a meaning somewhere. */
export function allWords(): readonly string[] {
  return [...declarationWords, ...clauseWords, ...joiningWords, ...softWords];
}
