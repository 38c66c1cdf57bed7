/**
 * The view, as one chain of common table expressions: readings → where meters stand → last doings → limits → what they come to →
 * groups of them, level by level.
 *
 * States are numbers inside, as in the columns of a fleet: 1 clear, 2 coming up, 3 unknown, 4 unrecorded, 5 due, 6 overdue. Wherever
 * the greatest of what came before is wanted, a running maximum finds it, so that no engine has to search one table for each row
 * of another.
 */
import type { ColumnPlan } from '../fleet/column-plan.js';
import type { Dialect } from './dialect.js';
import { literal, quoted } from './dialect.js';
import type { RuleTable, RuleTables } from './rule-tables.js';
import { groupLevel } from './group-level.js';

const TICKS = '36000';
const EPOCH = "DATE '1970-01-01'";

/** The CREATE VIEW statement. */
export function dueView(plan: ColumnPlan, { tables, height }: RuleTables, dialect: Dialect): string {
  const steps = [
    ...tables.map(ruleTable),
    points(plan),
    disputes(plan),
    STANDS,
    DOINGS,
    doingValues(plan),
    LAST_DOINGS,
    STAGES_MET,
    bases(dialect),
    DUES,
    REACHED,
    LIMITS,
    ...Array.from({ length: height }, (_, level) => groupLevel(level + 1)),
  ];
  return `CREATE OR REPLACE VIEW due AS\nWITH\n${steps.join(',\n')}\n${answer(height)};\n`;
}

/** The rules of the schedule; without any there is still a table, and it is empty. */
function ruleTable({ name, columns, rows }: RuleTable): string {
  const names = columns.map(([column]) => column).join(', ');
  const typed = columns.map(([column, type]) => `CAST(${column} AS ${type}) AS ${column}`).join(', ');
  const values = rows.length === 0 ? [columns.map(() => 'NULL')] : rows;
  const lines = values.map((row) => `    (${row.join(', ')})`).join(',\n');
  return `${name} AS (\n  SELECT ${typed}\n  FROM (VALUES\n${lines}\n  ) AS rule(${names})${rows.length === 0 ? '\n  WHERE FALSE' : ''}\n)`;
}

function ticks(value: string): string {
  return `CAST(floor(${value} * ${TICKS} + 0.5) AS BIGINT)`;
}

/** Everything that says where a meter stood: readings, and what was noted with work. */
function points(plan: ColumnPlan): string {
  const noted = plan.meters.map(
    ({ id }) => `  UNION ALL
  SELECT w.machine, ${literal(id)} AS meter, w."on" AS day, ${ticks(`w.${quoted(id)}`)} AS ticks
  FROM work_done AS w JOIN as_of ON w."on" <= as_of.day
  WHERE w.${quoted(id)} IS NOT NULL`,
  );
  const known = plan.meters.length === 0 ? 'FALSE' : `r.meter IN (${plan.meters.map(({ id }) => literal(id)).join(', ')})`;
  return `points AS (
  SELECT r.machine, r.meter, r."on" AS day, ${ticks('r.value')} AS ticks
  FROM readings AS r JOIN as_of ON r."on" <= as_of.day
  WHERE ${known}
${noted.join('\n')}
)`;
}

/** Meters whose readings fall, or on an hour meter rise faster than time passes. */
function disputes(plan: ColumnPlan): string {
  const rates = plan.meters
    .filter(({ ticksPerDay }) => ticksPerDay !== null)
    .map(({ id, ticksPerDay }) => `WHEN ${literal(id)} THEN ${ticksPerDay ?? 0}`);
  const rate = rates.length === 0 ? 'CAST(NULL AS BIGINT)' : `CAST(CASE meter ${rates.join(' ')} END AS BIGINT)`;
  return `levels AS (
  SELECT machine, meter, day, ticks, ${rate} AS rate, ticks - ${rate} * (day - ${EPOCH}) AS level
  FROM points
),
compared AS (
  SELECT machine, meter, ticks, rate, level, max(ticks) OVER earlier AS highest, min(level) OVER earlier AS lowest
  FROM levels
  WINDOW earlier AS (PARTITION BY machine, meter ORDER BY day, ticks ROWS BETWEEN UNBOUNDED PRECEDING AND 1 PRECEDING)
),
disputes AS (
  SELECT DISTINCT machine, meter
  FROM compared
  WHERE ticks < highest OR level > lowest + rate
)`;
}

