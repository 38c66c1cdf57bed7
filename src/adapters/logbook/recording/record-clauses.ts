import { dayOf } from '../../../values/civil.js';
import { formatTime, parseTime } from '../../../values/moment.js';
import type { RuleGraph } from '../../../engine.js';
import type { LooseDraft } from './loose-draft.js';
import type { Part } from './draft-part.js';
import { parseNumber } from './question.js';
import { hoursOf, items, meterValues, nameList, readingValues, usedAmounts } from './record-phrases.js';

/** How the words after each clause's own word are read. */
export const clauses: ReadonlyMap<string, (graph: RuleGraph, words: readonly string[], draft: LooseDraft) => Part> = new Map([
  ['on', (_: RuleGraph, words: readonly string[]) => on(words)],
  ['at', at],
  ['by', (_: RuleGraph, words: readonly string[]) => said('by', words)],
  ['note', (_: RuleGraph, words: readonly string[]) => said('note', words)],
  ['words', (_: RuleGraph, words: readonly string[]) => said('words', words)],
  ['shift', (_: RuleGraph, words: readonly string[]) => said('shift', words)],
  ['task', (_: RuleGraph, words: readonly string[]) => said('task', words)],
  ['reads', (graph: RuleGraph, words: readonly string[]) => part(readingValues(graph, words), (readings) => ({ readings }))],
  ['used', (graph: RuleGraph, words: readonly string[]) => part(usedAmounts(graph, words), (used) => ({ used }))],
  ['took', (_: RuleGraph, words: readonly string[]) => took(words)],
  ['in', duties],
  ['with', (_: RuleGraph, words: readonly string[]) => attachments(words)],
  ['from', (_: RuleGraph, words: readonly string[]) => time('at', words)],
  ['to', (_: RuleGraph, words: readonly string[]) => time('until', words)],
  ['final', (_: RuleGraph, words: readonly string[]) => number('final', words)],
  ['initial', (_: RuleGraph, words: readonly string[]) => number('initial', words)],
  ['serial', (_: RuleGraph, words: readonly string[]) => number('serial', words)],
  ['since', (_: RuleGraph, words: readonly string[]) => day('inService', words)],
  ['before', (_: RuleGraph, words: readonly string[]) => day('doneBy', words)],
]);

function part<T extends object>(read: T | string, place: (value: T) => Part): Part {
  return typeof read === 'string' ? read : place(read);
}

function on([date = '', hour, ...more]: readonly string[]): Part {
  const minute = hour === undefined ? null : parseTime(hour);
  if (dayOf(date) === null || more.length > 0 || (hour !== undefined && minute === null))
    return `\`on ${[date, hour ?? ''].join(' ').trim()}\` is no day: say it like \`on 2026-05-13\` or \`on 2026-05-13 07:40\`.`;
  return { on: date, ...(minute === null ? {} : { at: formatTime(minute) }) };
}

/** What the meters showed; of a statement, what they showed when it was done. */
function at(graph: RuleGraph, words: readonly string[], draft: LooseDraft): Part {
  return part(meterValues(graph, words), (meters) => (draft.kind === 'stated' ? { doneAt: meters } : { meters }));
}

function said(member: 'by' | 'note' | 'words' | 'shift' | 'task', words: readonly string[]): Part {
  return words.length === 0 ? `Something is missing after \`${member}\`.` : { [member]: words.join(' ') };
}

function took(words: readonly string[]): Part {
  const hours = hoursOf(words, 'min');
  return hours === null
    ? `\`took ${words.join(' ')}\` is not a time: say it like \`took 40 min\`.`
    : { minutes: Math.round(hours * 60 * 100) / 100 };
}

/** `in dusty`, `in 2 h dusty, tall-growth`. */
function duties(graph: RuleGraph, words: readonly string[]): Part {
  const found: { duty: string; hours?: number }[] = [];
  for (const item of items(words)) {
    const duty = item.at(-1) ?? '';
    const hours = item.length === 1 ? undefined : hoursOf(item.slice(0, -1));
    if (hours === null) return notADuty(graph, item);
    found.push(hours === undefined ? { duty } : { duty, hours });
  }
  return found.length === 0 ? 'A duty is missing after `in`.' : { duties: found };
}

/** Names of several words are joined by hyphens. */
function notADuty(graph: RuleGraph, item: readonly string[]): string {
  const joined = graph.duties.find(({ id, title }) => id === item.join('-') || title.toLowerCase() === item.join(' ').toLowerCase());
  const meant = joined === undefined ? 'say it like `in dusty` or `in 2 h dusty`.' : `did you mean \`in ${joined.id}\`?`;
  return `\`in ${item.join(' ')}\` is not understood: ${meant}`;
}

function attachments(words: readonly string[]): Part {
  const names = nameList(words);
  return names === null || names.length === 0 ? 'After `with` stand attachments, with commas between them.' : { attachments: names };
}

function time(member: 'at' | 'until', [word = '', ...more]: readonly string[]): Part {
  const minute = parseTime(word);
  return minute === null || more.length > 0 ? `\`${word}\` is no time of day: say it like \`08:00\`.` : { [member]: formatTime(minute) };
}

function number(member: 'final' | 'initial' | 'serial', words: readonly string[]): Part {
  const value = parseNumber(words[0] ?? '');
  return value === null || words.length > 2 ? `After \`${member}\` stands a number.` : { [member]: value };
}

function day(member: 'inService' | 'doneBy', [word = '', ...more]: readonly string[]): Part {
  return dayOf(word) === null || more.length > 0 ? `\`${word}\` is no day: say it like \`2025-01-01\`.` : { [member]: word };
}
