/**
 * The kinds of token: a few with patterns, and one for each word of the language.
 *
 * The splitter knows only the patterns; a word's own kind is looked up by its text afterwards (lex.ts), which keeps the patterns few and
 * makes `engine-oil` one name rather than a keyword with a tail.
 */
import { MONTH_NAMES, WEEKDAY_NAMES } from '../values/calendar.js';
import { unitSpellings } from '../values/units.js';
import type { Pattern } from './split-tokens.js';
import type { TokenKind } from './token.js';
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
  readonly Unit: TokenKind;
  readonly Position: TokenKind;
  readonly Name: TokenKind;
  readonly Text: TokenKind;
  readonly Number: TokenKind;
  readonly Date: TokenKind;
  readonly Time: TokenKind;
  readonly Month: TokenKind;
  readonly Weekday: TokenKind;
  readonly UnitSign: TokenKind;
  readonly Percent: TokenKind;
  readonly DaysWork: TokenKind;
  readonly LParen: TokenKind;
  readonly RParen: TokenKind;
  readonly Comma: TokenKind;
  /** Kept aside, and passed over. */
  readonly Comment: TokenKind;
  /** Written wrongly, and put right by `tidy`: each becomes one of the kinds above. */
  readonly odd: Readonly<Record<'word' | 'text' | 'number' | 'date' | 'time', TokenKind>>;
  readonly word: Readonly<Record<ReservedWord | SoftWord, TokenKind>>;
  /** What a declaration can begin with (`at` aside), and a clause of a task or of a step. */
  readonly opensDeclaration: ReadonlySet<TokenKind>;
  readonly opensTaskClause: ReadonlySet<TokenKind>;
  readonly opensStepClause: ReadonlySet<TokenKind>;
  /** In the order in which they are tried. */
  readonly patterns: readonly Pattern[];
  readonly all: readonly TokenKind[];
}

/** Makes a kind of token, and numbers it. */
type KindMaker = (name: string, label: string, members?: readonly TokenKind[]) => TokenKind;

const LETTER = 'A-Za-z_\\u00aa-\\u024f\\u0370-\\u03ff\\u0400-\\u04ff';
const WORD_END = `(?![${LETTER}0-9-]|'s)`;

/** Makes the kinds of token. Nothing happens on import: the parser calls this once, when it is first needed. */
export function makeVocabulary(): Vocabulary {
  const all: TokenKind[] = [];
  const make: KindMaker = (name, label, members = []) => {
    const kind = { name, label, index: all.length + 1, members: new Set(members) };
    all.push(kind);
    return kind;
  };
  const word = wordKinds(make);
  const soft = softWords.map((each) => word[each]);
  const Name = make('Name', 'a name', soft);
  const Position = make('Position', 'the name of a position or state', [Name, word.on, ...soft]);
  const plain = plainKinds(make);
  const Unit = make('Unit', 'a unit', [Name, plain.UnitSign, plain.Percent, ...soft]);
  const odd = oddKinds(make);
  const kinds = { Name, Position, Unit, ...plain, odd, word };
  const opens = {
    opensDeclaration: new Set(declarationWords.map((each) => word[each])),
    opensTaskClause: new Set(clauseWords.map((each) => word[each])),
    opensStepClause: new Set(stepWords.map((each) => word[each])),
  };
  return { ...kinds, ...opens, patterns: patternsOf(kinds), all };
}

function plainKinds(make: KindMaker) {
  return {
    Comment: make('Comment', 'a comment'),
    Text: make('Text', 'a text in quotes'),
    Date: make('Date', 'a date such as 2026-03-02'),
    Time: make('Time', 'a time such as 07:30'),
    Number: make('Number', 'a number'),
    DaysWork: make('DaysWork', "`day's`"),
    UnitSign: make('UnitSign', 'a unit'),
    Month: make('Month', 'a month'),
    Weekday: make('Weekday', 'a day of the week'),
    LParen: make('LParen', '`(`'),
    RParen: make('RParen', '`)`'),
    Comma: make('Comma', 'a comma'),
    Percent: make('Percent', '`%`'),
  };
}

