/**
 * Slips that many authors make, told by what they should have written. Each knows the few words around the place at which reading failed.
 *
 * Law: a slip only explains a mistake that is there already; what can be read is never looked at.
 */
import type { IToken } from 'chevrotain';
import { findUnit } from '../values/units.js';
import { MONTH_NAMES } from '../values/calendar.js';
import { endOf } from './token-edit.js';
import { reservedWords } from './words.js';

/** The words around a failure: 0 is where reading failed, -1 the word before. */
export type Around = (n: number) => IToken | undefined;

/** What was meant, and the edit that puts it right. */
export interface Slip {
  readonly message: string;
  readonly help?: string;
  /** Offsets of what is wrong. */
  readonly start: number;
  readonly end: number;
  readonly fix?: { readonly grade: 'sure' | 'likely' | 'possible'; readonly title: string; readonly text: string };
}

/** One kind of slip; undefined where it is another mistake. */
type Kind = (around: Around, opener: string | undefined) => Slip | undefined;

/** The first slip that the words around a failure show. `opener` is the word that began the clause. */
export function slipAt(around: Around, opener: string | undefined): Slip | undefined {
  for (const kind of kinds) {
    const found = kind(around, opener);
    if (found !== undefined) return found;
  }
  return undefined;
}

const image = (token: IToken | undefined): string => token?.image ?? '';
const isNumber = (token: IToken | undefined): boolean => /^\d+(\.\d+)?$/.test(image(token));
const isUnit = (token: IToken | undefined): boolean => findUnit(image(token)) !== null || HOURS.test(image(token));
const isName = (token: IToken | undefined): boolean => /^[a-z][a-z0-9.-]*$/.test(image(token)) && !reservedWords.has(image(token));
const isMonth = (token: IToken | undefined): boolean => (MONTH_NAMES as readonly string[]).includes(image(token));
const HOURS = /^(?:hours?|hrs?|h)$/;

/** From one token to another, as one slip. */
function over(from: IToken, to: IToken, message: string, rest: Pick<Slip, 'help' | 'fix'>): Slip {
  return { message, start: from.startOffset, end: endOf(to), ...rest };
}

function write(text: string, grade: 'sure' | 'likely' | 'possible' = 'likely'): NonNullable<Slip['fix']> {
  return { grade, title: `Write \`${text}\``, text };
}

