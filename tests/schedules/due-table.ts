import { assess } from '../../src/assess/assess.js';
import type { DuePoint, Intent } from '../../src/assess/assessment.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';
import type { Entry } from '../../src/history/entry.js';
import { civilOf } from '../../src/values/civil.js';
import type { Day } from '../../src/values/moment.js';
import { unitsOf } from '../../src/values/ticks.js';
import { moment } from '../support/history.js';

/** The states of every task at a moment, one a line, as plain text: what a golden file holds. */
export function dueTable(graph: RuleGraph, entries: readonly Entry[], now: string, intent: Intent = {}): string {
  const assessment = assess(graph, entries, moment(now), { intent });
  const rows = assessment.tasks.map(({ task, state, due, resting }) => [task, state, resting ?? point(due)]);
  const holds = assessment.holds.map(({ truth, text }) => `${truth === 'true' ? 'hold' : 'perhaps hold'}: ${text}`);
  const notices = assessment.notices.map(({ text }) => `notice: ${text}`);
  const setAside = assessment.setAside.map(({ entry, why }) => `set aside: ${entry}, ${why}`);
  return [`${now}: ${assessment.verdict}`, ...holds, ...notices, ...setAside, ...columns(rows)].join('\n') + '\n';
}

function columns(rows: readonly (readonly string[])[]): readonly string[] {
  const widths = [0, 1].map((column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)));
  return rows.map((row) => row.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join('  ').trimEnd());
}

function point(due: DuePoint | null): string {
  if (due === null) return '';
  switch (due.on) {
    case 'meter':
      return `${due.meter} ${unitsOf(due.ticks)}`;
    case 'calendar':
      return due.goodThrough ? `good through ${date((due.day - 1) as Day)}` : date(due.day);
    case 'moment':
      return date(due.at.day);
    case 'work':
      return `work ${unitsOf(due.ticks)} h${due.duty === null ? '' : ` in ${due.duty}`}`;
  }
}

function date(day: Day): string {
  const { year, month, day: ofMonth } = civilOf(day);
  return [year, String(month).padStart(2, '0'), String(ofMonth).padStart(2, '0')].join('-');
}
