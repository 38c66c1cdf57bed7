/**
 * The groups of one height, from all that lies below them (docs/meaning.md §4, "Whichever first"): the state of the whole, then among
 * the parts in that state the one reached earliest, else forecast earliest, else the most used; for *last* the opposite. Ties go to
 * the part written first.
 */
export function groupLevel(level: number): string {
  const below = `level_${level - 1}`;
  return `parts_${level} AS (
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
  FROM ${below} AS p
  JOIN group_rules AS g ON g.group_id = p.parent AND g.height = ${level}
  WINDOW whole AS (PARTITION BY p.machine, p.parent)
),
speaking_${level} AS (
  SELECT *, bool_and(used IS NULL OR forecast IS NOT NULL) OVER (PARTITION BY machine, group_id) AS by_forecast
  FROM parts_${level}
  WHERE CASE mode WHEN 'then' THEN ordinal = CASE WHEN first_met AND has_then THEN 1 ELSE 0 END ELSE state = whole_state END
),
ranked_${level} AS (
  SELECT *, row_number() OVER (
    PARTITION BY machine, group_id
    ORDER BY sign * CASE
      WHEN state >= 5 THEN coalesce(CAST(reach AS DOUBLE PRECISION), 9007199254740991)
      WHEN by_forecast THEN coalesce(forecast, 9007199254740991)
      ELSE coalesce(-used, 9007199254740991)
    END, ordinal) AS rank
  FROM speaking_${level}
),
level_${level} AS (
  SELECT * FROM ${below}
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
  FROM ranked_${level}
  WHERE rank = 1
)`;
}
