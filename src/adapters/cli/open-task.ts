import type { RuleGraph, Task } from '../../engine.js';
import type { CommandHost } from './command-host.js';
import { complain, noSuch } from './complain.js';
import { exitCode } from './exit-code.js';

/**
 * Finds a TASK argument by its name or by its title, as the due list shows it. Where there is none it says so with what may have
 * been meant, ends the command and gives undefined.
 */
export function openTask({ shell, end }: CommandHost, graph: RuleGraph, wanted: string): Task | undefined {
  const title = wanted.toLowerCase();
  const titled = graph.tasks.filter((task) => task.title.toLowerCase() === title);
  const task = graph.tasks.find(({ id }) => id === wanted) ?? (titled.length === 1 ? titled[0] : undefined);
  if (task !== undefined) return task;
  const names = (titled.length > 1 ? titled : graph.tasks).map(({ id }) => id);
  complain(shell, titled.length > 1 ? `Several tasks are called \`${wanted}\`: ${names.join(', ')}.` : noSuch('task', wanted, names));
  end(exitCode.usage);
  return undefined;
}
