import type { Command } from 'commander';
import type { ExitCode } from './exit-code.js';
import type { Shell } from './shell.js';

/** What a command's file is given to hang its command on. */
export interface CommandHost {
  readonly program: Command;
  readonly shell: Shell;
  /** Says how the command ended. */
  readonly end: (code: ExitCode) => void;
}
