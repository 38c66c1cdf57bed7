import { byWord } from '../../../base/by-word.js';
import { nearNames } from '../../../index.js';
import type { RuleGraph } from '../../../engine.js';

/** What people say, and the words for it. */
const SAID_OTHERWISE = byWord([
  ['did changed renewed checked cleaned greased tightened oiled completed finished serviced', 'done TASK'],
  ['worked ran drove mowed used', 'outing 3 h'],
  ['topped filled added', 'top-up DIPSTICK 0.4'],
  ['happened', 'event NAME'],
  ['fixed repaired closed', 'mended DEFECT'],
  ['opened leaking leaks broken', 'defect DEFECT CLASS'],
  ['fuelled fueled refueled', 'refuelled 40'],
  ['stored', 'storage begins'],
  ['meter reading', 'hours 1302.4'],
  ['saw noticed', 'found "what it was"'],
  ['serial model bought', 'machine "Tarn 55" serial 1234 since 2024-03-01'],
  ['stated', 'states TASK before 2025-01-01 at 1200'],
  ['delete undo remove', 'void ID'],
]);

/**
 * What was probably meant by words that begin with none of the verbs: a sentence; `null` where nobody can say.
 *
 * @example meantVerb(graph, verbs, ['coolant', '92']) // 'Say `read coolant 92`.'
 */
export function meantVerb(graph: RuleGraph, verbs: readonly string[], [first = '', ...rest]: readonly string[]): string | null {
  const is = (things: readonly { readonly id: string }[]): boolean => things.some(({ id }) => id === first);
  const all = [first, ...rest].join(' ');
  if (is(graph.meters)) return `Say \`hours ${all}\`.`;
  if (is(graph.gauges) || is(graph.dipsticks)) return `Say \`read ${all}\`.`;
  if (is(graph.tasks)) return `Say \`done ${first}\`.`;
  if (is(graph.defects)) return `Say \`defect ${all}\` if it was found, \`mended ${first}\` if it was put right.`;
  if (is(graph.attachments)) return `Say \`attach ${first}\` or \`detach ${first}\`.`;
  const otherwise = SAID_OTHERWISE.get(first.toLowerCase()) ?? nearNames(first, verbs)[0];
  return otherwise === undefined ? null : `Say it like \`${otherwise}\`.`;
}

/** What to say of an option that is none: the day, the meter and the like are said in words. `null` where no word looks like one. */
export function strayOption(words: readonly string[], openers: readonly string[]): string | null {
  const option = words.find((word) => /^--[a-z][a-z-]*(=\S*)?$/.test(word));
  if (option === undefined) return null;
  const name = option.slice(2).replace(/=.*$/, '');
  const place = openers.includes(name) ? `is said in words here: \`${name} …\`, without \`--\`` : 'is no option of this';
  return `\`${option}\` ${place}.`;
}
