/**
 * What a run writes down: for each task its state, and for each node that was looked at what it came to and on which entries. `explain` reads
 * this and computes nothing a second time, so what stands here is what an owner is told.
 *
 * `UPDATE_CASES=1 npx vitest run --config tests/vitest.config.ts tests/assess/record` writes what is now recorded; read it before committing it.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { assess } from '../../src/assess/assess.js';
import type { Assessment, AssessOptions, Intent } from '../../src/assess/assessment.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';
import type { Entry } from '../../src/history/entry.js';
import { formatDate } from '../../src/values/civil.js';
import { formatTime, type Day, type Moment } from '../../src/values/moment.js';
import { compileText } from '../support/compile-text.js';
import { moment } from '../support/history.js';

const folder = new URL('../cases/assess/', import.meta.url);
const updating = process.env['UPDATE_CASES'] === '1';

interface RecordCase {
  readonly name: string;
  readonly question: string;
  readonly expected: string;
}

/**
 * `# what it is about`, the declarations after `--- schedule`, other files after `--- their name`, then cases: `## name`, entries as `date {json}`, `at date {intent}`, `==>`, the record.
 * The first case has nothing on record; the others show what is not as it is there.
 */
function read(text: string): { readonly head: string; readonly files: readonly string[]; readonly cases: readonly RecordCase[] } {
  const [head = '', ...parts] = text.split(/^## /m);
  const cases = parts.map((part) => {
    const [question = '', expected = ''] = part.split(/^==>\n/m);
    return { name: question.split('\n', 1)[0] ?? '', question, expected: expected.trimEnd() };
  });
  return { head, files: head.split(/^--- /m).slice(1), cases };
}

/** Entries are called e1, e2, … in the order written, unless they say otherwise. */
function asked(graph: RuleGraph, question: string): Assessment {
  const [, ...lines] = question.trim().split('\n');
  const entries = lines
    .filter((line) => /^\d/.test(line))
    .map((line, index): Entry => {
      const [when = '', json = ''] = line.split(/ (?=\{)/);
      const [on = '', at] = when.split(' ');
      return { id: `e${index + 1}`, on, ...(at === undefined ? {} : { at }), ...(JSON.parse(json) as object) } as Entry;
    });
  const [when = '', wanted] = (lines.find((line) => line.startsWith('at '))?.slice(3) ?? '').split(/ (?=\{)/);
  const { rates, ...intent } = JSON.parse(wanted ?? '{}') as Intent & { readonly rates?: Readonly<Record<string, number>> };
  const options: AssessOptions = { intent, ...(rates === undefined ? {} : { rates: new Map(Object.entries(rates)) }) };
  return assess(graph, entries, moment(when), options);
}

/** The record as lines. Tasks that stand as they do in `plain`, where nothing is on record, are left out. */
function shown(graph: RuleGraph, assessment: Assessment, plain: Assessment | null): string {
  const { verdict, holds, notices, tasks, setAside, stopRecord } = assessment;
  const nodes = (list: Assessment['stopRecord']): readonly string[] =>
    list.map(({ node, ...rest }) => `  ${graph.nodes[node]?.kind ?? '?'} ${node} ${facts(rest)}`);
  const task = ({ task: id, state, ...rest }: Assessment['tasks'][number], from: Assessment): string =>
    [`${id} ${state} ${facts(rest)}`.trimEnd(), ...nodes(from.record[id] ?? [])].join('\n');
  const usual = new Set(plain?.tasks.map((each) => task(each, plain)));
  return [
    `verdict ${verdict}`,
    ...holds.map((hold) => `hold ${facts(hold)}`),
    ...notices.map((notice) => `notice ${facts(notice)}`),
    ...setAside.map((each) => `set aside ${facts(each)}`),
    ...nodes(stopRecord),
    ...tasks.map((each) => task(each, assessment)).filter((lines) => !usual.has(lines)),
  ].join('\n');
}

/** Members that say something: without those that are null, and empty lists of what is missing. */
function facts(object: object): string {
  return Object.entries(object)
    .flatMap(([key, value]) => (value === null || (key === 'missing' && JSON.stringify(value) === '[]') ? [] : [`${key}=${told(value)}`]))
    .join(' ');
}

/** JSON with days as dates, moments as dates and times, and ticks in units. */
function told(value: unknown): string {
  return JSON.stringify(value, (key, member: unknown) => {
    if (isMoment(member)) return `${formatDate(member.day)}${member.minute === null ? '' : ` ${formatTime(member.minute)}`}`;
    if (key === 'day' && typeof member === 'number') return formatDate(member as Day);
    return key === 'ticks' && typeof member === 'number' ? member / 36_000 : member;
  });
}

function isMoment(value: unknown): value is Moment {
  return typeof value === 'object' && value !== null && 'day' in value && 'minute' in value;
}

describe.each(readdirSync(folder).filter((file) => file.endsWith('.txt')))('the record, in %s', (file) => {
  const path = new URL(file, folder);
  const { head, files, cases } = read(readFileSync(path, 'utf8'));
  const texts = files.map((each) => [each.slice(0, each.indexOf('\n')), each.slice(each.indexOf('\n') + 1)] as const);
  const { schedule = '', ...others } = Object.fromEntries(texts);
  const graph = compileText(schedule, others);
  const answer = (question: string): string => {
    const [first] = cases;
    const isFirst = first === undefined || first.question === question;
    return shown(graph, asked(graph, question), isFirst ? null : asked(graph, first.question));
  };
  if (updating) {
    const written = cases.map(({ question }) => `## ${question.trimEnd()}\n==>\n${answer(question)}\n`);
    writeFileSync(path, `${head}${written.join('\n')}`);
  }

  test.each(cases.map((each) => [each.name, each] as const))('%s', (_, { question, expected }) => {
    if (!updating) expect(answer(question)).toBe(expected);
    expect(question).toMatch(/^at /m);
  });
});
