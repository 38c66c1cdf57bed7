import type { RuleGraph, Task } from '../../engine.js';
import type { CommandHost } from './command-host.js';
import { complain, noSuch } from './complain.js';
import { exitCode } from './exit-code.js';

/** Finds a TASK argument by its name. Where there is none it says so with what may have been meant, ends the command and gives undefined. */
export function openTask({ shell, end }: CommandHost, graph: RuleGraph, name: string): Task | undefined {
  const task = graph.tasks.find(({ id }) => id === name);
  if (task !== undefined) return task;
  complain(shell, noSuch('task', name, graph.tasks.map(({ id }) => id)));
  end(exitCode.usage);
  return undefined;
}
