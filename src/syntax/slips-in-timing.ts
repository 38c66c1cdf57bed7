/**
 * Slips in what says when: spans, marks, what comes first, serial numbers.
 */
import { MONTH_NAMES, WEEKDAY_NAMES } from '../values/calendar.js';
import { daysInMonth } from '../values/civil.js';
import { image, isMonth, isName, isNumber, isUnit, leaveOut, standsBeside, over, write, HOURS, type SlipKind } from './slip.js';

/** `every 50 h engine`, `every 250 h from engine`. */
export const withoutOf: SlipKind = (around) => {
  const [from, name] = image(around(0)) === 'from' ? [around(0), around(1)] : [undefined, around(0)];
  if (!/^(?:every|or|at|than|\()$/.test(image(around(-3)))) return undefined;
  if (
    name === undefined ||
    !isName(name) ||
    name.image === 'whichever' ||
    !standsBeside(around(-1), from ?? name) ||
    !isUnit(around(-1)) ||
    !isNumber(around(-2)) ||
    HOURS.test(name.image)
  )
    return undefined;
  const span = `${image(around(-2))} ${image(around(-1))} of ${name.image}`;
  return over(from ?? name, name, `What a span counts on follows \`of\`: \`${span}\`.`, { fix: write(`of ${name.image}`) });
};

/** `every 50 engine hours`. */
export const unitLast: SlipKind = (around) => {
  const [number, name, unit] = [around(-2), around(-1), around(0)];
  if (number === undefined || unit === undefined || !isNumber(number) || !isName(name) || !HOURS.test(unit.image)) return undefined;
  const span = `${number.image} h of ${image(name)}`;
  return over(number, unit, `The unit comes before what it is counted on: \`${span}\`.`, { fix: write(span) });
};

/** `every 100 h of engine and 12 months`; `normal 75 °C and 90 °C`. */
export const joinedByAnd: SlipKind = (around) => {
  const and = around(0);
  if (and === undefined || and.image !== 'and' || !(isNumber(around(1)) || image(around(1)) === '(')) return undefined;
  if (isName(around(-1)) && image(around(-2)) !== 'of' && (isUnit(around(-2)) || isNumber(around(-2))))
    return over(and, and, 'What is used is told apart by commas.', { fix: write(',') });
  const isBand = (isNumber(around(-1)) && image(around(-2)) !== 'of') || (isUnit(around(-1)) && image(around(-1)) === image(around(2)));
  if (isBand) return over(and, and, 'A band goes from one level `to` another.', { fix: write('to', 'sure') });
  return over(and, and, 'Limits are joined by `or`, and `whichever first` or `whichever last` says which of them decides.', {
    help: '`whichever last` waits until all of them are reached.',
    fix: write('or'),
  });
};

/** `or every 6 months`, `or once a month`, `or once every 6 months`. */
export const orEvery: SlipKind = (around) => {
  const first = around(0);
  if (first === undefined || image(around(-1)) !== 'or' || !/^(?:every|once|each)$/.test(first.image)) return undefined;
  const at = first.image === 'once' && /^(?:every|each|an?|per)$/.test(image(around(1))) ? 2 : 1;
  const last = isNumber(around(at)) ? at + 1 : at;
  const [number, unit] = [last > at ? image(around(at)) : '1', around(last)];
  if (unit === undefined || !isUnit(unit) || image(around(last + 1)) === 'of') return undefined;
  const span = `${number} ${unit.image}`;
  const decided = /^(?:,|whichever)$/.test(image(around(last + 1)));
  return over(first, unit, `After \`or\` comes the next limit and no word besides: \`or ${span}\`.`, {
    fix: write(decided ? span : `${span}, whichever first`),
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
export const whicheverComes: SlipKind = (around) => {
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
export const monthFirst: SlipKind = (around) => {
  for (const n of [-2, -1, 0, 1, 2, 3]) {
    const [before, month, day] = [around(n - 1), around(n), around(n + 1)];
    if (month === undefined || day === undefined || image(before) !== 'on' || !isMonth(month) || !isNumber(day)) continue;
    return over(month, day, `The day comes before the month: \`${day.image} ${month.image}\`.`, {
      fix: write(`${day.image} ${month.image}`, 'sure'),
    });
  }
  const [day, ending, month] = [around(-1), around(0), around(1)];
  if (ending === undefined || !isNumber(day) || !/^(?:st|nd|rd|th)$/.test(ending.image) || !isMonth(month)) return undefined;
  return over(ending, ending, `A day is a number: \`${image(day)} ${image(month)}\`.`, { fix: leaveOut(ending) });
};

/** `every 2 weeks in April`. */
export const oftenInMonth: SlipKind = (around, opener) => {
  const month = around(0);
  if (month === undefined || opener !== 'in' || !isMonth(month) || image(around(-1)) !== 'in') return undefined;
  const lastDay = daysInMonth(2023, (MONTH_NAMES as readonly string[]).indexOf(month.image) + 1);
  return over(month, month, `Only years go with a month: \`every year in ${month.image}\` is once within it.`, {
    help: `What comes round more often at that time of the year wants a gate: \`every 2 weeks only if date from 1 ${month.image} to ${lastDay} ${month.image}\`.`,
  });
};

/** `(whichever comes first)`. */
export const whicheverInBrackets: SlipKind = (around) => {
  const [open, word] = [around(0), around(1)];
  const end = [3, 4, 5].find((at) => image(around(at)) === ')');
  const close = end === undefined ? undefined : around(end);
  if (open?.image !== '(' || word?.image !== 'whichever' || close === undefined) return undefined;
  const mode = [2, 3, 4].map((at) => WHICH.get(image(around(at)))).find((each) => each !== undefined) ?? 'first';
  return over(open, close, `It stands after a comma, without parentheses: \`, whichever ${mode}\`.`, { fix: write(`, whichever ${mode}`) });
};

/** `annually in May`. */
export const adverbInMonth: SlipKind = (around) => {
  const [token, month] = [around(0), around(2)];
  if (token === undefined || month === undefined || !/^(?:annually|annual|yearly)$/.test(token.image)) return undefined;
  if (image(around(1)) !== 'in' || !isMonth(month)) return undefined;
  const clause = `every year in ${month.image}`;
  return over(token, month, `Once within a month of the year is \`${clause}\`.`, { fix: write(clause, 'sure') });
};

/** `takes half an hour`. */
export const halfAnHour: SlipKind = (around) => {
  const [half, article, hour] = [around(0), around(1), around(2)];
  if (half?.image !== 'half' || article?.image !== 'an' || hour === undefined || !/^h(?:ou)?rs?$/.test(hour.image)) return undefined;
  return over(half, hour, 'A time is a number and a unit: `30 min`.', { fix: write('30 min', 'sure') });
};

/** `every October`. */
export const everyMonth: SlipKind = (around, opener) => {
  const month = around(0);
  if (month === undefined || opener !== 'every' || image(around(-1)) !== 'every' || !isMonth(month)) return undefined;
  const clause = `year in ${month.image}`;
  return over(month, month, `Once within a month of the year is \`every ${clause}\`.`, { fix: write(clause, 'sure') });
};

/** `at 50 h of engine` without an event; `within 5 days of E`. */
export const withoutEvent: SlipKind = (around, opener) => {
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

/** `every hour`, `every monday`, `every Mondays`. */
export const everyWord: SlipKind = (around, opener) => {
  const token = around(0);
  if (token === undefined || opener !== 'every' || image(around(-1)) !== 'every') return undefined;
  if (token.image === 'hour') return over(token, token, 'An interval begins with a number: `1 h`.', { fix: write('1 h') });
  if (!/^(?:mon|tues|wednes|thurs|fri|satur|sun)days?$/i.test(token.image)) return undefined;
  const day = WEEKDAY_NAMES.find((each) => token.image.toLowerCase().startsWith(each.toLowerCase()));
  if (day === undefined) return undefined;
  return over(token, token, `Days of the week are written as \`${day}\` is.`, { fix: write(day, 'sure') });
};

/** `first after 5 h of engine`. */
export const firstAfter: SlipKind = (around, opener) => {
  const token = around(0);
  if (token === undefined || opener !== 'first' || !/^(?:after|in|within)$/.test(token.image) || !isNumber(around(1))) return undefined;
  return over(token, token, 'A first time is reached `at` so much.', { fix: write('at', 'sure') });
};

/** `serial 1200 onwards`. */
export const openSerials: SlipKind = (around) => {
  const token = around(0);
  if (token === undefined || image(around(-2)) !== 'serial' || !isNumber(around(-1)) || token.image === 'to') return undefined;
  return over(token, token, 'A range of serial numbers has two ends.', {
    help: `Write the highest number that there can be: \`serial ${image(around(-1))} to 999999\`.`,
  });
};
