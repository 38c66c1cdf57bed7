import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { assess } from '../../src/assess/assess.js';
import type { Intent } from '../../src/assess/assessment.js';
import { explain } from '../../src/explain/explain.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';
import type { Entry } from '../../src/history/entry.js';
import { readTimeline } from '../../src/history/read-timeline.js';
import { plainStyle } from '../../src/render/style.js';
import { renderWhy } from '../../src/render/why.js';
import { compileText } from '../support/compile-text.js';
import { moment } from '../support/history.js';

const FOLDER = new URL('../cases/why/', import.meta.url);
const UPDATE = process.env['UPDATE_CASES'] === '1';

interface WhyCase {
  readonly name: string;
  readonly question: string;
  readonly expected: string;
}

/** `## name`, entries as `date {json}`, `at date time {intent}`, `why task`, `==>`, what is shown. */
function readCases(text: string): { readonly head: string; readonly schedule: string; readonly cases: readonly WhyCase[] } {
  const [head = '', ...parts] = text.split(/^## /m);
  const cases = parts.map((part) => {
    const [name = ''] = part.split('\n', 1);
    const [question = '', expected = ''] = part.slice(name.length + 1).split(/^==>\n/m);
    return { name, question, expected: expected.trimEnd() };
  });
  return { head, schedule: head.slice(head.indexOf('--- schedule\n') + '--- schedule\n'.length), cases };
}

function answer(graph: RuleGraph, question: string): string {
  const lines = question.trim().split('\n');
  const entries = lines
    .filter((line) => /^\d/.test(line))
    .map((line, index): Entry => {
      const space = line.indexOf(' ');
      return { id: `e${index + 1}`, on: line.slice(0, space), ...(JSON.parse(line.slice(space + 1)) as object) } as Entry;
    });
  const at = lines.find((line) => line.startsWith('at '))?.slice(3) ?? '';
  const task = lines.find((line) => line.startsWith('why '))?.slice(4) ?? '';
  const [when = '', intent] = at.split(/ (?=\{)/);
  const options = intent === undefined ? {} : { intent: JSON.parse(intent) as Intent };
  const now = moment(when);
  const timeline = readTimeline(entries, graph, now);
  return renderWhy(explain(graph, assess(graph, entries, now, options), entries, task), plainStyle(88), { timeline });
}

describe.each(readdirSync(FOLDER).filter((file) => file.endsWith('.txt')))('why, in %s', (file) => {
  const path = new URL(file, FOLDER);
  const { head, schedule, cases } = readCases(readFileSync(path, 'utf8'));
  const graph = compileText(schedule);
  if (UPDATE)
    writeFileSync(
      path,
      `${head}${cases.map(({ name, question }) => `## ${name}\n${question}==>\n${answer(graph, question)}\n`).join('\n')}`,
    );

  test.each(cases)('$name', ({ question, expected }) => {
    const actual = answer(graph, question);
    if (!UPDATE) expect(actual).toBe(expected);
    expect(actual).not.toMatch(/undefined|NaN|null|\[object|Infinity/);
    expect(actual).not.toMatch(/\b1 (days|hours|months|years|minutes|weeks)\b/);
    for (const line of actual.split('\n')) expect(line.length).toBeLessThanOrEqual(88);
  });
});
