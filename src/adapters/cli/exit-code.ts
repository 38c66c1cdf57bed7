/**
 * How a command ends, for the script that started it.
 *
 * Documented in docs/command-line.md; a number never changes its meaning.
 */
export const exitCode = {
  /** Done; nothing stands in the way. */
  fine: 0,
  /** Done, and the answer is no: the schedule has errors, the machine is held, or it cannot be told whether it is. */
  no: 1,
  /** The command line itself does not make sense: an unknown option, task, duty, a date that does not exist. */
  usage: 2,
  /** A file cannot be read or cannot be used. */
  input: 3,
  /** A fault of ours. */
  fault: 70,
} as const;

export type ExitCode = (typeof exitCode)[keyof typeof exitCode];
