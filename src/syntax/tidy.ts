/**
 * Puts right what was written in an odd form, and says so: the parser then sees what was meant, and the rest of the clause
 * is checked as if it had been written that way.
 */
import type { Span } from '../base/span.js';
import { diagnose, type Code } from '../diagnostics/catalogue-entry.js';
import { syntaxCodes } from '../diagnostics/codes/syntax.js';
import type { Diagnostic, FixGrade } from '../diagnostics/diagnostic.js';
import { nearName } from '../base/near-name.js';
import { MONTH_NAMES, WEEKDAY_NAMES, weekdayNumber } from '../values/calendar.js';
import { unitSpellings } from '../values/units.js';
import { curlyText, isInPlaceOfUnit, strayBackslashes, type OddForm } from './odd-form.js';
import { endOf, retype, type Token, type TokenKind } from './token.js';
import type { Vocabulary } from './tokens.js';

/** Changes the token in place where it is odd, to what was meant. */
export const tidy: OddForm = (token, before, file, vocabulary) => {
  const { odd } = vocabulary;
  const at: Span = { file, start: token.startOffset, end: endOf(token) };
  switch (token.tokenType) {
    case vocabulary.Text:
      return strayBackslashes(token).map((found) => escape(token, file, found));
    case vocabulary.DaysWork:
      return token.image === "day's"
        ? []
        : [rewritten(token, vocabulary.DaysWork, "day's", at, syntaxCodes.oddCharacter, 'The apostrophe here is a curly one.')];
    case odd.text:
      return [oddText(token, at, vocabulary)];
    case odd.number:
      return [oddNumber(token, at, vocabulary)];
    case odd.date:
      return [oddDate(token, at, vocabulary)];
    case odd.time:
      return [
        rewritten(
          token,
          vocabulary.Time,
          `0${token.image}`,
          at,
          syntaxCodes.numberForm,
          `A time has four digits; \`${token.image}\` has three.`,
        ),
      ];
    case odd.word:
      return oddWord(token, before, at, vocabulary);
    default:
      return [];
  }
};

function rewritten(
  token: Token,
  kind: TokenKind,
  text: string,
  at: Span,
  entry: Code,
  message: string,
  grade: FixGrade = 'sure',
): Diagnostic {
  token.endOffset = at.end - 1;
  token.image = text;
  retype(token, kind);
  return diagnose(entry, { message, at, fixes: [{ grade, title: `Write \`${text}\``, edits: [{ at, text }] }] });
}

function escape(token: Token, file: number, { index, 1: next = '' }: RegExpExecArray): Diagnostic {
  const start = token.startOffset + index;
  const at = { file, start, end: start + 1 };
  return diagnose(syntaxCodes.unknownEscape, {
    message: `The backslash before \`${next}\` means nothing in a text.`,
    at,
    fixes: [
      { grade: 'possible', title: 'Delete the backslash', edits: [{ at, text: '' }] },
      { grade: 'possible', title: 'Write a backslash that is meant as one', edits: [{ at, text: '\\\\' }] },
    ],
  });
}