const STANDS = `stands AS (
  SELECT machine, meter, max(ticks) AS ticks
  FROM points
  GROUP BY machine, meter
)`;

const DOINGS = `doings AS (
  SELECT w.machine, s.task, w."on" AS day, w.entry, w.task AS setter,
    row_number() OVER (PARTITION BY w.machine, s.task ORDER BY w."on" DESC, w.entry DESC) AS recency
  FROM work_done AS w
  JOIN as_of ON w."on" <= as_of.day
  JOIN clock_setters AS s ON s.setter = w.task
)`;

/** Where each meter stood at each doing: as noted with it, else the last reading not later. */
function doingValues(plan: ColumnPlan): string {
  const noted = plan.meters.map(({ id }) => `WHEN ${literal(id)} THEN w.${quoted(id)}`);
  const value = noted.length === 0 ? 'CAST(NULL AS DOUBLE PRECISION)' : `CASE l.meter ${noted.join(' ')} END`;
  return `asked_meters AS (
  SELECT DISTINCT task, meter FROM limit_rules WHERE meter IS NOT NULL
),
along AS (
  SELECT machine, meter, day, 0 AS turn, ticks, CAST(NULL AS BIGINT) AS noted, CAST(NULL AS TEXT) AS task, CAST(NULL AS BIGINT) AS recency
  FROM points
  UNION ALL
  SELECT d.machine, l.meter, d.day, 1, NULL, ${ticks(value)}, d.task, d.recency
  FROM doings AS d
  JOIN asked_meters AS l ON l.task = d.task
  JOIN work_done AS w ON w.machine = d.machine AND w.entry = d.entry AND w.task = d.setter
),
carried AS (
  SELECT machine, meter, task, recency, noted,
    max(ticks) OVER (PARTITION BY machine, meter ORDER BY day, turn ROWS BETWEEN UNBOUNDED PRECEDING AND CURRENT ROW) AS before
  FROM along
),
doing_values AS (
  SELECT machine, task, meter, recency, coalesce(noted, before) AS ticks
  FROM carried
  WHERE task IS NOT NULL
)`;
}

const LAST_DOINGS = `last_doings AS (
  SELECT machine, task, day FROM doings WHERE recency = 1
),
last_values AS (
  SELECT machine, task, meter, max(ticks) AS ticks FROM doing_values WHERE recency = 1 GROUP BY machine, task, meter
)`;

/** How many stages of a series are met: those that the furthest doing passed, and by any doing at least the first. */
const STAGES_MET = `furthest AS (
  SELECT machine, task, meter, max(ticks) AS ticks FROM doing_values GROUP BY machine, task, meter
),
series AS (
  SELECT m.machine, l.limit_id, f.machine IS NOT NULL AS done, m.in_service IS NOT NULL AS started, n.ticks AS stood,
    count(*) AS stages,
    CASE WHEN f.machine IS NULL THEN 0 ELSE greatest(1, count(CASE WHEN p.point <= f.ticks + l.early THEN 1 END)) END AS met
  FROM machines AS m
  CROSS JOIN limit_rules AS l
  JOIN stage_points AS p ON p.limit_id = l.limit_id
  LEFT JOIN furthest AS f ON f.machine = m.machine AND f.task = l.task AND f.meter = l.meter
  LEFT JOIN stands AS n ON n.machine = m.machine AND n.meter = l.meter
  GROUP BY m.machine, l.limit_id, f.machine, m.in_service, n.ticks
),
stages AS (
  SELECT s.machine, s.limit_id, s.done, s.started,
    CASE WHEN s.started THEN s.met >= s.stages ELSE s.done END AS behind,
    CASE WHEN s.started THEN s.met >= s.stages ELSE TRUE END AND s.done AS met_all,
    coalesce(max(CASE WHEN p.ordinal >= s.met AND p.point <= s.stood THEN p.point END), min(CASE WHEN p.ordinal >= s.met THEN p.point END)) AS due
  FROM series AS s
  JOIN stage_points AS p ON p.limit_id = s.limit_id
  GROUP BY s.machine, s.limit_id, s.done, s.started, s.met, s.stages
)`;

