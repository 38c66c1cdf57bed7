-- One row: the day that the view speaks of. What is dated after it does not count.
CREATE TABLE IF NOT EXISTS as_of (day DATE NOT NULL);
CREATE TABLE IF NOT EXISTS machines (
  machine TEXT PRIMARY KEY,
  in_service DATE,
  serial BIGINT
);
-- What a meter showed, as a life total in the meter's unit.
CREATE TABLE IF NOT EXISTS readings (
  machine TEXT NOT NULL,
  meter TEXT NOT NULL,
  "on" DATE NOT NULL,
  value DOUBLE PRECISION NOT NULL
);
-- One row for each task of an entry, with the meters noted in it.
CREATE TABLE IF NOT EXISTS work_done (
  machine TEXT NOT NULL,
  entry TEXT NOT NULL,
  task TEXT NOT NULL,
  "on" DATE NOT NULL,
  "engine" DOUBLE PRECISION,
  "bales" DOUBLE PRECISION
);

CREATE OR REPLACE VIEW due AS
WITH
task_rules AS (
  SELECT CAST(task AS TEXT) AS task, CAST(place AS INTEGER) AS place, CAST(serial_from AS BIGINT) AS serial_from, CAST(serial_to AS BIGINT) AS serial_to, CAST(asked AS BOOLEAN) AS asked
  FROM (VALUES
    ('oil', 0, NULL, NULL, true),
    ('twine', 2, NULL, NULL, true)
  ) AS rule(task, place, serial_from, serial_to, asked)
),
clock_setters AS (
  SELECT CAST(task AS TEXT) AS task, CAST(setter AS TEXT) AS setter
  FROM (VALUES
    ('oil', 'oil'),
    ('twine', 'twine')
  ) AS rule(task, setter)
),
limit_rules AS (
  SELECT CAST(task AS TEXT) AS task, CAST(limit_id AS INTEGER) AS limit_id, CAST(parent AS INTEGER) AS parent, CAST(ordinal AS INTEGER) AS ordinal, CAST(node AS INTEGER) AS node, CAST(rule AS TEXT) AS rule, CAST(meter AS TEXT) AS meter, CAST(span AS BIGINT) AS span, CAST(count AS INTEGER) AS count, CAST(early AS BIGINT) AS early, CAST(late AS BIGINT) AS late, CAST(lead AS BIGINT) AS lead, CAST(hold_after AS BIGINT) AS hold_after, CAST(strict AS BOOLEAN) AS strict, CAST(from_start AS BOOLEAN) AS from_start
  FROM (VALUES
    ('oil', 0, 4, 0, 0, 'stages', 'engine', NULL, NULL, 0, 360000, 180000, 360000, false, true),
    ('oil', 1, 3, 0, 1, 'meter-interval', 'engine', 3600000, NULL, 0, 360000, 360000, 360000, false, false),
    ('oil', 2, 3, 1, 2, 'months', NULL, NULL, 12, 0, 0, 14, 0, false, false),
    ('twine', 5, NULL, 0, 6, 'meter-interval', 'bales', 18000000, NULL, 0, 0, 1800000, NULL, false, true)
  ) AS rule(task, limit_id, parent, ordinal, node, rule, meter, span, count, early, late, lead, hold_after, strict, from_start)
),
stage_points AS (
  SELECT CAST(limit_id AS INTEGER) AS limit_id, CAST(ordinal AS INTEGER) AS ordinal, CAST(point AS BIGINT) AS point
  FROM (VALUES
    (0, 0, 1800000)
  ) AS rule(limit_id, ordinal, point)
),
group_rules AS (
  SELECT CAST(group_id AS INTEGER) AS group_id, CAST(parent AS INTEGER) AS parent, CAST(ordinal AS INTEGER) AS ordinal, CAST(height AS INTEGER) AS height, CAST(mode AS TEXT) AS mode, CAST(has_then AS BOOLEAN) AS has_then
  FROM (VALUES
    (4, NULL, 0, 2, 'then', true),
    (3, 4, 1, 1, 'first', false)
  ) AS rule(group_id, parent, ordinal, height, mode, has_then)
),
points AS (
  SELECT r.machine, r.meter, r."on" AS day, CAST(floor(r.value * 36000 + 0.5) AS BIGINT) AS ticks
  FROM readings AS r JOIN as_of ON r."on" <= as_of.day
  WHERE r.meter IN ('engine', 'bales')
  UNION ALL
  SELECT w.machine, 'engine' AS meter, w."on" AS day, CAST(floor(w."engine" * 36000 + 0.5) AS BIGINT) AS ticks
  FROM work_done AS w JOIN as_of ON w."on" <= as_of.day
  WHERE w."engine" IS NOT NULL
  UNION ALL
  SELECT w.machine, 'bales' AS meter, w."on" AS day, CAST(floor(w."bales" * 36000 + 0.5) AS BIGINT) AS ticks
  FROM work_done AS w JOIN as_of ON w."on" <= as_of.day
  WHERE w."bales" IS NOT NULL
),
levels AS (
  SELECT machine, meter, day, ticks, CAST(CASE meter WHEN 'engine' THEN 864000 END AS BIGINT) AS rate, ticks - CAST(CASE meter WHEN 'engine' THEN 864000 END AS BIGINT) * (day - DATE '1970-01-01') AS level
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
),
stands AS (
  SELECT machine, meter, max(ticks) AS ticks
  FROM points
  GROUP BY machine, meter
),
doings AS (
  SELECT w.machine, s.task, w."on" AS day, w.entry, w.task AS setter,
    row_number() OVER (PARTITION BY w.machine, s.task ORDER BY w."on" DESC, w.entry DESC) AS recency
  FROM work_done AS w
  JOIN as_of ON w."on" <= as_of.day
  JOIN clock_setters AS s ON s.setter = w.task
),
asked_meters AS (
  SELECT DISTINCT task, meter FROM limit_rules WHERE meter IS NOT NULL
),
along AS (
  SELECT machine, meter, day, 0 AS turn, ticks, CAST(NULL AS BIGINT) AS noted, CAST(NULL AS TEXT) AS task, CAST(NULL AS BIGINT) AS recency
  FROM points
  UNION ALL
  SELECT d.machine, l.meter, d.day, 1, NULL, CAST(floor(CASE l.meter WHEN 'engine' THEN w."engine" WHEN 'bales' THEN w."bales" END * 36000 + 0.5) AS BIGINT), d.task, d.recency
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
),
last_doings AS (
  SELECT machine, task, day FROM doings WHERE recency = 1
),
last_values AS (
  SELECT machine, task, meter, max(ticks) AS ticks FROM doing_values WHERE recency = 1 GROUP BY machine, task, meter
),
furthest AS (
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
),
bases AS (
  SELECT m.machine, l.*, n.ticks AS stood, as_of.day AS today, coalesce(d.day, CASE WHEN l.from_start THEN m.in_service END) AS base_day,
    d.machine IS NOT NULL AS done, m.in_service IS NOT NULL AS started,
    CASE WHEN d.machine IS NOT NULL THEN v.ticks WHEN m.in_service IS NOT NULL THEN 0 END AS base_ticks,
    CASE l.rule
      WHEN 'days' THEN CAST(coalesce(d.day, CASE WHEN l.from_start THEN m.in_service END) + l.count AS DATE)
      WHEN 'months' THEN CAST(coalesce(d.day, CASE WHEN l.from_start THEN m.in_service END) + to_months(CAST(l.count AS INTEGER)) AS DATE)
      WHEN 'calendar-months' THEN last_day(CAST(coalesce(d.day, CASE WHEN l.from_start THEN m.in_service END) + to_months(CAST(l.count AS INTEGER)) AS DATE))
    END AS due_day,
    s.due AS stage_due, s.behind, s.met_all
  FROM machines AS m
  CROSS JOIN limit_rules AS l
  CROSS JOIN as_of
  LEFT JOIN last_doings AS d ON d.machine = m.machine AND d.task = l.task
  LEFT JOIN last_values AS v ON v.machine = m.machine AND v.task = l.task AND v.meter = l.meter
  LEFT JOIN stands AS n ON n.machine = m.machine AND n.meter = l.meter
  LEFT JOIN stages AS s ON s.machine = m.machine AND s.limit_id = l.limit_id
),
marked AS (
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
    CASE WHEN meter IS NULL THEN today - DATE '1970-01-01' ELSE stood END AS now,
    CASE
      WHEN meter IS NULL THEN base_day - DATE '1970-01-01'
      WHEN rule = 'stages' THEN 0
      WHEN rule = 'marks' THEN greatest(next_mark, latest_mark) - span
      ELSE base_ticks
    END AS base,
    CASE
      WHEN meter IS NULL THEN due_day - DATE '1970-01-01'
      WHEN rule = 'stages' THEN stage_due
      WHEN rule = 'marks' THEN CASE WHEN done AND base_ticks IS NULL THEN NULL ELSE greatest(next_mark, latest_mark) END
      ELSE base_ticks + span
    END AS due
  FROM marked
),
beyond AS (
  SELECT machine, meter, ticks, 0 AS turn, day, CAST(NULL AS INTEGER) AS limit_id FROM points
  UNION ALL
  SELECT machine, meter, due, CASE WHEN strict THEN -1 ELSE 1 END, NULL, limit_id FROM dues WHERE meter IS NOT NULL AND due IS NOT NULL
),
reached AS (
  SELECT machine, limit_id, min(day) OVER (PARTITION BY machine, meter ORDER BY ticks DESC, turn ROWS BETWEEN UNBOUNDED PRECEDING AND CURRENT ROW) AS day
  FROM beyond
),
judged AS (
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
    CASE WHEN state < 5 THEN NULL WHEN meter IS NULL THEN due + CASE WHEN strict THEN 1 ELSE 0 END ELSE reach_day - DATE '1970-01-01' END AS reach,
    coalesce(measured AND now > due + hold_after, FALSE) AS held,
    hold_after IS NOT NULL AND state IN (3, 4) AS hold_hidden
  FROM (SELECT *, state NOT IN (3, 4) AND NOT behind AS measured FROM judged) AS j
),
parts_1 AS (
  SELECT p.*, g.group_id, g.parent AS group_parent, g.ordinal AS group_ordinal, g.mode, g.has_then,
    CASE WHEN g.mode = 'last' THEN -1 ELSE 1 END AS sign,
    CASE g.mode WHEN 'last' THEN min(p.state) OVER whole WHEN 'first' THEN max(p.state) OVER whole ELSE p.state END AS whole_state,
    bool_and(p.met_all) OVER whole AS all_met,
    bool_or(p.disputed) OVER whole AS any_disputed,
    bool_or(CASE WHEN g.mode = 'then' AND p.ordinal > 0 THEN FALSE ELSE p.met_all END) OVER whole AS first_met,
    bool_or(p.held) OVER whole AS any_held,
    bool_and(p.held) OVER whole AS all_held,
    bool_or(p.hold_hidden) OVER whole AS any_hidden,
    bool_and(p.held OR p.hold_hidden) OVER whole AS all_stopped
  FROM level_0 AS p
  JOIN group_rules AS g ON g.group_id = p.parent AND g.height = 1
  WINDOW whole AS (PARTITION BY p.machine, p.parent)
),
speaking_1 AS (
  SELECT *, bool_and(used IS NULL OR forecast IS NOT NULL) OVER (PARTITION BY machine, group_id) AS by_forecast
  FROM parts_1
  WHERE CASE mode WHEN 'then' THEN ordinal = CASE WHEN first_met AND has_then THEN 1 ELSE 0 END ELSE state = whole_state END
),
ranked_1 AS (
  SELECT *, row_number() OVER (
    PARTITION BY machine, group_id
    ORDER BY sign * CASE
      WHEN state >= 5 THEN coalesce(CAST(reach AS DOUBLE PRECISION), 9007199254740991)
      WHEN by_forecast THEN coalesce(forecast, 9007199254740991)
      ELSE coalesce(-used, 9007199254740991)
    END, ordinal) AS rank
  FROM speaking_1
),
level_1 AS (
  SELECT * FROM level_0
  UNION ALL
  SELECT machine, task, group_id, group_parent, group_ordinal, node,
    CASE WHEN mode = 'then' AND first_met AND NOT has_then THEN 1 ELSE state END,
    any_disputed,
    mode <> 'then' AND all_met,
    CASE WHEN mode = 'then' AND first_met AND NOT has_then THEN NULL ELSE remaining END,
    CASE WHEN mode = 'then' AND first_met AND NOT has_then THEN NULL ELSE used END,
    CASE WHEN mode = 'then' AND first_met AND NOT has_then THEN NULL ELSE forecast END,
    CASE WHEN mode = 'then' AND first_met AND NOT has_then THEN NULL ELSE reach END,
    CASE mode WHEN 'first' THEN any_held WHEN 'last' THEN all_stopped AND all_held ELSE held AND NOT (first_met AND NOT has_then) END,
    CASE mode
      WHEN 'first' THEN any_hidden
      WHEN 'last' THEN all_stopped AND (any_hidden OR NOT all_held)
      ELSE hold_hidden AND NOT (first_met AND NOT has_then)
    END
  FROM ranked_1
  WHERE rank = 1
),
parts_2 AS (
  SELECT p.*, g.group_id, g.parent AS group_parent, g.ordinal AS group_ordinal, g.mode, g.has_then,
    CASE WHEN g.mode = 'last' THEN -1 ELSE 1 END AS sign,
    CASE g.mode WHEN 'last' THEN min(p.state) OVER whole WHEN 'first' THEN max(p.state) OVER whole ELSE p.state END AS whole_state,
    bool_and(p.met_all) OVER whole AS all_met,
    bool_or(p.disputed) OVER whole AS any_disputed,
    bool_or(CASE WHEN g.mode = 'then' AND p.ordinal > 0 THEN FALSE ELSE p.met_all END) OVER whole AS first_met,
    bool_or(p.held) OVER whole AS any_held,
    bool_and(p.held) OVER whole AS all_held,
    bool_or(p.hold_hidden) OVER whole AS any_hidden,
    bool_and(p.held OR p.hold_hidden) OVER whole AS all_stopped
  FROM level_1 AS p
  JOIN group_rules AS g ON g.group_id = p.parent AND g.height = 2
  WINDOW whole AS (PARTITION BY p.machine, p.parent)
),
speaking_2 AS (
  SELECT *, bool_and(used IS NULL OR forecast IS NOT NULL) OVER (PARTITION BY machine, group_id) AS by_forecast
  FROM parts_2
  WHERE CASE mode WHEN 'then' THEN ordinal = CASE WHEN first_met AND has_then THEN 1 ELSE 0 END ELSE state = whole_state END
),
ranked_2 AS (
  SELECT *, row_number() OVER (
    PARTITION BY machine, group_id
    ORDER BY sign * CASE
      WHEN state >= 5 THEN coalesce(CAST(reach AS DOUBLE PRECISION), 9007199254740991)
      WHEN by_forecast THEN coalesce(forecast, 9007199254740991)
      ELSE coalesce(-used, 9007199254740991)
    END, ordinal) AS rank
  FROM speaking_2
),
level_2 AS (
  SELECT * FROM level_1
  UNION ALL
  SELECT machine, task, group_id, group_parent, group_ordinal, node,
    CASE WHEN mode = 'then' AND first_met AND NOT has_then THEN 1 ELSE state END,
    any_disputed,
    mode <> 'then' AND all_met,
    CASE WHEN mode = 'then' AND first_met AND NOT has_then THEN NULL ELSE remaining END,
    CASE WHEN mode = 'then' AND first_met AND NOT has_then THEN NULL ELSE used END,
    CASE WHEN mode = 'then' AND first_met AND NOT has_then THEN NULL ELSE forecast END,
    CASE WHEN mode = 'then' AND first_met AND NOT has_then THEN NULL ELSE reach END,
    CASE mode WHEN 'first' THEN any_held WHEN 'last' THEN all_stopped AND all_held ELSE held AND NOT (first_met AND NOT has_then) END,
    CASE mode
      WHEN 'first' THEN any_hidden
      WHEN 'last' THEN all_stopped AND (any_hidden OR NOT all_held)
      ELSE hold_hidden AND NOT (first_met AND NOT has_then)
    END
  FROM ranked_2
  WHERE rank = 1
)
SELECT m.machine, t.task,
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
LEFT JOIN level_2 AS r ON r.machine = m.machine AND r.task = t.task AND r.parent IS NULL
ORDER BY m.machine, t.place;
