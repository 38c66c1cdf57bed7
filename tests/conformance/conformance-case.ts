/**
 * The cases of the conformance suite as data: what a file holds, and how a question turns into a case. README.md describes the format.
 */
import { assess } from '../../src/assess/assess.js';
import type { Assessment, DuePoint, Intent } from '../../src/assess/assessment.js';
import { compile } from '../../src/compile/compile.js';
import type { Node, RuleGraph } from '../../src/graph/rule-graph.js';
import type { Entry } from '../../src/history/entry.js';
import { formatDate } from '../../src/values/civil.js';
import { formatTime, type Moment } from '../../src/values/moment.js';

/** A due point in the units of its meter, as a date, as a moment or as hours of work. */
export type ExpectedDue =
  | { readonly meter: string; readonly at: number }
  | { readonly date: string; readonly goodThrough?: true }
  | { readonly moment: string }
  | { readonly workHours: number; readonly duty?: string };

export interface ExpectedTask {
  readonly state: string;
  readonly due?: ExpectedDue | null;
  /** The clause that governs, in the author's words, and what kind of rule it is. */
  readonly because?: { readonly rule: string; readonly kind: string };
}

export interface ConformanceCase {
  readonly name: string;
  /** The section of docs/meaning.md that it bears on. */
  readonly section: string;
  /** Where the expected values come from. */
  readonly source?: string;
  /** Which schedule of the file's `schedules`; the first if left out. */
  readonly schedule?: string;
  readonly history: readonly Entry[];
  /** `2026-05-11` or `2026-05-11 08:30`. */
  readonly now: string;
  readonly intent?: Intent;
  readonly expected: { readonly verdict?: string; readonly tasks?: Readonly<Record<string, ExpectedTask>> };
}

export interface ConformanceFile {
  readonly format: 'duewright-conformance';
  readonly version: 1;
  /** Name → the texts of its files; the one called `main.due` is the schedule. */
  readonly schedules: Readonly<Record<string, Readonly<Record<string, string>>>>;
  readonly cases: readonly ConformanceCase[];
}

/** Compiles one of the schedules of a file; throws if it does not compile, for then the case is worth nothing. */
export function compiledFor(files: Readonly<Record<string, string>>): RuleGraph {
  const { graph, diagnostics } = compile('main.due', (path) => (Object.hasOwn(files, path) ? files[path] : undefined));
  if (graph === null) throw new Error(diagnostics.map(({ code, message }) => `${code} ${message}`).join('\n'));
  return graph;
}

/** A due point as a case writes it. */
export function writtenDue(due: DuePoint): ExpectedDue {
  switch (due.on) {
    case 'meter':
      return { meter: due.meter, at: due.ticks / 36_000 };
    case 'calendar':
      return due.goodThrough ? { date: formatDate(due.day), goodThrough: true } : { date: formatDate(due.day) };
    case 'moment':
      return { moment: writtenMoment(due.at) };
    case 'work':
      return due.duty === null ? { workHours: due.ticks / 36_000 } : { workHours: due.ticks / 36_000, duty: due.duty };
  }
}

/** A moment as a case writes it. */
export function writtenMoment({ day, minute }: Moment): string {
  return minute === null ? formatDate(day) : `${formatDate(day)} ${formatTime(minute)}`;
}

/** The kind of a rule, as a reason: the kind of its node in the rule graph. */
export function reasonKind(node: Node): string {
  return node.kind;
}

/** What an assessment says, as a case would expect it. */
export function writtenAnswer(graph: RuleGraph, assessment: Assessment): ConformanceCase['expected'] {
  const tasks = assessment.tasks.map(({ task, state, due, governing }): [string, ExpectedTask] => {
    const node = governing === null ? undefined : graph.nodes[governing];
    const because = node === undefined ? {} : { because: { rule: node.origin.text, kind: reasonKind(node) } };
    return [task, { state, due: due === null ? null : writtenDue(due), ...because }];
  });
  return { verdict: assessment.verdict, tasks: Object.fromEntries(tasks) };
}

/** The answer of the engine to a case. */
export function answerTo(graph: RuleGraph, each: Pick<ConformanceCase, 'history' | 'intent'>, now: Moment): ConformanceCase['expected'] {
  return writtenAnswer(graph, assess(graph, each.history, now, each.intent === undefined ? {} : { intent: each.intent }));
}
