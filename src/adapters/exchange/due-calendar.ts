import type { Assessment, DuePoint } from '../../engine.js';
import type { RuleGraph } from '../../engine.js';
import { formatDate } from '../../values/civil.js';
import type { Day } from '../../values/moment.js';
import { calendarUid } from './calendar-file.js';
import type { CalendarItem } from './calendar-file.js';

/** When a task that falls due by a meter is expected, in days; see the outlook. */
export interface ExpectedDays {
  readonly from: Day;
  readonly to: Day;
  readonly likely: Day;
}

/**
 * What an assessment puts into the calendar: every task with a due day, and those due by a meter for which `expected` has a forecast.
 *
 * A forecast stands on its most likely day and says so, with its range; a due day that is past stands on its own day.
 *
 * @param machine as for {@link calendarUid}.
 */
export function dueCalendar(
  graph: RuleGraph,
  assessment: Assessment,
  machine: string,
  expected: ReadonlyMap<string, ExpectedDays> = new Map(),
  remindHours: readonly number[] = [7 * 24, -7],
): readonly CalendarItem[] {
  const titles = new Map(graph.tasks.map((task) => [task.id, task.title]));
  return assessment.tasks.flatMap(({ task, due }): readonly CalendarItem[] => {
    const known = dueDay(due);
    const forecast = known === null ? expected.get(task) : undefined;
    const day = known ?? forecast?.likely;
    if (day === undefined) return [];
    return [
      { uid: calendarUid(machine, task), title: titles.get(task) ?? task, description: describe(graph, forecast), from: day, remindHours },
    ];
  });
}

function dueDay(due: DuePoint | null): Day | null {
  if (due?.on === 'calendar') return due.day;
  return due?.on === 'moment' ? due.at.day : null;
}

function describe(graph: RuleGraph, forecast: ExpectedDays | undefined): string {
  const { title, edition } = graph.schedule;
  const by = `By the schedule “${title}”${edition === undefined ? '' : `, edition ${edition.number}`}.`;
  const estimate =
    forecast === undefined ? '' : `\nAn estimate from use so far: between ${formatDate(forecast.from)} and ${formatDate(forecast.to)}.`;
  return `${by}${estimate}\nThe machine's own manual, local rules and qualified mechanics come first.`;
}
