import { inUnit } from '../../../values/in-unit.js';
import type { EntryKind, RuleGraph } from '../../../engine.js';
import type { Part } from './draft-part.js';
import { parseNumber } from './question.js';
import { hoursOf, items, meterValues, nameList, readingValues } from './record-phrases.js';

/** One thing that can be recorded: which entry it makes, how its first words are read, and which words open a clause after them. */
export interface Verb {
  readonly kind: EntryKind;
  readonly head: (graph: RuleGraph, words: readonly string[]) => Part;
  readonly opens: ReadonlySet<string>;
}

const COMMON = ['on', 'by', 'note', 'reads'];

/** In the order in which they are listed for people. */
export const verbs: ReadonlyMap<string, Verb> = new Map<string, Verb>([
  ['hours', verb('reading', hours)],
  ['read', verb('reading', (graph, words) => part(readingValues(graph, words), (readings) => ({ readings })), 'at')],
  ['done', verb('done', tasks, 'at', 'used', 'took')],
  ['outing', verb('outing', outing, 'at', 'in', 'with', 'from', 'to', 'shift')],
  ['found', verb('finding', text, 'at', 'task')],
  ['defect', verb('defect-opened', defect, 'at')],
  ['mended', verb('defect-closed', one('defect'), 'at')],
  ['top-up', verb('topped-up', topUp, 'at')],
  ['event', verb('event', one('event'), 'at')],
  ['attach', verb('attached', one('attachment'), 'at')],
  ['detach', verb('detached', one('attachment'), 'at')],
  ['refuelled', verb('refuelled', litres, 'at')],
  ['storage', verb('storage', phase, 'at')],
  ['replaced', verb('meter-replaced', one('meter'), 'final', 'initial')],
  ['states', verb('stated', one('task'), 'before', 'at', 'words')],
  ['machine', verb('machine', model, 'serial', 'since', 'at')],
  ['void', verb('void', one('entry'))],
  ['confirm', verb('confirm', one('entry'))],
]);

function verb(kind: EntryKind, head: Verb['head'], ...opens: string[]): Verb {
  return { kind, head, opens: new Set([...COMMON, ...opens]) };
}

/** What was read, put in its place; a sentence stays one. */
function part<T extends object>(read: T | string, place: (value: T) => Part): Part {
  return typeof read === 'string' ? read : place(read);
}

function one(member: 'defect' | 'event' | 'attachment' | 'meter' | 'task' | 'entry'): Verb['head'] {
  return (_, words) => {
    if (words.length > 1) return `After one ${member}, \`${words[1] ?? ''}\` is not understood.`;
    return words[0] === undefined ? {} : { [member]: words[0] };
  };
}

function hours(graph: RuleGraph, words: readonly string[]): Part {
  return words.length === 0 ? {} : part(meterValues(graph, words), (meters) => ({ meters }));
}

function tasks(_: RuleGraph, words: readonly string[]): Part {
  const names = nameList(words);
  if (names === null) return 'Put commas between tasks: `done change-engine-oil, grease-loader`.';
  return names.length === 0 ? {} : { tasks: names };
}

function outing(_: RuleGraph, words: readonly string[]): Part {
  if (words.length === 0) return {};
  const spent = hoursOf(words);
  return spent === null ? `\`${words.join(' ')}\` is not a time: say it like \`3 h\` or \`90 min\`.` : { hours: spent };
}

function text(_: RuleGraph, words: readonly string[]): Part {
  return words.length === 0 ? {} : { text: words.join(' ') };
}

function defect(_: RuleGraph, [name, ...classWords]: readonly string[]): Part {
  if (name === undefined) return {};
  return classWords.length === 0 ? { defect: name } : { defect: name, class: classWords.join('-') };
}

function topUp(graph: RuleGraph, words: readonly string[]): Part {
  const [item = [], ...others] = items(words);
  const [what, ...rest] = item;
  if (what === undefined) return {};
  if (others.length > 0) return `\`${words.join(' ')}\` is more than one top-up: record each by itself.`;
  const amount = rest.length === 0 ? undefined : litresOf(rest);
  if (amount === null) return `\`${rest.join(' ')}\` is not an amount in litres: say it like \`top-up engine-oil 0.4 L\`.`;
  const place =
    !graph.dipsticks.some(({ id }) => id === what) && graph.supplies.some(({ id }) => id === what) ? { supply: what } : { dipstick: what };
  return { ...place, ...(amount === undefined ? {} : { litres: amount }) };
}

function litres(_: RuleGraph, words: readonly string[]): Part {
  if (words.length === 0) return {};
  const amount = litresOf(words);
  return amount === null ? `\`${words.join(' ')}\` is not an amount in litres: say it like \`40 L\`.` : { litres: amount };
}

/** `0.4`, `0.4 L` (or `l`), `400 mL`; `null` for what is no volume. */
function litresOf([number = '', unit = 'L', ...more]: readonly string[]): number | null {
  const amount = parseNumber(number);
  return amount === null || more.length > 0 ? null : inUnit(amount, unit === 'l' ? 'L' : unit, 'L');
}

function phase(_: RuleGraph, [word]: readonly string[]): Part {
  if (word === undefined) return {};
  return word === 'begins' || word === 'ends' ? { phase: word } : 'Say `storage begins` or `storage ends`.';
}

function model(_: RuleGraph, words: readonly string[]): Part {
  return words.length === 0 ? {} : { model: words.join(' ') };
}
