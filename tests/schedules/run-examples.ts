/**
 * Runs the worked examples that a schedule carries: each line's acts become entries, each `expect` is held against an
 * assessment at the line's moment.
 */
import type { Assessment, DuePoint, TaskAssessment } from '../../src/assess/assessment.js';
import { assess } from '../../src/assess/assess.js';
import { assertNever } from '../../src/base/assert-never.js';
import type { Span } from '../../src/base/span.js';
import type { AskedNode, RuleGraph } from '../../src/graph/rule-graph.js';
import type { ActNode, BecauseNode, ExampleLineNode, ExampleNode, ExpectNode, PointNode } from '../../src/syntax/tree.js';
import { civilOf, dayOf } from '../../src/values/civil.js';
import { type Moment, parseTime } from '../../src/values/moment.js';
import { parseTicks, unitsOf } from '../../src/values/ticks.js';
import { newLine, nothingTold, tell } from './example-history.js';

/** One expectation that did not hold. */
export interface Failure {
  readonly example: string;
  /** The line of the example and what was expected, as the author wrote them. */
  readonly expected: string;
  readonly actual: string;
}

/** What a run came to. */
export interface ExamplesRun {
  readonly examples: number;
  readonly expectations: number;
  readonly failures: readonly Failure[];
}

/** Gives the author's own words for a span, for messages and to compare `because` with the rule that governs. */
export type WordsAt = (at: Span) => string;

/** Runs examples one after the other; each begins with an empty history. */
export function runExamples(graph: RuleGraph, examples: readonly ExampleNode[], words: WordsAt): ExamplesRun {
  const failures: Failure[] = [];
  let expectations = 0;
  for (const example of examples) {
    let told = nothingTold;
    for (const line of example.lines) {
      told = newLine(told);
      for (const item of line.items) {
        if (!isExpect(item)) {
          told = tell(told, line, item, graph);
          continue;
        }
        expectations += 1;
        const assessment = assess(graph, told.entries, momentOf(line), { intent: told.intent });
        const actual = mismatch(graph, assessment, item, words);
        if (actual !== null) failures.push({ example: example.title.text, expected: `${line.date.text} ${fold(words(item.at))}`, actual });
      }
    }
  }
  return { examples: examples.length, expectations, failures };
}

function isExpect(item: ActNode | ExpectNode): item is ExpectNode {
  return item.kind === 'expect-machine' || item.kind === 'expect-task';
}

function momentOf(line: ExampleLineNode): Moment {
  const day = dayOf(line.date.text);
  if (day === null) throw new Error(`no such day: ${line.date.text}`);
  return { day, minute: line.time === undefined ? null : parseTime(line.time.text) };
}

/** Null if the expectation holds, else what was found instead. */
function mismatch(graph: RuleGraph, assessment: Assessment, expect: ExpectNode, words: WordsAt): string | null {
  if (expect.kind === 'expect-machine') return assessment.verdict === expect.verdict.text ? null : `machine ${assessment.verdict}${holdsIn(assessment)}`;
  const task = assessment.tasks.find(({ task: id }) => id === expect.task.text);
  if (task === undefined) return `no task ${expect.task.text}`;
  const because = expect.because === undefined || governs(graph, task, expect.because, words);
  const until = expect.until.every((point) => duePoints(assessment, task, expect.until.length).some((due) => isPoint(due, point)));
  if (task.state === expect.state && because && until) return null;
  return `${task.task} ${task.state}, due ${inWords(task.due)}, governed by "${governing(graph, task)}"${missingIn(task)}`;
}

/** The governing rule's own words contain the reason's, white space folded; of a list of stages the reason names one. */
function governs(graph: RuleGraph, task: TaskAssessment, because: BecauseNode, words: WordsAt): boolean {
  const node = task.governing === null ? undefined : graph.nodes[task.governing];
  if (because.kind === 'because-name' && node?.kind === 'asked') return asks(graph, node, because.name.text);
  const reason = fold(words(because.at)).replace(/^because /, '');
  if (node?.kind !== 'stages' || because.kind !== 'because-limit' || because.limit.kind !== 'interval') return governing(graph, task).includes(reason);
  const { number, unit } = because.limit.span;
  return governing(graph, task).split(/, | of | after | at |^at /).includes(`${number.text} ${unit.text}`);
}

/** Whether what asked for the task is the defect, the task or the instrument of that name. */
function asks(graph: RuleGraph, { by }: AskedNode, name: string): boolean {
  if (by.is === 'defect') return by.defect === name;
  return by.task === name || graph.tasks.find(({ id }) => id === by.task)?.reads[by.reads]?.instrument.id === name;
}

function governing(graph: RuleGraph, task: TaskAssessment): string {
  return task.governing === null ? '' : fold(graph.nodes[task.governing]?.origin.text ?? '');
}

/** With one point named, the governing due point; with several, all that take part. */
function duePoints(assessment: Assessment, task: TaskAssessment, named: number): readonly (DuePoint | null)[] {
  if (named <= 1) return [task.due];
  return [task.due, ...(assessment.record[task.task] ?? []).map((seen) => seen.limit?.due ?? null)];
}

function isPoint(due: DuePoint | null, point: PointNode): boolean {
  if (due === null) return false;
  if (point.kind === 'point-meter') return due.on === 'meter' && due.meter === point.meter.text && due.ticks === parseTicks(point.value.number.text);
  const day = due.on === 'calendar' ? due.day : due.on === 'moment' ? due.at.day : null;
  return day === dayOf(point.date.text);
}

function inWords(due: DuePoint | null): string {
  if (due === null) return 'at no point';
  switch (due.on) {
    case 'meter':
      return `${due.meter} ${unitsOf(due.ticks)}`;
    case 'calendar':
      return isoOf(due.day);
    case 'moment':
      return isoOf(due.at.day);
    case 'work':
      return `after ${unitsOf(due.ticks)} h of work`;
    default:
      return assertNever(due);
  }
}

function isoOf(day: Parameters<typeof civilOf>[0]): string {
  const { year, month, day: ofMonth } = civilOf(day);
  return `${year}-${String(month).padStart(2, '0')}-${String(ofMonth).padStart(2, '0')}`;
}

function holdsIn({ holds }: Assessment): string {
  return holds.map((hold) => `; ${hold.truth === 'true' ? 'held' : 'perhaps held'}: ${hold.text}`).join('');
}

function missingIn({ missing }: TaskAssessment): string {
  return missing.length === 0 ? '' : `, missing ${JSON.stringify(missing)}`;
}

function fold(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}
