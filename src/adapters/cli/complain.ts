import type { Shell } from './shell.js';
import { nearNames } from '../../base/near-name.js';
import { safeSigns } from '../../render/safe-text.js';

/** Says on the error stream what is wrong, one sentence a line. Names and arguments in it come from outside and steer no terminal. */
export function complain(shell: Shell, ...sentences: readonly string[]): void {
  for (const sentence of sentences) shell.err(`duewright: ${safeSigns(sentence)}\n`);
}

/** More names than this are no help on a line. */
const MOST_LISTED = 12;

/** "There is no task `x`", with the names that may have been meant, or those that there are. */
export function noSuch(kind: string, name: string, known: readonly string[]): string {
  const near = nearNames(name, known);
  if (near.length > 0) return `There is no ${kind} \`${name}\`: was ${near.map((each) => `\`${each}\``).join(' or ')} meant?`;
  if (known.length === 0) return `There is no ${kind} \`${name}\`: the schedule has none.`;
  const listed =
    known.length > MOST_LISTED ? '' : ` There ${known.length === 1 ? 'is' : 'are'} ${known.map((each) => `\`${each}\``).join(', ')}.`;
  return `There is no ${kind} \`${name}\`.${listed}`;
}
