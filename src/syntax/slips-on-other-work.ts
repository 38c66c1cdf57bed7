/**
 * Slips in saying that work comes after so many times of other work.
 */
import { image, isName, isNumber, over, write, type Around, type Slip, type SlipKind } from './slip.js';
import type { Token } from './token.js';

const NTH: ReadonlyMap<string, number> = new Map([
  ['other', 2],
  ['second', 2],
  ['third', 3],
  ['fourth', 4],
  ['fifth', 5],
]);

/** `every 3 times clean-element`, where `3 times` is read as a span first; `after 3 clean-element`. */
export const everyTimes: SlipKind = (around) => {
  if (image(around(-2)) === 'after' && isNumber(around(-1))) return comingRound(around(-2), image(around(-1)), around(0));
  if (image(around(-3)) !== 'every' || !isNumber(around(-2)) || !/^(?:times|nd|rd|th)$/.test(image(around(-1)))) return undefined;
  return comingRound(around(-3), image(around(-2)), around(0));
};

/** `every third clean-element`; `after every 3 clean-element`, `on every third clean-element`. */
export const everyNth: SlipKind = (around) => {
  if (image(around(-1)) === 'every' && NTH.has(image(around(0)))) return counted(around, around(-1), 0);
  return /^(?:after|on)$/.test(image(around(-1))) && image(around(0)) === 'every' ? counted(around, around(-1), 1) : undefined;
};

/** `every 2 years or after 3 times clean-element`. */
export const orAfter: SlipKind = (around) => {
  const [or, after, name] = [around(-1), around(0), around(3)];
  if (or?.image !== 'or' || after?.image !== 'after' || !isNumber(around(1)) || name === undefined) return undefined;
  const clause = `after ${image(around(1))} times ${name.image}`;
  return over(or, name, `\`${clause}\` is a clause of its own.`, {
    help: 'Write it on a line of its own: whichever clause comes first decides.',
  });
};

/** What is meant from the number on that stands at a place, in digits or in words. */
function counted(around: Around, from: Token | undefined, at: number): Slip | undefined {
  const number = around(at);
  const times = NTH.get(image(number)) ?? (isNumber(number) ? image(number) : undefined);
  if (times === undefined) return undefined;
  const name = image(around(at + 1)) === 'times' ? around(at + 2) : around(at + 1);
  return comingRound(from, `${times}`, name);
}

function comingRound(from: Token | undefined, times: string, name: Token | undefined): Slip | undefined {
  if (from === undefined || name === undefined || !isName(name)) return undefined;
  const meant = `after ${times} times ${name.image}`;
  return over(from, name, `What comes round with other work is \`${meant}\`.`, { fix: write(meant) });
}
