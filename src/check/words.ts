/**
 * Naming things in a diagnostic.
 */
import { listed } from '../base/listed.js';
import { nearNames } from '../base/near-name.js';
import type { NameKind } from './model.js';

const kindNames: Readonly<Record<NameKind, string>> = {
  meter: 'a meter',
  gauge: 'a gauge',
  dipstick: 'a dipstick',
  duty: 'a duty',
  attachment: 'an attachment',
  position: 'a moving part',
  place: 'a place',
  step: 'a step',
  stop: 'a stop',
  supply: 'a supply',
  hazard: 'a hazard',
  event: 'an event',
  defect: 'a defect',
  task: 'a task',
};

/** `a meter`. */
export function kindName(kind: NameKind): string {
  return kindNames[kind];
}

/** `a gauge, a dipstick or a meter`. */
export function kindsName(kinds: readonly NameKind[]): string {
  return listed(kinds.map(kindName), 'or');
}

/** A name as diagnostics show it. */
export function ticked(name: string): string {
  return `\`${name}\``;
}

/** How many words of one thing are listed or compared; what has more was not written by hand. */
const MOST_WORDS = 100;

/** `a`, `b` and `c`, each as diagnostics show it; of very many, the first and how many others. */
export function listedShort(names: readonly string[], joint: 'and' | 'or'): string {
  if (names.length <= MOST_WORDS) return listed(names.map(ticked), joint);
  return `${names.slice(0, MOST_WORDS).map(ticked).join(', ')} ${joint} ${names.length - MOST_WORDS} others`;
}

/** Which of the words that go with one thing was probably meant. */
export function nearWord(written: string, words: readonly string[]): string | undefined {
  return words.length > MOST_WORDS ? undefined : nearNames(written, words)[0];
}
