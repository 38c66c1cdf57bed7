/** What the view says against what the engine says. */
import { expect } from 'vitest';
import { assessTimeline } from '../../../src/assess/assess.js';
import type { Hold, TaskState } from '../../../src/assess/assessment.js';
import { planColumns } from '../../../src/fleet/plan-columns.js';
import type { RuleGraph } from '../../../src/graph/rule-graph.js';
import { readTimeline } from '../../../src/history/read-timeline.js';
import { type Day, onDay } from '../../../src/values/moment.js';
import { entriesOf, type MachineLog } from './random-log.js';

/** One row of the view. */
export interface DueRow {
  readonly machine: string;
  readonly task: string;
  readonly state: string;
  readonly governing: number | null;
  readonly remaining: number | null;
  readonly hold: string | null;
  readonly disputed: boolean;
}

/** The rows that the engine would give; of a meter whose readings disagree, what the view promises to say. */
export function expectedRows(graph: RuleGraph, log: MachineLog, today: Day): readonly DueRow[] {
  const now = onDay(today);
  const timeline = readTimeline(entriesOf(log), graph, now);
  const disputed = new Set(timeline.suspects.map(({ meter }) => meter));
  const { tasks, holds } = assessTimeline(graph, timeline, now, { withoutRecord: true });
  const plan = planColumns(graph);
  return tasks.flatMap(({ task, state, governing, left }, index): readonly DueRow[] => {
    if (plan.tasks[index]?.outside !== null) return [];
    const hold = holdOf(holds, task, state);
    const row = { machine: log.machine, task, state, governing, remaining: left, hold, disputed: false };
    const inDispute = [...disputed].some((meter) => metersOf(graph, task).has(meter));
    if (!inDispute) return [row];
    if (state === 'resting') return [{ ...row, disputed: true }];
    return [{ ...row, state: 'unknown', governing: Number.NaN, remaining: null, hold: 'any', disputed: true }];
  });
}

function holdOf(holds: readonly Hold[], task: string, state: TaskState): string | null {
  const own = holds.filter(({ why }) => why.is === 'late' && why.task === task);
  if (own.some(({ truth }) => truth === 'true')) return 'held';
  return own.length > 0 && state !== 'due' && state !== 'overdue' ? 'cannot-tell' : null;
}

/** The meters that a task's limits count on. */
function metersOf(graph: RuleGraph, id: string): ReadonlySet<string> {
  const found = new Set<string>();
  const visit = (node: number | undefined): void => {
    const text = node === undefined ? undefined : graph.nodes[node];
    if (text === undefined) return;
    if ('amount' in text && text.amount.on === 'meter') found.add(text.amount.meter);
    if (text.kind === 'stages') for (const amount of text.amounts) if (amount.on === 'meter') found.add(amount.meter);
    if (text.kind === 'whichever' || text.kind === 'any') text.parts.forEach(visit);
    if (text.kind === 'first') [text.first, text.then].forEach(visit);
  };
  visit(graph.tasks.find((task) => task.id === id)?.trigger);
  return found;
}

/** Fails with the first row that differs. */
export function expectSame(actual: readonly DueRow[], expected: readonly DueRow[]): void {
  expect(actual.length).toBe(expected.length);
  actual.forEach((row, i) => {
    const wanted = expected[i];
    if (wanted?.hold === 'any') expect({ ...row, governing: 0, hold: '' }).toEqual({ ...wanted, governing: 0, hold: '' });
    else expect(row).toEqual(wanted);
  });
}
