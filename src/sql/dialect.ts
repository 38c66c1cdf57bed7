/** What the two engines spell differently. */
export type DialectName = 'duckdb' | 'postgresql';

export interface Dialect {
  readonly name: DialectName;
  /** A date so many months after another; a day that the month lacks becomes its last. */
  readonly addMonths: (day: string, months: string) => string;
  /** The last day of the month that a date lies in. */
  readonly lastOfMonth: (day: string) => string;
}

/** The dialects by name. */
export const dialects: Readonly<Record<DialectName, Dialect>> = {
  duckdb: {
    name: 'duckdb',
    addMonths: (day, months) => `CAST(${day} + to_months(CAST(${months} AS INTEGER)) AS DATE)`,
    lastOfMonth: (day) => `last_day(${day})`,
  },
  postgresql: {
    name: 'postgresql',
    addMonths: (day, months) => `CAST(${day} + make_interval(months => CAST(${months} AS INTEGER)) AS DATE)`,
    lastOfMonth: (day) => `CAST(date_trunc('month', ${day}) + INTERVAL '1 month' - INTERVAL '1 day' AS DATE)`,
  },
};

/** A name as SQL quotes it. */
export function quoted(name: string): string {
  return `"${name.replaceAll('"', '""')}"`;
}

/** A text as SQL quotes it. */
export function literal(text: string): string {
  return `'${text.replaceAll("'", "''")}'`;
}
