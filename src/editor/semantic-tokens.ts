/**
 * What each word of a file is, for colouring by meaning.
 */
import { MONTH_NAMES, WEEKDAY_NAMES } from '../values/calendar.js';
import { findUnit } from '../values/units.js';
import type { NameKind } from '../check/model.js';
import { readTokens, type WrittenToken } from '../syntax/read-tokens.js';
import { reservedWords, softWords } from '../syntax/words.js';
import { occurrencesIn } from './occurrences.js';
import { textOf, type EditorView } from './view.js';

/** A word of the language, something written out, or what a name stands for. */
export type TokenSort = 'keyword' | 'text' | 'number' | 'date' | 'unit' | 'comment' | 'word' | NameKind;

/** A word with what it is, by offsets in UTF-16 code units; `declares` where it gives a name. */
export interface SemanticToken {
  readonly start: number;
  readonly end: number;
  readonly sort: TokenSort;
  readonly declares: boolean;
}

const soft: ReadonlySet<string> = new Set(softWords);
const calendarNames: ReadonlySet<string> = new Set([...MONTH_NAMES, ...WEEKDAY_NAMES]);

/** Every token and comment, in order, none over another. A name with dots is one token for each of its parts. */
export function semanticTokens(view: EditorView): readonly SemanticToken[] {
  const text = textOf(view);
  const names = namesIn(view);
  const found: SemanticToken[] = [];
  let end = 0;
  let before = '';
  for (const token of readTokens(text)) {
    found.push(...commentsBetween(text, end, token.start), ...sorted(token, before, names));
    ({ end, text: before } = token);
  }
  return [...found, ...commentsBetween(text, end, text.length)].filter((each) => each.end > each.start);
}

type Names = ReadonlyMap<number, SemanticToken>;

function namesIn(view: EditorView): Names {
  const { model } = view.checked;
  if (model === null) return new Map();
  return new Map(
    occurrencesIn(model)
      .filter(({ at }) => at.file === view.file)
      .map(({ at, definition, declares }) => [at.start, { start: at.start, end: at.end, sort: definition.kind, declares }]),
  );
}

function sorted(token: WrittenToken, before: string, names: Names): readonly SemanticToken[] {
  const { start, end, text } = token;
  const parts: SemanticToken[] = [];
  let from = start;
  for (const part of text.split('.')) {
    const name = names.get(from);
    if (name !== undefined) parts.push(name);
    from += part.length + 1;
  }
  return parts.length > 0 ? parts : [{ start, end, sort: sortOf(text, before), declares: false }];
}

function sortOf(text: string, before: string): TokenSort {
  if (/^["“„«]/.test(text)) return 'text';
  if (/^\d{4}-\d\d-\d\d$|^\d\d:\d\d$/.test(text)) return 'date';
  if (/^-?\d/.test(text)) return 'number';
  if (text === '%' || (findUnit(text) !== null && /^-?\d|^(?:counts|reads|in|calendar)$/.test(before))) return 'unit';
  if (reservedWords.has(text) || calendarNames.has(text) || /^day['’]s$/.test(text)) return 'keyword';
  return soft.has(text) ? 'keyword' : 'word';
}

function commentsBetween(text: string, start: number, end: number): readonly SemanticToken[] {
  const gap = text.slice(start, end);
  return [...gap.matchAll(/#[^\r\n]*/g)].map((match) => ({
    start: start + match.index,
    end: start + match.index + match[0].length,
    sort: 'comment',
    declares: false,
  }));
}
