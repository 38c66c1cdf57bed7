/**
 * Slips in how long before work something is done: `within 3 h before each shift` in other words.
 */
import { image, isNumber, isUnit, over, write, type Around, type SlipKind } from './slip.js';

const ROUNDS: ReadonlyMap<string, string> = new Map([
  ['shift', 'shift'],
  ['shifts', 'shift'],
  ['outing', 'outing'],
  ['outings', 'outing'],
  ["day's", "day's work"],
]);

/** `before each shift, within 3 h`; `before each shift within 3 h`. */
export const windowLast: SlipKind = (around) => {
  const within = [1, 0, -3].find((n) => image(around(n)) === 'within' && isNumber(around(n + 1)) && isUnit(around(n + 2)));
  if (within === undefined) return undefined;
  const before = [-3, -4, -5].map((n) => within + n).find((n) => image(around(n)) === 'before' && image(around(n + 1)) === 'each');
  if (before === undefined) return undefined;
  const [first, unit] = [around(before), around(within + 2)];
  const round = ROUNDS.get(image(around(before + 2)));
  if (first === undefined || unit === undefined || round === undefined) return undefined;
  const meant = `within ${spanAt(around, within + 1)} before each ${round}`;
  return over(first, unit, `How long before it comes first: \`${meant}\`.`, { fix: write(meant) });
};

/** `within 3 h of each shift`, `within 3 h prior to the shift`, `within 3 h before shift`. */
export const windowBefore: SlipKind = (around, opener) => {
  if (opener !== 'within') return undefined;
  const within = [-3, -4, -5].find((n) => image(around(n)) === 'within' && isNumber(around(n + 1)) && isUnit(around(n + 2)));
  if (within === undefined) return undefined;
  const last = [0, 1, 2, 3, 4, 5, 6].find((n) => ROUNDS.has(image(around(n))));
  const [from, to] = [around(within + 3), last === undefined ? undefined : around(last)];
  const between = Array.from({ length: Math.max(0, (last ?? 0) - within - 3) }, (_, i) => image(around(within + 3 + i)));
  if (from === undefined || to === undefined || !between.every((word) => BETWEEN.test(word))) return undefined;
  const meant = `before each ${ROUNDS.get(to.image) ?? ''}`;
  const end = image(around((last ?? 0) + 1)) === 'work' ? (around((last ?? 0) + 1) ?? to) : to;
  return over(from, end, `A time within which before work is \`within ${spanAt(around, within + 1)} ${meant}\`.`, { fix: write(meant) });
};

const BETWEEN = /^(?:of|before|preceding|prior|to|from|the|a|any|every|each|start|beginning)$/;

function spanAt(around: Around, n: number): string {
  return `${image(around(n))} ${image(around(n + 1))}`;
}
