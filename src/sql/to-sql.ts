import { planColumns } from '../fleet/plan-columns.js';
import type { RuleGraph } from '../graph/rule-graph.js';
import { type DialectName, dialects } from './dialect.js';
import { dueView } from './due-view.js';
import { ruleTables } from './rule-tables.js';
import { inputTables } from './input-tables.js';

/** A task whose rules SQL cannot say, and the clause that it fails on, in the schedule's own words. */
export interface Refused {
  readonly task: string;
  readonly because: string;
  /** Where the task stands in the schedule. */
  readonly at: { readonly path: string; readonly line: number };
}

/** The due rules of a schedule as SQL, and what of them could not be said. */
export interface ScheduleSql {
  /** CREATE TABLE statements for what the view reads, where there are none yet. */
  readonly tables: string;
  /** CREATE VIEW statement: `due(machine, task, state, governing, remaining, hold, disputed)`. */
  readonly view: string;
  /** Tasks that the view leaves out. */
  readonly refused: readonly Refused[];
}

/**
 * A schedule's due rules as a view over tables of machines, readings and work done (docs/fleets.md).
 *
 * It says of each machine and task what `assess` says, as of the day in `as_of`: the state, the node of the governing limit, and what
 * remains of it in ticks (1/36000 of the meter's unit) or days. The same interval rules that go into columns go into SQL; the others
 * are refused by name. Where readings of a meter disagree SQL does not settle which of them count: the tasks that look at it are
 * `unknown` and marked as disputed.
 *
 * @example const { tables, view, refused } = toSql(graph, 'duckdb');
 */
export function toSql(graph: RuleGraph, dialect: DialectName): ScheduleSql {
  const plan = planColumns(graph);
  return {
    tables: inputTables(plan),
    view: dueView(plan, ruleTables(plan), dialects[dialect]),
    refused: plan.tasks.flatMap(({ id, index, outside }) =>
      outside === null ? [] : [{ task: id, because: outside, at: placeOf(graph, index) }],
    ),
  };
}

function placeOf({ tasks, sources }: RuleGraph, task: number): Refused['at'] {
  const origin = tasks[task]?.origin;
  return { path: sources[origin?.source ?? 0]?.path ?? '', line: origin?.line ?? 1 };
}
