/**
 * Words of other habits: what people write where this language has another word, or another order.
 */
import { image, isName, isNumber, isUnit, leaveOut, over, write, type SlipKind } from './slip.js';

/** `before every day's work`, `before each day work`. */
export const eachRound: SlipKind = (around) => {
  const token = around(0);
  if (token === undefined) return undefined;
  if (token.image === 'every' && /^(?:before|after)$/.test(image(around(-1))))
    return over(token, token, `It is \`${image(around(-1))} each\`.`, { fix: write('each', 'sure') });
  if (token.image !== 'day' || image(around(-1)) !== 'each' || image(around(1)) !== 'work') return undefined;
  return over(token, token, "It is `day's work`.", { fix: write("day's", 'sure') });
};

/** `before work`, `before each use`, `after operation`. */
export const roundOfUse: SlipKind = (around, opener) => {
  const token = around(0);
  if (token === undefined || (opener !== 'before' && opener !== 'after')) return undefined;
  const each = image(around(-1)) === 'each' ? around(-1) : undefined;
  if (each === undefined && image(around(-1)) !== opener) return undefined;
  if (!/^(?:work|use|operation|starting|start|driving)$/.test(token.image)) return undefined;
  const round = each === undefined ? "each day's work" : 'each outing';
  return over(each ?? token, token, `It is \`${opener} ${round}\`.`, {
    help: `There is \`${opener} each day's work\`, \`${opener} each outing\` and \`${opener} each shift\`.`,
    fix: write(round),
  });
};

const UNIT_WORD = new Map([
  ['gauge', 'reads'],
  ['meter', 'counts'],
  ['supply', 'in'],
]);

/** `gauge tension "…" in bar`, `supply oil "…" counts L`. */
export const unitWord: SlipKind = (around, opener) => {
  const token = around(0);
  const word = UNIT_WORD.get(opener ?? '');
  if (token === undefined || word === undefined || !/^(?:in|reads|counts|of|measures|shows)$/.test(token.image) || !isUnit(around(1)))
    return undefined;
  return over(token, token, `The unit of a ${opener} follows \`${word}\`: \`${word} ${image(around(1))}\`.`, { fix: write(word, 'sure') });
};

/** `calls for electrician`. */
export const whoDoesIt: SlipKind = (around) => {
  const token = around(0);
  if (token === undefined || image(around(-1)) !== 'for' || image(around(-2)) !== 'calls' || token.image === 'qualified') return undefined;
  return over(token, token, 'It is `calls for qualified mechanic`, whatever the trade.', {
    help: 'Say in `reason` or in the title which trade or licence it takes.',
    fix: write('qualified mechanic', 'possible'),
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
export const adverb: SlipKind = (around) => {
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
export const comparing: SlipKind = (around) => {
  const [before, token] = [around(-1), around(0)];
  if (before === undefined || token === undefined) return undefined;
  if (before.image === 'is' && /^(?:above|below|at|from)$/.test(token.image))
    return over(before, before, `\`${token.image}\` stands without \`is\`.`, { fix: leaveOut(before, before) });
  const meant = /^(?:over|exceeds|beyond)$/.test(before.image) ? 'above' : /^(?:under|beneath)$/.test(before.image) ? 'below' : undefined;
  if (meant === undefined || !isNumber(token)) return undefined;
  return over(before, before, `It is \`${meant}\`, not \`${before.image}\`.`, { fix: write(meant, 'sure') });
};

/** `if coolant above high`. */
export const conditionWord: SlipKind = (around) => {
  const token = around(0);
  if (token === undefined || token.image !== 'if' || /^(?:only|if)$/.test(image(around(-1)))) return undefined;
  return over(token, token, 'A condition begins with `when`, `while` or `only if`.', {
    help: '`when coolant above high` asks for the task; `only if …` lets its other rules ask for it only then; what a reading leads to stands in a band below `reads`.',
  });
};

/** `when idle for 4 weeks`. */
export const idleAlone: SlipKind = (around) => {
  const [idle, next] = [around(-1), around(0)];
  if (idle?.image !== 'idle' || next?.image !== 'for' || image(around(-2)) === 'machine') return undefined;
  return over(idle, idle, 'It is the machine that is idle: `machine idle for …`.', { fix: write('machine idle', 'sure') });
};

/** `each day before work`, `every day after work`. */
export const dayOfWork: SlipKind = (around) => {
  const first =
    image(around(-1)) === 'every' && image(around(0)) === 'day' ? -1 : image(around(0)) === 'each' && image(around(1)) === 'day' ? 0 : null;
  if (first === null) return undefined;
  const [from, side, to] = [around(first), around(first + 2), around(first + 3)];
  if (from === undefined || side === undefined || to?.image !== 'work' || !/^(?:before|after)$/.test(side.image)) return undefined;
  const clause = `${side.image} each day's work`;
  return over(from, to, `It is \`${clause}\`.`, { fix: write(clause) });
};

/** `each year in April`, where a clause begins. */
export const eachForEvery: SlipKind = (around, opener) => {
  const [token, next] = [around(0), around(1)];
  if (token === undefined || opener !== undefined || token.image !== 'each') return undefined;
  if (!isNumber(next) && !/^(?:years?|months?|weeks?|days?|hours?|h)$/.test(image(next))) return undefined;
  return over(token, token, 'How often begins with `every`.', { fix: write('every', 'sure') });
};

/** `below low then top-up now`. */
export const bandWithoutVerdict: SlipKind = (around) => {
  const [before, token] = [around(-1), around(0)];
  if (token === undefined || token.image !== 'then' || before === undefined) return undefined;
  if (!isName(before) && !isUnit(before) && !isNumber(before) && !/^(?:low|full)$/.test(before.image)) return undefined;
  return over(token, token, 'What a reading means comes before what it asks for: `fine`, `caution "…"` or `hold "…"`.', {
    fix: write('fine then', 'possible'),
  });
};

/** `the time lube takes`. */
export const timeWithoutThat: SlipKind = (around, opener) => {
  const token = around(0);
  if (token === undefined || opener !== 'sooner' || image(around(-1)) !== 'time' || !isName(token)) return undefined;
  return over(token, token, `It is \`the time that ${token.image} takes\`.`, { fix: write(`that ${token.image}`, 'sure') });
};

/** `classes wetness, drops form, drops fall`. */
export const nameOfTwoWords: SlipKind = (around) => {
  const [first, second] = [around(-2), around(-1)];
  if (image(around(0)) !== ',' || first === undefined || second === undefined || !isName(first) || !isName(second)) return undefined;
  if (image(around(-3)) !== ',' && image(around(-3)) !== 'classes') return undefined;
  const name = `${first.image}-${second.image}`;
  return over(first, second, `A name of several words is written with hyphens: \`${name}\`.`, { fix: write(name) });
};
