import type { RuleGraph } from '../../../engine.js';

/**
 * What lies on the author's desk: the files of a schedule, and a machine's logbook.
 */
export interface Desk {
  /** Path → text. The paths are those by which schedules name each other. */
  readonly files: Readonly<Record<string, string>>;
  /** The schedule that is asked. */
  readonly main: string;
  /** The path of the logbook among the files. */
  readonly logbook: string;
  /** The schedule compiled beforehand, so that the first answer need not wait for the compiler. */
  readonly graph?: RuleGraph;
}

/** What is supposed of the machine, besides what its logbook says. */
export interface Supposing {
  /** Days since 1970-01-01; `null` for the second day after the logbook ends. */
  readonly day: number | null;
  /** A meter that shows so much more than what is on record. */
  readonly meter: string | null;
  readonly more: number;
  readonly works: boolean;
  readonly hours: number;
  readonly duties: readonly string[];
  readonly attachments: readonly string[];
}

/** Work is intended, of which nothing more is said. */
export const USUAL: Supposing = { day: null, meter: null, more: 0, works: true, hours: 3, duties: [], attachments: [] };

/** True for the paths of logbooks. */
export function isLogbook(path: string): boolean {
  return path.endsWith('.jsonl');
}
