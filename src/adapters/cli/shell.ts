import type { Moment } from '../../values/moment.js';

/**
 * What the command line knows of the world around it.
 *
 * The commands take it as an argument, so that nothing else in this folder asks for the clock, the environment or the terminal.
 */
export interface Shell {
  readonly env: Readonly<Record<string, string | undefined>>;
  /** The clock on the wall, to the minute. */
  readonly now: () => Moment;
  /** The same instant in UTC, for files that want one: `2026-05-12T08:30:00Z`. */
  readonly instant?: () => string;
  /** Columns of the terminal that the answer goes to; undefined for a file or a pipe. */
  readonly columns: number | undefined;
  /** The answer. */
  readonly out: (text: string) => void;
  /** Asks the person at the terminal; `null` when they end the input. Undefined where nobody is there to ask. */
  readonly ask?: ((question: string) => Promise<string | null>) | undefined;
  /** Says how far a long work is, over what was said of it before; an empty text takes it away. Undefined where nobody watches. */
  readonly progress?: ((text: string) => void) | undefined;
  /** What has to be said besides. */
  readonly err: (text: string) => void;
}
