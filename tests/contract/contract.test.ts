/** What a release has written stays readable: the files of tests/contract/ are never written again (docs/contract.md). */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  assess,
  duringOuting,
  explain,
  type Entry,
  type Intent,
  lookAhead,
  type Moment,
  readEntries,
  readRuleGraph,
  readTimeline,
  type RuleGraph,
  suppliesAhead,
  walkRound,
} from '../../src/index.js';
import { jsonText } from '../../src/adapters/cli/json-text.js';
import { objections } from '../support/objections.js';
import { shapeOf } from './shape-of.js';

interface Questions {
  readonly now: Moment;
  readonly intent: { readonly outing: NonNullable<Intent['outing']> & { readonly hours: number } };
  readonly explained: string;
  readonly walked: readonly string[];
}

const answers = ['assessment', 'explanation', 'walk-round', 'outing', 'outlook', 'supplies'] as const;
const versions = readdirSync(new URL('.', import.meta.url)).filter((name) => /^v\d+$/.test(name));

function textOf(version: string, name: string): string {
  return readFileSync(new URL(`${version}/${name}`, import.meta.url), 'utf8');
}

function golden(version: string, name: string): unknown {
  return JSON.parse(textOf(version, `${name}.json`));
}

function graphOf(version: string): RuleGraph {
  const read = readRuleGraph(textOf(version, 'rule-graph.json'), (json) => createHash('sha256').update(json).digest('hex'));
  if (!read.ok) throw new Error(read.problem);
  return read.graph;
}

/** What today's code answers to the questions of then, as a program would get it. */
function answersToday(version: string): Readonly<Record<(typeof answers)[number], unknown>> {
  const graph = graphOf(version);
  const entries = readEntries(textOf(version, 'entries.jsonl')).entries;
  const { now, intent, explained, walked } = golden(version, 'questions') as Questions;
  const assessment = assess(graph, entries, now, { intent });
  const outlook = lookAhead(graph, entries, now, { days: 180 });
  const today = {
    assessment,
    explanation: explain(graph, assessment, entries, explained),
    'walk-round': walkRound(graph, walked),
    outing: duringOuting(graph, entries, now, intent.outing),
    outlook,
    supplies: suppliesAhead(graph, outlook),
  };
  return JSON.parse(jsonText(today)) as typeof today;
}

/** Tasks that are due after an outing have the shape of those due before it; which of them are due is not the shape's business. */
function asBefore(path: string): string {
  return path.replace(/^\.after\[\]/, '.before[]');
}

test('there are golden files to read', () => {
  expect(versions).toContain('v1');
});

describe.each(versions)('what version %s has written', (version) => {
  const entries: readonly Entry[] = readEntries(textOf(version, 'entries.jsonl')).entries;

  test('the rule graph is read as it stands, by its fingerprint', () => {
    expect(graphOf(version).tasks.length).toBeGreaterThan(30);
    expect(objections('rule-graph', golden(version, 'rule-graph'))).toEqual([]);
  });

  test('every entry is read, validates, and is known to the schedule', () => {
    const lines = textOf(version, 'entries.jsonl').trim().split('\n');
    expect(entries).toEqual(lines.map((line) => JSON.parse(line) as Entry));
    expect(entries.flatMap((entry) => objections('history-entry', entry))).toEqual([]);
    const { now } = golden(version, 'questions') as Questions;
    expect(readTimeline(entries, graphOf(version), now).strays).toEqual([]);
  });

  test.each(answers)('the answer %s still validates', (name) => {
    expect(objections(name, golden(version, name))).toEqual([]);
  });

  const today = answersToday(version);

  test.each(answers)('whoever reads the answer %s of then reads the one of today: no member has gone or changed its type', (name) => {
    expect(objections(name, today[name])).toEqual([]);
    const [then, now] = [shapeOf(golden(version, name)), shapeOf(today[name])].map((paths) => new Set([...paths].map(asBefore)));
    expect([...(then ?? [])].filter((path) => now?.has(path) !== true)).toEqual([]);
  });

  test('the tasks stand as they stood', () => {
    const states = (answer: unknown): readonly string[] =>
      (answer as { readonly tasks: readonly { readonly task: string; readonly state: string }[] }).tasks.map(
        ({ task, state }) => `${task} ${state}`,
      );
    expect(states(today.assessment)).toEqual(states(golden(version, 'assessment')));
  });
});

test('a member that has gone, and one of another type, would be found', () => {
  const then = shapeOf({ tasks: [{ task: 'oil', due: null }, { task: 'belt', due: { on: 'meter' } }] });
  const now = shapeOf({ tasks: [{ task: 4, due: { on: 'meter' } }] });
  expect([...then].filter((path) => !now.has(path))).toEqual(['.tasks[].task string', '.tasks[].due null']);
});
