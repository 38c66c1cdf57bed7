import type { ColumnPlan } from '../fleet/column-plan.js';
import { quoted } from './dialect.js';

/** The tables that the view reads. `work_done` has a column for each meter that is read. */
export function inputTables(plan: ColumnPlan): string {
  const meters = plan.meters.map(({ id }) => `,\n  ${quoted(id)} DOUBLE PRECISION`).join('');
  return `-- One row: the day that the view speaks of. What is dated after it does not count.
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
  "on" DATE NOT NULL${meters}
);
`;
}
