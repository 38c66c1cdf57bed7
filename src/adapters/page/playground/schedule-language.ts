/// <reference lib="dom" />
/**
 * How a schedule and a logbook are coloured while they are edited: words by what they open, by weight before colour.
 */
import { HighlightStyle, StreamLanguage, type StringStream, syntaxHighlighting } from '@codemirror/language';
import type { Extension } from '@codemirror/state';
import { tags } from '@lezer/highlight';
import { clauseWords, declarationWords, joiningWords } from '../../../index.js';

const declares: ReadonlySet<string> = new Set<string>([...declarationWords, 'schedule', 'part', 'variant']);
const opens: ReadonlySet<string> = new Set<string>(clauseWords);
const joins: ReadonlySet<string> = new Set<string>(joiningWords);

interface LineState {
  /** No word has stood on this line yet. */
  first: boolean;
}

function token(stream: StringStream, state: LineState): string | null {
  if (stream.sol()) state.first = true;
  if (stream.eatSpace()) return null;
  if (stream.match(/#.*/)) return 'comment';
  if (stream.match(/"(?:[^"\\]|\\.)*"?/)) return 'string';
  if (stream.match(/\d{4}-\d{2}-\d{2}|\d{2}:\d{2}|-?\d+(?:\.\d+)?/)) return 'number';
  const word = stream.match(/[a-zA-Z][\w.-]*/);
  if (word === null || typeof word === 'boolean') {
    stream.next();
    return null;
  }
  const text = word[0];
  const { first } = state;
  state.first = false;
  if (first && stream.indentation() === 0 && declares.has(text)) return 'keyword';
  if (first && opens.has(text)) return 'modifier';
  return joins.has(text) ? 'operator' : 'name';
}

/** The language of schedules. */
export function scheduleLanguage(): Extension {
  const language = StreamLanguage.define<LineState>({
    name: 'duewright',
    startState: () => ({ first: true }),
    token,
    languageData: { commentTokens: { line: '#' } },
    tokenTable: { modifier: tags.modifier, name: tags.name },
  });
  return [language, syntaxHighlighting(style())];
}

function style(): HighlightStyle {
  return HighlightStyle.define([
    { tag: tags.keyword, fontWeight: '700', color: 'var(--ink)' },
    { tag: tags.modifier, fontWeight: '700', color: 'var(--accent)' },
    { tag: tags.operator, color: 'var(--accent)' },
    { tag: tags.string, color: 'var(--text-in-quotes)' },
    { tag: tags.number, color: 'var(--figures)' },
    { tag: tags.comment, fontStyle: 'italic', color: 'var(--soft)' },
    { tag: tags.name, color: 'var(--ink)' },
  ]);
}
