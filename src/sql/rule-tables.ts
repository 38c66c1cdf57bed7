/** A schedule's rules as the rows of small tables that are written into the view. */
import { assertNever } from '../base/assert-never.js';
import type { ColumnPlan, LimitPlan, TaskPlan, TriggerPlan } from '../fleet/column-plan.js';
import { literal } from './dialect.js';

/** One table: its columns with their types, and its rows as SQL literals. */
export interface RuleTable {
  readonly name: string;
  readonly columns: readonly (readonly [name: string, type: 'TEXT' | 'INTEGER' | 'BIGINT' | 'BOOLEAN'])[];
  readonly rows: readonly (readonly string[])[];
}

export interface RuleTables {
  readonly tables: readonly RuleTable[];
  /** How many groups lie above one another at most. */
  readonly height: number;
}

interface Placed {
  readonly task: TaskPlan;
  readonly plan: TriggerPlan;
  readonly parent: number | null;
  readonly ordinal: number;
  readonly height: number;
}

const NULL = 'NULL';

/** The tables of the tasks that are judged in columns. */
export function ruleTables(plan: ColumnPlan): RuleTables {
  const tasks = plan.tasks.filter(({ outside }) => outside === null);
  const placed = tasks.flatMap((task) => (task.trigger === null ? [] : place(task, task.trigger, null, 0)));
  const limits = placed.flatMap((each) => (each.plan.kind === 'limit' ? [{ ...each, plan: each.plan }] : []));
  return {
    height: placed.reduce((most, { height }) => Math.max(most, height), 0),
    tables: [
      {
        name: 'task_rules',
        columns: [
          ['task', 'TEXT'],
          ['place', 'INTEGER'],
          ['serial_from', 'BIGINT'],
          ['serial_to', 'BIGINT'],
          ['asked', 'BOOLEAN'],
        ],
        rows: tasks.map(({ id, index, serial, trigger }) => [
          literal(id),
          String(index),
          or(serial?.from),
          or(serial?.to),
          String(trigger !== null),
        ]),
      },
      {
        name: 'clock_setters',
        columns: [
          ['task', 'TEXT'],
          ['setter', 'TEXT'],
        ],
        rows: tasks.flatMap(({ id, sources }) => sources.map((source) => [literal(id), literal(plan.tasks[source]?.id ?? '')])),
      },
      {
        name: 'limit_rules',
        columns: [...LIMIT_COLUMNS],
        rows: limits.map((each) => limitRow(plan, each)),
      },
      {
        name: 'stage_points',
        columns: [
          ['limit_id', 'INTEGER'],
          ['ordinal', 'INTEGER'],
          ['point', 'BIGINT'],
        ],
        rows: limits.flatMap(({ plan: { rule, register } }) =>
          rule.is === 'stages' ? rule.points.map((point, i) => [String(register), String(i), String(point)]) : [],
        ),
      },
      {
        name: 'group_rules',
        columns: [
          ['group_id', 'INTEGER'],
          ['parent', 'INTEGER'],
          ['ordinal', 'INTEGER'],
          ['height', 'INTEGER'],
          ['mode', 'TEXT'],
          ['has_then', 'BOOLEAN'],
        ],
        rows: placed.flatMap(groupRow),
      },
    ],
  };
}

const LIMIT_COLUMNS = [
  ['task', 'TEXT'],
  ['limit_id', 'INTEGER'],
  ['parent', 'INTEGER'],
  ['ordinal', 'INTEGER'],
  ['node', 'INTEGER'],
  ['rule', 'TEXT'],
  ['meter', 'TEXT'],
  ['span', 'BIGINT'],
  ['count', 'INTEGER'],
  ['early', 'BIGINT'],
  ['late', 'BIGINT'],
  ['lead', 'BIGINT'],
  ['hold_after', 'BIGINT'],
  ['strict', 'BOOLEAN'],
  ['from_start', 'BOOLEAN'],
] as const;

/** A plan and all below it, the groups with their height. */
function place(task: TaskPlan, plan: TriggerPlan, parent: number | null, ordinal: number): readonly Placed[] {
  const below = partsOf(plan).flatMap((part, i) => place(task, part, plan.register, i));
  const height = plan.kind === 'limit' ? 0 : 1 + below.reduce((most, each) => Math.max(most, each.height), 0);
  return [{ task, plan, parent, ordinal, height }, ...below];
}

function partsOf(plan: TriggerPlan): readonly TriggerPlan[] {
  switch (plan.kind) {
    case 'limit':
      return [];
    case 'group':
      return plan.parts;
    case 'first':
      return plan.then === null ? [plan.first] : [plan.first, plan.then];
    default:
      return assertNever(plan);
  }
}

function limitRow(columns: ColumnPlan, { task, plan, parent, ordinal }: Placed & { readonly plan: LimitPlan }): readonly string[] {
  const { rule, register, node, late, lead, holdAfter, strict, fromStart } = plan;
  const meter = rule.is === 'calendar-interval' ? NULL : literal(columns.meters[rule.meter]?.id ?? '');
  const early = 'early' in rule ? rule.early : 0;
  const head = [literal(task.id), String(register), or(parent), String(ordinal), String(node)];
  return [
    ...head,
    literal(nameOf(rule)),
    meter,
    spanOf(rule),
    countOf(rule),
    String(early),
    String(late),
    String(lead),
    or(holdAfter),
    String(strict),
    String(fromStart),
  ];
}

function nameOf(rule: LimitPlan['rule']): string {
  if (rule.is !== 'calendar-interval') return rule.is;
  return rule.amount.unit;
}

function spanOf(rule: LimitPlan['rule']): string {
  switch (rule.is) {
    case 'meter-interval':
    case 'marks':
      return String(rule.ticks);
    case 'calendar-interval':
    case 'stages':
      return NULL;
    default:
      return assertNever(rule);
  }
}

function countOf(rule: LimitPlan['rule']): string {
  return rule.is === 'calendar-interval' ? String(rule.amount.count) : NULL;
}

function groupRow({ plan, parent, ordinal, height }: Placed): readonly (readonly string[])[] {
  if (plan.kind === 'limit') return [];
  const mode = plan.kind === 'first' ? 'then' : plan.mode;
  const hasThen = plan.kind === 'first' && plan.then !== null;
  return [[String(plan.register), or(parent), String(ordinal), String(height), literal(mode), String(hasThen)]];
}

function or(value: number | null | undefined): string {
  return value === null || value === undefined ? NULL : String(value);
}