function oddKinds(make: KindMaker): Vocabulary['odd'] {
  return {
    word: make('OddWord', 'a word'),
    text: make('OddText', 'a text'),
    number: make('OddNumber', 'a number'),
    date: make('OddDate', 'a date'),
    time: make('OddTime', 'a time'),
  };
}

function wordKinds(make: KindMaker): Vocabulary['word'] {
  return Object.fromEntries([...reservedWords, ...softWords].map((word) => [word, make(word, `\`${word}\``)])) as Vocabulary['word'];
}

function patternsOf(
  kinds: Omit<Vocabulary, 'opensDeclaration' | 'opensTaskClause' | 'opensStepClause' | 'patterns' | 'all'>,
): readonly Pattern[] {
  const { odd } = kinds;
  const [digit, small, letter] = [/\d/, /[a-z]/, /[A-Za-z_]/];
  const written = (kind: TokenKind, begins: RegExp, pattern: RegExp | string): Pattern => ({
    kind,
    begins,
    written: new RegExp(typeof pattern === 'string' ? pattern : pattern.source, 'y'),
  });
  return [
    written(kinds.Comment, /#/, /#[^\r\n]*/),
    written(kinds.Text, /"/, /"[^"\\\r\n]*(?:\\[^\r\n][^"\\\r\n]*)*"/),
    written(odd.text, /["']/, /"[^"\\\r\n]*(?:\\[^\r\n][^"\\\r\n]*)*\\?|[“”„«'‘’][^"“”„«»'‘’\r\n]*["“”»'‘’]?/),
    written(odd.date, digit, /\d{4}-(?:\d-\d{1,2}|\d\d-\d)(?![\d-])|\d{1,2}[./]\d{1,2}[./]\d{4}/),
    written(kinds.Date, digit, /\d{4}-\d{2}-\d{2}(?![\d-])/),
    written(odd.time, digit, /\d:\d{2}(?![\d:])/),
    written(kinds.Time, digit, /\d{2}:\d{2}(?![\d:])/),
    written(odd.number, /[\d-]/, /-?\d+(?:(?:,\d+)+(?:\.\d+)?|[½¼¾])/),
    written(kinds.Number, /[\d-]/, /-?\d+(?:\.\d+)?/),
    written(kinds.DaysWork, /d/, /day['’]s(?![a-z0-9-])/),
    written(kinds.UnitSign, /[^\d\s"#(),]/, unitSignPattern()),
    written(kinds.Month, /[A-Z]/, `(?:${MONTH_NAMES.join('|')})(?![${LETTER}0-9-])`),
    written(kinds.Weekday, /[A-Z]/, `(?:${WEEKDAY_NAMES.join('|')})(?![${LETTER}0-9-])`),
    written(kinds.Name, small, `[a-z][a-z0-9]*(?:-[a-z0-9]+)*(?:\\.[a-z][a-z0-9]*(?:-[a-z0-9]+)*)*${WORD_END}`),
    written(odd.word, letter, `[${LETTER}°][${LETTER}0-9.°²³'’-]*`),
    written(kinds.LParen, /\(/, /\(/),
    written(kinds.RParen, /\)/, /\)/),
    written(kinds.Comma, /,/, /,/),
    written(kinds.Percent, /%/, /%/),
  ];
}

/** Units that are no names: those with a capital or a sign. Longer ones first, so that `m³` is not cut to `m`. */
function unitSignPattern(): string {
  const signs = unitSpellings().filter((each) => each !== '%' && !/^[a-z][a-z0-9-]*( |$)/.test(each));
  const ordered = [...signs].sort((a, b) => b.length - a.length || (a < b ? -1 : 1));
  return `(?:${ordered.join('|')})(?![${LETTER}0-9·²³-])`;
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
