/**
 * Logbooks, and the timelines that they are read as: what counts, in which order, and what it rests on.
 *
 * `UPDATE_CASES=1 npx vitest run --config tests/vitest.config.ts tests/history/timeline` writes what is now read; read it before committing it.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Entry } from '../../src/history/entry.js';
import { readTimeline } from '../../src/history/read-timeline.js';
import { formatDate } from '../../src/values/civil.js';
import { formatTime, type Day, type Moment } from '../../src/values/moment.js';
import { moment } from '../support/history.js';
import { tractor } from './machine-model.js';

const folder = new URL('../cases/history/', import.meta.url);
const updating = process.env['UPDATE_CASES'] === '1';

interface TimelineCase {
  readonly name: string;
  readonly logbook: string;
  readonly expected: string;
}

/** `# what it is about`, then cases: `## name`, entries as `date {json}`, `at date`, `==>`, the timeline. */
function read(text: string): { readonly head: string; readonly cases: readonly TimelineCase[] } {
  const [head = '', ...parts] = text.split(/^## /m);
  const cases = parts.map((part) => {
    const [logbook = '', expected = ''] = part.split(/^==>\n/m);
    return { name: logbook.split('\n', 1)[0] ?? '', logbook, expected: expected.trimEnd() };
  });
  return { head, cases };
}

/** Entries are called e1, e2, … in the order written, unless they say otherwise. */
function entriesOf(logbook: string): readonly Entry[] {
  return logbook
    .split('\n')
    .filter((line) => /^\d/.test(line))
    .map((line, index): Entry => {
      const [when = '', json = ''] = line.split(/ (?=\{)/);
      const [on = '', at] = when.split(' ');
      return { id: `e${index + 1}`, on, ...(at === undefined ? {} : { at }), ...(JSON.parse(json) as object) } as Entry;
    });
}

function answer(logbook: string, entries: readonly Entry[]): string {
  return shown(readTimeline(entries, tractor, moment(/^at (.*)$/m.exec(logbook)?.[1] ?? '')));
}

/** One thing a line, under the name of the list that it is in; lists with nothing in them are left out. */
function shown(timeline: object): string {
  return Object.entries(timeline)
    .flatMap(([list, value]) => lines(list, value as unknown))
    .join('\n');
}

function lines(list: string, value: unknown): readonly string[] {
  if (value instanceof Map) return [...value].flatMap(([key, item]) => lines(`${list} ${String(key)}`, item as unknown));
  if (Array.isArray(value)) return value.map((item: object) => `${list} ${facts(item)}`);
  if (typeof value === 'object' && value !== null && 'points' in value) return lines(list, value.points);
  const said = facts(value as object);
  return said === '' ? [] : [`${list} ${said}`];
}

function facts(object: object): string {
  return Object.entries(object)
    .flatMap(([key, value]) => (value === null || value === undefined ? [] : [`${key}=${told(key, value)}`]))
    .join(' ');
}

/** Days as dates, moments as dates and times, totals and ticks in units. */
function told(name: string, whole: unknown): string {
  const plain = (key: string, value: unknown): unknown => {
    if (value instanceof Map) return Object.fromEntries([...value].map(([one, of]) => [one, plain('ticks', of)]));
    if (isMoment(value)) return `${formatDate(value.day)}${value.minute === null ? '' : ` ${formatTime(value.minute)}`}`;
    if (['inService', 'doneBy'].includes(key) && typeof value === 'number') return formatDate(value as Day);
    if (['ticks', 'total'].includes(key) && typeof value === 'number') return value / 36_000;
    return typeof value === 'number' && !Number.isFinite(value) ? String(value) : value;
  };
  return JSON.stringify(plain(name, whole), plain);
}

function isMoment(value: unknown): value is Moment {
  return typeof value === 'object' && value !== null && 'day' in value && 'minute' in value;
}

describe.each(readdirSync(folder).filter((file) => file.endsWith('.txt')))('the timeline, in %s', (file) => {
  const path = new URL(file, folder);
  const { head, cases } = read(readFileSync(path, 'utf8'));
  if (updating) {
    const written = cases.map(({ logbook }) => `## ${logbook.trimEnd()}\n==>\n${answer(logbook, entriesOf(logbook))}\n`);
    writeFileSync(path, `${head}${written.join('\n')}`);
  }

  test.each(cases.map((each) => [each.name, each] as const))('%s', (_, { logbook, expected }) => {
    const entries = entriesOf(logbook);
    const answers = [entries, entries.toReversed()].map((each) => answer(logbook, each));
    expect(answers[1]).toBe(answers[0]);
    if (!updating) expect(answers[0]).toBe(expected);
  });
});