/** `every 50 h engine`, `every 250 h from engine`. */
const withoutOf: Kind = (around) => {
  const [from, name] = image(around(0)) === 'from' ? [around(0), around(1)] : [undefined, around(0)];
  if (!/^(?:every|or|at|than|\()$/.test(image(around(-3)))) return undefined;
  if (name === undefined || !isName(name) || !isUnit(around(-1)) || !isNumber(around(-2)) || HOURS.test(name.image)) return undefined;
  const span = `${image(around(-2))} ${image(around(-1))} of ${name.image}`;
  return over(from ?? name, name, `What a span counts on follows \`of\`: \`${span}\`.`, { fix: write(`of ${name.image}`) });
};

/** `every 50 engine hours`. */
const unitLast: Kind = (around) => {
  const [number, name, unit] = [around(-2), around(-1), around(0)];
  if (number === undefined || unit === undefined || !isNumber(number) || !isName(name) || !HOURS.test(unit.image)) return undefined;
  const span = `${number.image} h of ${image(name)}`;
  return over(number, unit, `The unit comes before what it is counted on: \`${span}\`.`, { fix: write(span) });
};

/** `every 100 h of engine and 12 months`. */
const joinedByAnd: Kind = (around) => {
  const and = around(0);
  if (and === undefined || and.image !== 'and' || !(isNumber(around(1)) || image(around(1)) === '(')) return undefined;
  return over(and, and, 'Limits are joined by `or`, and `whichever first` or `whichever last` says which of them decides.', {
    help: '`whichever last` waits until all of them are reached.',
    fix: write('or'),
  });
};

const WHICH = new Map([
  ['first', 'first'],
  ['earlier', 'first'],
  ['earliest', 'first'],
  ['sooner', 'first'],
  ['soonest', 'first'],
  ['last', 'last'],
  ['later', 'last'],
  ['latest', 'last'],
]);

/** `whichever comes first`, `whichever is earlier`, `which ever first`. */
const whicheverComes: Kind = (around) => {
  const split = image(around(0)) === 'which' && image(around(1)) === 'ever';
  const [from, at] = split ? [around(0), 2] : [around(0), 0];
  if (from === undefined || (!split && image(around(-1)) !== 'whichever')) return undefined;
  const direct = WHICH.get(image(around(at)));
  const mode = direct ?? WHICH.get(image(around(at + 1)));
  const to = around(direct === undefined ? at + 1 : at);
  if (mode === undefined || to === undefined) return undefined;
  return over(from, to, `It is \`whichever ${mode}\`, and no more.`, { fix: write(split ? `whichever ${mode}` : mode, 'sure') });
};

/** `year on November 1`, `year on 1st November`. */
const monthFirst: Kind = (around) => {
  for (const n of [-2, -1, 0, 1, 2, 3]) {
    const [before, month, day] = [around(n - 1), around(n), around(n + 1)];
    if (month === undefined || day === undefined || image(before) !== 'on' || !isMonth(month) || !isNumber(day)) continue;
    return over(month, day, `The day comes before the month: \`${day.image} ${month.image}\`.`, {
      fix: write(`${day.image} ${month.image}`, 'sure'),
    });
  }
  const [day, ending, month] = [around(-1), around(0), around(1)];
  if (ending === undefined || !isNumber(day) || !/^(?:st|nd|rd|th)$/.test(ending.image) || !isMonth(month)) return undefined;
  return over(ending, ending, `A day is a number: \`${image(day)} ${image(month)}\`.`, {
    fix: { grade: 'sure', title: `Leave \`${ending.image}\` out`, text: '' },
  });
};

/** `every 2 weeks in April`. */
const oftenInMonth: Kind = (around, opener) => {
  const month = around(0);
  if (month === undefined || opener !== 'in' || !isMonth(month) || image(around(-1)) !== 'in') return undefined;
  return over(month, month, `Only years go with a month: \`every year in ${month.image}\` is once within it.`, {
    help: `What comes round more often at that time of the year wants a gate: \`every 2 weeks only if date from 1 ${month.image} to 30 ${month.image}\`.`,
  });
};

/** `before every day's work`, `before each day work`. */
const eachRound: Kind = (around) => {
  const token = around(0);
  if (token === undefined) return undefined;
  if (token.image === 'every' && /^(?:before|after)$/.test(image(around(-1))))
    return over(token, token, `It is \`${image(around(-1))} each\`.`, { fix: write('each', 'sure') });
  if (token.image !== 'day' || image(around(-1)) !== 'each' || image(around(1)) !== 'work') return undefined;
  return over(token, token, "It is `day's work`.", { fix: write("day's", 'sure') });
};

/** `at 50 h of engine` without an event; `within 5 days of E`. */
const withoutEvent: Kind = (around, opener) => {
  const [last, of] = [around(-1), around(-2)];
  if (last === undefined || of === undefined || image(of) !== 'of' || !isName(last) || !isNumber(around(-4))) return undefined;
  const span = `${image(around(-4))} ${image(around(-3))}`;
  if (opener === 'within')
    return over(of, last, `A time within which follows \`after\`: \`within ${span} after ${last.image}\`.`, {
      fix: write(`after ${last.image}`),
    });
  if (opener !== 'at' || image(around(-5)) !== 'at') return undefined;
  return over(last, last, `\`at ${span} of ${last.image}\` wants an event to count from: \`after\` and its name.`, {
    help: `Counted from the day the machine entered service it is \`first at ${span} of ${last.image}\`; again and again it is \`every ${span} of ${last.image}\`.`,
  });
};

/** `every hour`, `every Monday`. */
const everyWord: Kind = (around, opener) => {
  const token = around(0);
  if (token === undefined || opener !== 'every' || image(around(-1)) !== 'every') return undefined;
  if (token.image === 'hour') return over(token, token, 'An interval begins with a number: `1 h`.', { fix: write('1 h') });
  if (!/^(?:mon|tues|wednes|thurs|fri|satur|sun)days?$/i.test(token.image)) return undefined;
  return over(token, token, 'Days of the week are no marks.', {
    help: 'Once a week, counted from the last time, is `every 7 days`.',
    fix: write('7 days', 'possible'),
  });
};

const OFTEN = new Map([
  ['daily', 'every 1 day'],
  ['weekly', 'every 7 days'],
  ['fortnightly', 'every 14 days'],
  ['monthly', 'every 1 month'],
  ['quarterly', 'every 3 months'],
  ['yearly', 'every 1 year'],
  ['annually', 'every 1 year'],
  ['annual', 'every 1 year'],
]);

/** `daily`, `annually`. */
const adverb: Kind = (around) => {
  const token = around(0);
  const clause = OFTEN.get(image(token));
  if (token === undefined || clause === undefined) return undefined;
  const help = token.image === 'daily' ? "On days of work only it is `on each day of work`, or `before each day's work`." : undefined;
  return over(token, token, `How often is said by \`every\`: \`${clause}\`.`, {
    ...(help === undefined ? {} : { help }),
    fix: write(clause),
  });
};

/** `coolant is above 97 °C`, `coolant over 97 °C`. */
const comparing: Kind = (around) => {
  const [before, token] = [around(-1), around(0)];
  if (before === undefined || token === undefined) return undefined;
  if (before.image === 'is' && /^(?:above|below|at|from)$/.test(token.image))
    return over(before, before, `\`${token.image}\` stands without \`is\`.`, { fix: { grade: 'sure', title: 'Leave `is` out', text: '' } });
  const meant = /^(?:over|exceeds|beyond)$/.test(before.image) ? 'above' : /^(?:under|beneath)$/.test(before.image) ? 'below' : undefined;
  if (meant === undefined || !isNumber(token)) return undefined;
  return over(before, before, `It is \`${meant}\`, not \`${before.image}\`.`, { fix: write(meant, 'sure') });
};

/** `if coolant above high`. */
const conditionWord: Kind = (around) => {
  const token = around(0);
  if (token === undefined || token.image !== 'if' || /^(?:only|if)$/.test(image(around(-1)))) return undefined;
  return over(token, token, 'A condition begins with `when`, `while` or `only if`.', {
    help: '`when coolant above high` asks for the task; `only if …` lets its other rules ask for it only then; what a reading leads to stands in a band below `reads`.',
  });
};

/** `each day before work`, `every day after work`. */
const dayOfWork: Kind = (around) => {
  const first =
    image(around(-1)) === 'every' && image(around(0)) === 'day' ? -1 : image(around(0)) === 'each' && image(around(1)) === 'day' ? 0 : null;
  if (first === null) return undefined;
  const [from, side, to] = [around(first), around(first + 2), around(first + 3)];
  if (from === undefined || side === undefined || to?.image !== 'work' || !/^(?:before|after)$/.test(side.image)) return undefined;
  const clause = `${side.image} each day's work`;
  return over(from, to, `It is \`${clause}\`.`, { fix: write(clause) });
};

/** `first after 5 h of engine`. */
const firstAfter: Kind = (around, opener) => {
  const token = around(0);
  if (token === undefined || opener !== 'first' || !/^(?:after|in|within)$/.test(token.image) || !isNumber(around(1))) return undefined;
  return over(token, token, 'A first time is reached `at` so much.', { fix: write('at', 'sure') });
};

/** `serial 1200 onwards`. */
const openSerials: Kind = (around) => {
  const token = around(0);
  if (token === undefined || image(around(-2)) !== 'serial' || !isNumber(around(-1)) || token.image === 'to') return undefined;
  return over(token, token, 'A range of serial numbers has two ends.', {
    help: `Write the highest number that there can be: \`serial ${image(around(-1))} to 999999\`.`,
  });
};

const kinds: readonly Kind[] = [
  conditionWord,
  dayOfWork,
  firstAfter,
  openSerials,
  whicheverComes,
  joinedByAnd,
  monthFirst,
  oftenInMonth,
  eachRound,
  withoutEvent,
  everyWord,
  adverb,
  comparing,
  unitLast,
  withoutOf,
];
