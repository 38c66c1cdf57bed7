/**
 * The laws of explanations (docs/meaning.md §9) over every case of the conformance suite: worked histories, where random ones seldom come.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { assess } from '../../src/assess/assess.js';
import type { Assessment, TaskAssessment } from '../../src/assess/assessment.js';
import { applyChange, justShort } from '../../src/explain/apply-change.js';
import { explain } from '../../src/explain/explain.js';
import type { CitedEntry } from '../../src/explain/explanation.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';
import type { Entry } from '../../src/history/entry.js';
import type { Moment } from '../../src/values/moment.js';
import { compiledFor, type ConformanceCase, type ConformanceFile } from '../conformance/conformance-case.js';
import { numbersOf } from '../properties/numbers-of.js';
import { looksAtSeries } from '../properties/situation.js';
import { moment } from '../support/history.js';

const folder = new URL('../conformance/cases/', import.meta.url);

interface Asked {
  readonly graph: RuleGraph;
  readonly each: ConformanceCase;
  readonly at: (entries: readonly Entry[], now?: Moment) => Assessment;
}

function asked(suite: ConformanceFile, each: ConformanceCase, graphs: Map<string, RuleGraph>): Asked {
  const name = each.schedule ?? Object.keys(suite.schedules)[0] ?? '';
  const graph = graphs.get(name) ?? compiledFor(suite.schedules[name] ?? {});
  graphs.set(name, graph);
  const options = each.intent === undefined ? {} : { intent: each.intent };
  return { graph, each, at: (entries, now = moment(each.now)) => assess(graph, entries, now, options) };
}

function taskIn(assessment: Assessment, task: string): TaskAssessment | undefined {
  return assessment.tasks.find((each) => each.task === task);
}

/** On a meter that counts from outings a total rests on every outing before it; they are not listed (src/history/timeline.ts). */
function addsUp(graph: RuleGraph, { history, expected }: ConformanceCase): boolean {
  const counted = graph.meters.flatMap(({ id, fromOutings }) => (fromOutings ? [id] : []));
  const due = Object.values(expected.tasks ?? {}).flatMap((task) => (task.due != null && 'meter' in task.due ? [task.due.meter] : []));
  return due.some((meter) => counted.includes(meter)) && history.filter(({ kind }) => kind === 'outing').length > 1;
}

/** Tasks whose explanation is bounded by the page: that rest, or whose attachment's coming and going is not cited, or that follow a series. */
function explained({ graph, each }: Asked, { tasks }: Assessment): readonly TaskAssessment[] {
  if (addsUp(graph, each)) return [];
  const isAttached = (id: string): boolean => graph.tasks.find((task) => task.id === id)?.attachment !== undefined;
  return tasks.filter(({ task, state }) => state !== 'resting' && !isAttached(task) && !looksAtSeries(graph, task));
}

/** What is cited only so that a reading counts, or does not, matters where that reading would. */
function standsAlone({ refutes, confirms, id }: CitedEntry, all: readonly CitedEntry[]): boolean {
  return refutes === undefined && confirms === undefined && all.every((other) => other.confirms !== id);
}

describe.each(readdirSync(folder))('%s', (file) => {
  const suite = JSON.parse(readFileSync(new URL(file, folder), 'utf8')) as ConformanceFile;
  const graphs = new Map<string, RuleGraph>();

  test.each(suite.cases.map((each) => [each.name, each] as const))('what is cited suffices, and is all needed: %s', (_, each) => {
    const { graph, at } = asked(suite, each, graphs);
    const whole = at(each.history);
    for (const { task, state, due } of explained({ graph, each, at }, whole)) {
      const citations = explain(graph, whole, each.history, task).entries;
      const cited = citations.map(({ entry }) => entry);
      const alone = at(cited);
      const again = taskIn(alone, task);
      expect({ task, state: again?.state, due: again?.due }).toEqual({ task, state, due });
      const numbers = numbersOf(explain(graph, alone, cited, task));
      for (const { entry } of citations.filter((citation) => standsAlone(citation, citations))) {
        const rest = cited.filter((other) => other !== entry);
        expect(numbersOf(explain(graph, at(rest), rest, task)), `${task} without ${entry.id}`).not.toBe(numbers);
      }
    }
  });

  test.each(suite.cases.map((each) => [each.name, each] as const))('what it says would change it does: %s', (_, each) => {
    const { graph, at } = asked(suite, each, graphs);
    const whole = at(each.history);
    for (const { task } of explained({ graph, each, at }, whole)) {
      for (const change of explain(graph, whole, each.history, task).changes) {
        const after = applyChange(change, each.history, moment(each.now));
        expect({ task, change, state: taskIn(at(after.history, after.now), task)?.state }).toEqual({ task, change, state: change.becomes });
        const short = justShort(change, each.history, moment(each.now));
        expect(taskIn(at(short.history, short.now), task)?.state, `${task}, just short of ${JSON.stringify(change)}`).not.toBe(
          change.becomes,
        );
      }
    }
  });
});
