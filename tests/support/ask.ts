import { assess } from '../../src/assess/assess.js';
import type { Assessment, AssessOptions, DuePoint, Observation } from '../../src/assess/assessment.js';
import type { Node } from '../../src/graph/rule-graph.js';
import type { Entry } from '../../src/history/entry.js';
import { formatDate } from '../../src/values/civil.js';
import { formatTime } from '../../src/values/moment.js';
import { compileText } from './compile-text.js';
import { moment } from './history.js';

/** What declarations and a history come to, and how to look at it. */
export interface Asked {
  readonly assessment: Assessment;
  /** State and due point of a task: `due 1300 h`, `clear 2026-05-31`, `unknown`. */
  readonly stands: (task?: string) => string;
  /** What the first node of a kind came to in the record of a task. */
  readonly seen: (kind: Node['kind'], task?: string) => Observation;
  /** The words of the clause that governs a task. */
  readonly because: (task?: string) => string | undefined;
}

/**
 * Compiles declarations (`t` is the task that is meant unless another is named; `files` are those that they use) and asks how things stand.
 *
 * @example ask('task t "Task" every 10 days', history(['2026-05-01', done('t')]), '2026-05-11').stands() // 'due 2026-05-11'
 */
export function ask(
  declarations: string,
  entries: readonly Entry[],
  now: string,
  options: AssessOptions = {},
  files: Readonly<Record<string, string>> = {},
): Asked {
  const graph = compileText(declarations, files);
  const assessment = assess(graph, entries, moment(now), options);
  const taskOf = (task: string) => assessment.tasks.find((each) => each.task === task);
  return {
    assessment,
    stands: (task = 't') => [taskOf(task)?.state, pointText(taskOf(task)?.due ?? null)].filter(Boolean).join(' '),
    seen: (kind, task = 't') => {
      const found = assessment.record[task]?.find(({ node }) => graph.nodes[node]?.kind === kind);
      if (found === undefined) throw new Error(`nothing of ${kind} in the record of ${task}`);
      return found;
    },
    because: (task = 't') => graph.nodes[taskOf(task)?.governing ?? -1]?.origin.text,
  };
}

/** `1300 h`, `2026-05-31`, `2026-05-31 08:30`. */
function pointText(due: DuePoint | null): string {
  if (due === null) return '';
  if (due.on === 'calendar') return formatDate(due.day);
  if (due.on === 'moment') return `${formatDate(due.at.day)}${due.at.minute === null ? '' : ` ${formatTime(due.at.minute)}`}`;
  return `${due.ticks / 36_000} h`;
}
