import { titledLike } from '../../base/titled-like.js';
import type { RuleGraph, Task } from '../../engine.js';
import { quoted } from '../../render/amounts-in-words.js';
import type { CommandHost } from './command-host.js';
import { complain, noSuch } from './complain.js';
import { exitCode } from './exit-code.js';

/** More tasks than this are no help as an answer. */
const MOST_TOLD = 12;

/**
 * Finds a TASK argument by its name, by its title, as the due list shows it, or by some words of these where they fit one task only. Where there is
 * none it says so with what may have been meant, ends the command and gives undefined.
 */
export function openTask({ shell, end }: CommandHost, graph: RuleGraph, wanted: string): Task | undefined {
  const meant = tasksMeant(graph, wanted);
  if (meant.length === 1) return meant[0];
  complain(shell, ...(meant.length > 1 ? several(wanted, meant) : [noSuch('task', wanted, namesOfTasks(graph))]));
  end(exitCode.usage);
  return undefined;
}

/** The one of that name; else those of that title; else those that the words fit. */
function tasksMeant({ tasks }: RuleGraph, wanted: string): readonly Task[] {
  const named = tasks.find(({ id }) => id === wanted);
  if (named !== undefined) return [named];
  const title = wanted.toLowerCase();
  const titled = tasks.filter((task) => task.title.toLowerCase() === title);
  return titled.length > 0 ? titled : titledLike(wanted, tasks);
}

function namesOfTasks({ tasks }: RuleGraph): readonly string[] {
  return tasks.map(({ id }) => id);
}

function several(wanted: string, meant: readonly Task[]): readonly string[] {
  const left = meant.length - MOST_TOLD;
  return [
    `\`${wanted}\` fits several tasks. Say one of:`,
    ...meant.slice(0, MOST_TOLD).map((task) => `  ${task.id}  ${quoted(task.title, task.id)}`),
    ...(left > 0 ? [`  and ${left} more`] : []),
  ];
}
