/**
 * Slips in saying that work comes after so many times of other work.
 */
import { image, isName, isNumber, over, write, type Slip, type SlipKind } from './slip.js';
import type { Token } from './token.js';

const NTH: ReadonlyMap<string, number> = new Map([
  ['other', 2],
  ['second', 2],
  ['third', 3],
  ['fourth', 4],
  ['fifth', 5],
]);

/** `every 3 times clean-element`, where `3 times` is read as a span first. */
export const everyTimes: SlipKind = (around) => {
  const [from, number, name] = [around(-3), around(-2), around(0)];
  if (image(from) !== 'every' || !isNumber(number) || image(around(-1)) !== 'times') return undefined;
  return comingRound(from, image(number), name);
};

/** `every third clean-element`. */
export const everyNth: SlipKind = (around) => {
  const times = NTH.get(image(around(0)));
  return times === undefined || image(around(-1)) !== 'every' ? undefined : comingRound(around(-1), `${times}`, around(1));
};

function comingRound(from: Token | undefined, times: string, name: Token | undefined): Slip | undefined {
  if (from === undefined || name === undefined || !isName(name)) return undefined;
  const meant = `after ${times} times ${name.image}`;
  return over(from, name, `What comes round with other work is \`${meant}\`.`, { fix: write(meant) });
}
