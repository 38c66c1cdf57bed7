/**
 * Slips in what is read and used: bands, units, amounts, comparisons.
 */
import { image, isName, isNumber, isUnit, leaveOut, over, write, type SlipKind } from './slip.js';

/** `reads coolant, oil-pressure`. */
export const readsSeveral: SlipKind = (around) => {
  const [comma, next] = [around(0), around(1)];
  if (comma?.image !== ',' || next === undefined || !isName(next) || image(around(-2)) !== 'reads') return undefined;
  return over(comma, next, `Each \`reads\` takes one instrument, with its bands: \`reads ${next.image}\` is another clause.`, {
    fix: write(` reads ${next.image}`),
  });
};

/** `uses engine-oil 0.5 L`. */
export const amountLast: SlipKind = (around) => {
  const [name, number, unit] = [around(0), around(1), around(2)];
  if (name === undefined || number === undefined || !isName(name) || !isNumber(number)) return undefined;
  if (image(around(-1)) !== 'uses' && !(image(around(-1)) === ',' && isNumber(around(-3)))) return undefined;
  const [amount, last] = unit !== undefined && isUnit(unit) ? [`${number.image} ${unit.image}`, unit] : [number.image, number];
  return over(name, last, `How much comes before of what: \`${amount} ${name.image}\`.`, { fix: write(`${amount} ${name.image}`, 'sure') });
};

const SIDES = new Map([
  ['under', 'below'],
  ['over', 'above'],
]);

/** `under low hold "…"`. */
export const bandSide: SlipKind = (around) => {
  const [side, verdict] = [around(-3), around(-1)];
  const meant = SIDES.get(image(side));
  if (side === undefined || meant === undefined || !/^(?:hold|caution|fine)$/.test(image(verdict)) || !image(around(0)).startsWith('"'))
    return undefined;
  return over(side, side, `A band begins with \`${meant}\`, not \`${side.image}\`.`, { fix: write(meant, 'sure') });
};

const COMPARED = new Map([
  ['at least', 'from'],
  ['at most', 'up to'],
  ['more than', 'above'],
  ['greater than', 'above'],
  ['higher than', 'above'],
  ['less than', 'below'],
  ['lower than', 'below'],
]);

/** `at least 12 V fine`, `less than 80 bar caution "…"`. */
export const bandCompared: SlipKind = (around) => {
  for (const at of [0, -1, -2]) {
    const [first, second] = [around(at), around(at + 1)];
    const meant = COMPARED.get(`${image(first)} ${image(second)}`);
    // After `when` the subject of a condition was left out.
    if (first === undefined || second === undefined || meant === undefined || image(around(at - 1)) === 'when') continue;
    return over(first, second, `A band begins with \`${meant}\`, not \`${first.image} ${second.image}\`.`, { fix: write(meant, 'sure') });
  }
  return undefined;
};

/** `supply filter "…" known as "H-22"`. */
export const supplyWithoutUnit: SlipKind = (around, opener) => {
  const token = around(0);
  if (token?.image !== 'known' || opener !== 'supply') return undefined;
  return over(token, token, 'A supply is counted by the piece or in a unit: `each`, or `in L`.', { fix: write('each known') });
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

/** `coolant is above 97 °C`, `coolant over 97 °C`. */
export const comparing: SlipKind = (around) => {
  const [before, token] = [around(-1), around(0)];
  if (before === undefined || token === undefined) return undefined;
  if (before.image === 'is' && /^(?:above|below|at|from)$/.test(token.image))
    return over(before, before, `\`${token.image}\` stands without \`is\`.`, { fix: leaveOut(before) });
  const meant = /^(?:over|exceeds|beyond)$/.test(before.image) ? 'above' : /^(?:under|beneath)$/.test(before.image) ? 'below' : undefined;
  if (meant === undefined || !isNumber(token)) return undefined;
  return over(before, before, `It is \`${meant}\`, not \`${before.image}\`.`, { fix: write(meant, 'sure') });
};

/** `below low then top-up now`. */
export const bandWithoutVerdict: SlipKind = (around) => {
  const [before, token] = [around(-1), around(0)];
  if (token === undefined || token.image !== 'then' || before === undefined || image(around(1)) === 'every') return undefined;
  if (!isName(before) && !isUnit(before) && !isNumber(before) && !/^(?:low|full)$/.test(before.image)) return undefined;
  return over(token, token, 'What a reading means comes before what it asks for: `fine`, `caution "…"` or `hold "…"`.', {
    fix: write('fine then', 'possible'),
  });
};

/** `classes wetness, drops form, drops fall`. */
export const nameOfTwoWords: SlipKind = (around) => {
  const [first, second] = [around(-2), around(-1)];
  if (image(around(0)) !== ',' || first === undefined || second === undefined || !isName(first) || !isName(second)) return undefined;
  if (image(around(-3)) !== ',' && image(around(-3)) !== 'classes') return undefined;
  const name = `${first.image}-${second.image}`;
  return over(first, second, `A name of several words is written with hyphens: \`${name}\`.`, { fix: write(name) });
};
