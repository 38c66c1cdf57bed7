/**
 * Slips in what names a day of the week that is not in each week.
 */
import { WEEKDAY_NAMES } from '../values/calendar.js';
import { image, isMonth, over, write, type SlipKind } from './slip.js';
import type { Token } from './token.js';

const ORDINALS = /^(?:first|second|third|fourth|last)$/;

const isWeekday = (token: Token | undefined): token is Token => (WEEKDAY_NAMES as readonly string[]).includes(image(token));

/** `every week on Monday`. */
export const everyWeekOn: SlipKind = (around) => {
  const [week, day] = [around(0), around(2)];
  if (week === undefined || !/^weeks?$/.test(week.image) || image(around(1)) !== 'on' || !isWeekday(day)) return undefined;
  return over(week, day, 'In each week it is the day alone.', { fix: write(day.image, 'sure') });
};

/** `every other Monday`, `every fortnight on Monday`. */
export const everyOther: SlipKind = (around, opener) => {
  const [token, at] = [around(0), image(around(1)) === 'on' ? 2 : 1];
  if (token === undefined || opener !== 'every' || !/^(?:other|alternate|fortnight|2nd)$/.test(token.image)) return undefined;
  const day = around(at);
  if (!isWeekday(day)) return undefined;
  return over(
    token,
    day,
    `Each second ${day.image} is written with the first of them all: \`2 weeks on ${day.image} from\` and its date.`,
    {},
  );
};

/** `every first Monday`, `every last Friday of March`, `every third Monday of the month`. */
export const everyPlaced: SlipKind = (around, opener) => {
  const [nth, day] = [around(0), around(1)];
  if (nth === undefined || opener !== 'every' || !ORDINALS.test(nth.image) || !isWeekday(day)) return undefined;
  const placed = `the ${nth.image} ${day.image}`;
  const help =
    nth.image === 'second'
      ? { help: `In each second week it is \`2 weeks on ${day.image} from\` and the date of the first of them all.` }
      : {};
  if (image(around(2)) === 'of' && isMonth(around(3)))
    return over(nth, day, `Once a year it is \`year on ${placed} of ${image(around(3))}\`.`, { fix: write(`year on ${placed}`) });
  const last = /^(?:the|each|every|a)$/.test(image(around(3))) && image(around(4)) === 'month' ? (around(4) ?? day) : day;
  return over(nth, last, `Once a month it is \`month on ${placed}\`.`, { ...help, fix: write(`month on ${placed}`) });
};

/** `month on first Monday`. */
export const placedWithoutThe: SlipKind = (around) => {
  const [nth, day] = [around(2), around(3)];
  if (nth === undefined || !/^(?:month|year)s?$/.test(image(around(0))) || image(around(1)) !== 'on') return undefined;
  if (!ORDINALS.test(nth.image) || !isWeekday(day)) return undefined;
  return over(nth, nth, `It is \`the ${nth.image} ${day.image}\`.`, { fix: write(`the ${nth.image}`, 'sure') });
};