function oddText(token: Token, at: Span, vocabulary: Vocabulary): Diagnostic {
  const curly = curlyText.exec(token.image);
  if (curly !== null) {
    const text = `"${(curly[1] ?? '').replace(/\\/g, '\\\\')}"`;
    return rewritten(token, vocabulary.Text, text, at, syntaxCodes.oddCharacter, 'A text stands between straight double quotes.');
  }
  const open = token.image.trimEnd().replace(/^[“”„«'‘’]/, '"');
  const text = /(?<!\\)(?:\\\\)*\\$/.test(open) ? `${open}\\"` : `${open}"`;
  const end = at.start + token.image.trimEnd().length;
  const where = { ...at, end };
  const finding = rewritten(
    token,
    vocabulary.Text,
    text,
    where,
    syntaxCodes.textNotClosed,
    'This text is not closed before the line ends.',
    'likely',
  );
  token.endOffset = at.end - 1;
  return { ...finding, fixes: [{ grade: 'likely', title: 'Close the text', edits: [{ at: where, text }] }] };
}

const PARTS = [
  ['½', '.5'],
  ['¼', '.25'],
  ['¾', '.75'],
] as const;

function oddNumber(token: Token, at: Span, vocabulary: Vocabulary): Diagnostic {
  const written = token.image;
  const part = PARTS.find(([sign]) => written.endsWith(sign));
  if (part !== undefined) {
    const text = written.replace(part[0], part[1]);
    return rewritten(
      token,
      vocabulary.Number,
      text,
      at,
      syntaxCodes.numberForm,
      `A number is written with a decimal point, not \`${written}\`.`,
    );
  }
  const grouped = /^-?\d{1,3}(?:,\d{3})+(?:\.\d+)?$/.test(written);
  const text = grouped ? written.replaceAll(',', '') : written.replace(',', '.').replaceAll(',', '');
  const message = grouped ? `\`${written}\` has a comma between its thousands.` : `\`${written}\` has a decimal comma.`;
  return rewritten(token, vocabulary.Number, text, at, syntaxCodes.numberForm, message, grouped ? 'likely' : 'sure');
}

function oddDate(token: Token, at: Span, vocabulary: Vocabulary): Diagnostic {
  const written = token.image;
  const parts = written.split(/[-./]/).map((each) => each.padStart(2, '0'));
  const [first = '', second = '', third = ''] = parts;
  if (written.includes('-')) {
    return rewritten(token, vocabulary.Date, parts.join('-'), at, syntaxCodes.numberForm, `\`${written}\` lacks a digit of a date.`);
  }
  const guesses = [`${third}-${second}-${first}`, `${third}-${first}-${second}`].filter((each) => Number(each.slice(5, 7)) <= 12);
  const guess = guesses[0] ?? `${third}-${second}-${first}`;
  const finding = rewritten(
    token,
    vocabulary.Date,
    guess,
    at,
    syntaxCodes.numberForm,
    `\`${written}\` is read differently in different countries.`,
  );
  return {
    ...finding,
    help: 'Write dates as year-month-day.',
    fixes: guesses.map((text) => ({ grade: 'possible', title: `Write \`${text}\``, edits: [{ at, text }] })),
  };
}

const calendarNamesInSmall: ReadonlyMap<string, string> = new Map(
  [...MONTH_NAMES, ...WEEKDAY_NAMES].map((each) => [each.toLowerCase(), each]),
);

function oddWord(token: Token, before: Token | undefined, at: Span, vocabulary: Vocabulary): readonly Diagnostic[] {
  const written = token.image;
  if (isInPlaceOfUnit(before, vocabulary)) return oddUnit(token, at, vocabulary);
  const capital = calendarNamesInSmall.get(written.toLowerCase());
  const words: Readonly<Record<string, TokenKind>> = vocabulary.word;
  const text = capital ?? nameFor(written);
  const known = Object.hasOwn(words, text) ? words[text] : undefined;
  const kind = capital === undefined ? (known ?? vocabulary.Name) : weekdayNumber(capital) === null ? vocabulary.Month : vocabulary.Weekday;
  const message = known === undefined ? `\`${written}\` is not written as a name is.` : `\`${written}\` is written in small letters.`;
  const finding = rewritten(
    token,
    kind,
    text,
    at,
    syntaxCodes.nameForm,
    message,
    known === undefined && capital === undefined ? 'likely' : 'sure',
  );
  return [known === undefined ? { ...finding, help: 'Names are small letters and digits, in words joined by hyphens.' } : finding];
}

/** Where a unit belongs a word with a capital or a sign is one, or after a number a month; whether there is such a unit, the checker says. */
function oddUnit(token: Token, at: Span, vocabulary: Vocabulary): readonly Diagnostic[] {
  const month = nearName(token.image, MONTH_NAMES);
  if (month !== undefined && token.image.length > 2) {
    return [rewritten(token, vocabulary.Month, month, at, syntaxCodes.nameForm, `\`${token.image}\` is no month.`, 'likely')];
  }
  const unit = unitSpellings().find((each) => each.toLowerCase() === token.image.toLowerCase());
  if (unit !== undefined) {
    return [rewritten(token, vocabulary.UnitSign, unit, at, syntaxCodes.nameForm, `The unit is written \`${unit}\`.`, 'likely')];
  }
  retype(token, vocabulary.UnitSign);
  return [];
}

function nameFor(written: string): string {
  if (/^[A-Z]?[a-z]+$/.test(written)) return written.toLowerCase();
  const plain = written
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/([a-z0-9])([A-Z])/g, '$1-$2')
    .toLowerCase()
    .replace(/[^a-z0-9.]+/g, '-')
    .replace(/^[-.0-9]+|[-.]+$/g, '')
    .replace(/\.(?![a-z])/g, '-')
    .replace(/-*\.-*/g, '.')
    .replace(/-{2,}/g, '-');
  return plain === '' ? 'name' : plain;
}
