import type { PlannedWork } from './supplies-needed.js';
import type { TaskAhead } from './year-ahead.js';

/**
 * How often each task comes round in the time looked at: `likely` as often as in half of the simulated courses of use or more, `most` as often as
 * in the busiest tenth.
 *
 * What comes with work, readings or events is not in it: nobody can say how often. A task that another covers is
 * counted as often as by its own rules.
 */
export function workAhead(tasks: readonly TaskAhead[], how: 'likely' | 'most'): readonly PlannedWork[] {
  return tasks.flatMap(({ task, next, later }): readonly PlannedWork[] => {
    const rounds = next === null ? [] : [next, ...later];
    const times = how === 'most' ? rounds.length : rounds.filter(({ likely }) => likely !== null).length;
    return times === 0 ? [] : [{ task, times }];
  });
}