/** Each limit of each machine with what it counts from. A base on a meter is in ticks, on the calendar a date. */
function bases(dialect: Dialect): string {
  const from = 'coalesce(d.day, CASE WHEN l.from_start THEN m.in_service END)';
  return `bases AS (
  SELECT m.machine, l.*, n.ticks AS stood, as_of.day AS today, ${from} AS base_day,
    d.machine IS NOT NULL AS done, m.in_service IS NOT NULL AS started,
    CASE WHEN d.machine IS NOT NULL THEN v.ticks WHEN m.in_service IS NOT NULL THEN 0 END AS base_ticks,
    CASE l.rule
      WHEN 'days' THEN CAST(${from} + l.count AS DATE)
      WHEN 'months' THEN ${dialect.addMonths(from, 'l.count')}
      WHEN 'calendar-months' THEN ${dialect.lastOfMonth(dialect.addMonths(from, 'l.count'))}
    END AS due_day,
    s.due AS stage_due, s.behind, s.met_all
  FROM machines AS m
  CROSS JOIN limit_rules AS l
  CROSS JOIN as_of
  LEFT JOIN last_doings AS d ON d.machine = m.machine AND d.task = l.task
  LEFT JOIN last_values AS v ON v.machine = m.machine AND v.task = l.task AND v.meter = l.meter
  LEFT JOIN stands AS n ON n.machine = m.machine AND n.meter = l.meter
  LEFT JOIN stages AS s ON s.machine = m.machine AND s.limit_id = l.limit_id
)`;
}

/** Base, due point and now as plain numbers: ticks or day numbers. A mark is owed if it was passed and not met: the latest, else the next. */
const DUES = `marked AS (
  SELECT *,
    CAST(floor(CAST(stood AS DOUBLE PRECISION) / span) AS BIGINT) * span AS latest_mark,
    (CAST(floor(CAST(CASE WHEN done THEN base_ticks + early ELSE 0 END AS DOUBLE PRECISION) / span) AS BIGINT) + 1) * span AS next_mark
  FROM bases
),
dues AS (
  SELECT machine, task, limit_id, parent, ordinal, node, rule, meter, late, lead, hold_after, strict,
    rule = 'stages' AND coalesce(behind, FALSE) AS behind,
    rule = 'stages' AND coalesce(met_all, FALSE) AS met_all,
    CASE
      WHEN rule = 'stages' THEN NOT started AND NOT done
      WHEN rule = 'marks' THEN NOT done AND NOT started AND coalesce(latest_mark > 0, FALSE)
      ELSE NOT done AND NOT (from_start AND started)
    END AS unrecorded,
    CASE WHEN meter IS NULL THEN today - ${EPOCH} ELSE stood END AS now,
    CASE
      WHEN meter IS NULL THEN base_day - ${EPOCH}
      WHEN rule = 'stages' THEN 0
      WHEN rule = 'marks' THEN greatest(next_mark, latest_mark) - span
      ELSE base_ticks
    END AS base,
    CASE
      WHEN meter IS NULL THEN due_day - ${EPOCH}
      WHEN rule = 'stages' THEN stage_due
      WHEN rule = 'marks' THEN CASE WHEN done AND base_ticks IS NULL THEN NULL ELSE greatest(next_mark, latest_mark) END
      ELSE base_ticks + span
    END AS due
  FROM marked
)`;

