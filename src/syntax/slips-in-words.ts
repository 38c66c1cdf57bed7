/**
 * Words of other habits: what people write where this language has another word, or another order.
 */
import { byWord } from '../base/by-word.js';
import { image, isName, isNumber, isUnit, leaveOut, over, standsBeside, write, type SlipKind } from './slip.js';

/** `every every 100 h`; but `meter meter "…"` declares a thing by a word of the language. */
export const saidTwice: SlipKind = (around) => {
  const [before, token] = [around(-1), around(0)];
  if (token === undefined || !/^[\p{L}\d]/u.test(token.image) || token.image !== image(before)) return undefined;
  if (!standsBeside(before, token) || image(around(1)).startsWith('"')) return undefined;
  return over(token, token, `\`${token.image}\` stands here twice.`, { fix: { ...leaveOut(token), grade: 'likely' } });
};

/** `before every day's work`, `before each day work`. */
export const eachRound: SlipKind = (around) => {
  const token = around(0);
  if (token === undefined) return undefined;
  if (token.image === 'every' && /^(?:before|after)$/.test(image(around(-1))) && !isNumber(around(1)))
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
  if (!/^(?:work|use|operation|starting|start|driving|run|job|trip|drive)$/.test(token.image)) return undefined;
  const round = each === undefined ? "each day's work" : 'each outing';
  return over(each ?? token, token, `It is \`${opener} ${round}\`.`, {
    help: `There is \`${opener} each day's work\`, \`${opener} each outing\` and \`${opener} each shift\`.`,
    fix: write(round),
  });
};

const OTHER_WORDS = byWord([
  ['tolerance grace leeway', 'How late it may be done is `allow 10 % late`, or `allow 5 h late`.'],
  ['interval repeat frequency', 'How often is `every 50 h of engine`, or `every 12 months`.'],
  ['note notes description comment', 'Why, and from where a number comes, is `reason "…"`; a remark for authors begins with `#`.'],
  ['parts materials consumes', 'What it takes of supplies is `uses 1 oil-filter`.'],
  ['tool tools', 'Tools are `needs "torque wrench"`.'],
  ['duration time', 'How long the work takes is `takes 20 min`.'],
  ['torque', 'A torque is `tighten "Wheel nuts" to 210 N·m`.'],
  ['steps instructions procedure', 'What the hands do is `do "…"`.'],
  ['replace renew', 'Renewing is a task of its own, which may say that it `covers` this one.'],
]);

/** `tolerance 10 %`, `tools "…"`. */
export const otherWord: SlipKind = (around, opener) => {
  const token = around(0);
  const sentence = OTHER_WORDS.get(image(token));
  return token === undefined || sentence === undefined || opener !== undefined ? undefined : over(token, token, sentence, {});
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

/** `if coolant above high`. */
export const conditionWord: SlipKind = (around) => {
  const token = around(0);
  if (token === undefined || token.image !== 'if' || /^(?:only|if|hold)$/.test(image(around(-1)))) return undefined;
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

/** `the time lube takes`. */
export const timeWithoutThat: SlipKind = (around, opener) => {
  const token = around(0);
  if (token === undefined || opener !== 'sooner' || image(around(-1)) !== 'time' || !isName(token)) return undefined;
  return over(token, token, `It is \`the time that ${token.image} takes\`.`, { fix: write(`that ${token.image}`, 'sure') });
};

const TIMES = new Map([
  ['twice', '2 times'],
  ['thrice', '3 times'],
]);

/** `every 5 years twice`. */
export const timesInOneWord: SlipKind = (around) => {
  const word = around(0);
  const times = TIMES.get(image(word));
  if (word === undefined || times === undefined || !(isUnit(around(-1)) || image(around(-2)) === 'of')) return undefined;
  return over(word, word, `How often is a number: \`${times}\`.`, { fix: write(times) });
};