/** The day on which a meter limit was first seen to be reached: the earliest reading at its due point or beyond. */
const REACHED = `beyond AS (
  SELECT machine, meter, ticks, 0 AS turn, day, CAST(NULL AS INTEGER) AS limit_id FROM points
  UNION ALL
  SELECT machine, meter, due, CASE WHEN strict THEN -1 ELSE 1 END, NULL, limit_id FROM dues WHERE meter IS NOT NULL AND due IS NOT NULL
),
reached AS (
  SELECT machine, limit_id, min(day) OVER (PARTITION BY machine, meter ORDER BY ticks DESC, turn ROWS BETWEEN UNBOUNDED PRECEDING AND CURRENT ROW) AS day
  FROM beyond
)`;

/** What each limit comes to. Only the calendar has a forecast. */
const LIMITS = `judged AS (
  SELECT d.*, r.day AS reach_day,
    CASE
      WHEN behind AND NOT unrecorded THEN 1
      WHEN unrecorded THEN 4
      WHEN base IS NULL OR now IS NULL OR due IS NULL THEN 3
      WHEN now > due + late THEN 6
      WHEN now > due OR (now = due AND NOT strict) THEN 5
      WHEN now >= due - lead THEN 2
      ELSE 1
    END AS state,
    EXISTS (SELECT 1 FROM disputes AS x WHERE x.machine = d.machine AND x.meter = d.meter) AS disputed
  FROM dues AS d
  LEFT JOIN reached AS r ON r.machine = d.machine AND r.limit_id = d.limit_id
),
level_0 AS (
  SELECT machine, task, limit_id AS id, parent, ordinal, node, state, disputed, met_all,
    CASE WHEN measured THEN due - now END AS remaining,
    CASE WHEN NOT measured THEN NULL WHEN due > base THEN CAST(now - base AS DOUBLE PRECISION) / (due - base) ELSE 1 END AS used,
    CASE WHEN measured AND meter IS NULL THEN CAST(due AS DOUBLE PRECISION) END AS forecast,
    CASE WHEN state < 5 THEN NULL WHEN meter IS NULL THEN due + CASE WHEN strict THEN 1 ELSE 0 END ELSE reach_day - ${EPOCH} END AS reach,
    coalesce(measured AND now > due + hold_after, FALSE) AS held,
    hold_after IS NOT NULL AND state IN (3, 4) AS hold_hidden
  FROM (SELECT *, state NOT IN (3, 4) AND NOT behind AS measured FROM judged) AS j
)`;

function answer(height: number): string {
  return `SELECT m.machine, t.task,
  CASE
    WHEN m.serial < t.serial_from OR m.serial > t.serial_to THEN 'resting'
    WHEN NOT t.asked THEN 'clear'
    WHEN r.disputed THEN 'unknown'
    ELSE CASE r.state WHEN 1 THEN 'clear' WHEN 2 THEN 'coming-up' WHEN 3 THEN 'unknown' WHEN 4 THEN 'unrecorded' WHEN 5 THEN 'due' WHEN 6 THEN 'overdue' END
  END AS state,
  CASE WHEN m.serial < t.serial_from OR m.serial > t.serial_to THEN NULL ELSE r.node END AS governing,
  CASE WHEN m.serial < t.serial_from OR m.serial > t.serial_to OR r.disputed THEN NULL ELSE r.remaining END AS remaining,
  CASE
    WHEN m.serial < t.serial_from OR m.serial > t.serial_to THEN NULL
    WHEN r.held AND NOT r.disputed THEN 'held'
    WHEN r.held OR (r.hold_hidden AND (r.state < 5 OR r.disputed)) THEN 'cannot-tell'
  END AS hold,
  coalesce(r.disputed, FALSE) AS disputed
FROM machines AS m
CROSS JOIN task_rules AS t
LEFT JOIN level_${height} AS r ON r.machine = m.machine AND r.task = t.task AND r.parent IS NULL
ORDER BY m.machine, t.place`;
}
