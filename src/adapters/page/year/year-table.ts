/**
 * What the drawings show, as tables: for screen readers, for copying, for those who like numbers better.
 */
import type { Outlook } from '../../../ahead.js';
import type { RuleGraph } from '../../../engine.js';
import { namesOf } from '../../../engine.js';
import { counted } from '../../../render/count-in-words.js';
import { dayInWords } from '../../../render/dates-in-words.js';
import { escapeHtml } from '../../../render/escape-html.js';
import { byDay } from '../../../render/outlook/ahead.js';
import { decidesInWords } from '../../../render/outlook/decides-in-words.js';
import { likelyInWords, rangeInWords } from '../../../render/outlook/range-in-words.js';
import { daysNoted } from '../../../render/outlook/use-in-words.js';
import { stateInWords } from '../../../render/state-in-words.js';
import type { Service } from './services.js';

/** A table with a caption and a heading row; every cell is escaped. */
export function htmlTable(caption: string, heads: readonly string[], rows: readonly (readonly string[])[]): string {
  const head = heads.map((each) => `<th scope="col">${escapeHtml(each)}</th>`).join('');
  const body = rows.map(
    ([first = '', ...rest]) =>
      `<tr><th scope="row">${escapeHtml(first)}</th>${rest.map((cell) => `<td>${escapeHtml(cell)}</td>`).join('')}</tr>`,
  );
  const name = escapeHtml(caption);
  return `<div class="wide" role="region" aria-label="${name}" tabindex="0"><table><caption>${name}</caption><thead><tr>${head}</tr></thead><tbody>\n${body.join('\n')}\n</tbody></table></div>`;
}

/** Every task that has a date, and what it rests on. */
export function yearTable({ tasks, to }: Outlook, graph: RuleGraph): string {
  const names = namesOf(graph);
  const dated = tasks.filter(({ next, foreseen }) => next !== null && foreseen !== 'now').sort(byDay);
  const rows = [...tasks.filter(({ foreseen }) => foreseen === 'now'), ...dated].flatMap((task): readonly (readonly string[])[] => {
    const { next, later, n, fromOutings } = task;
    if (next === null) return [];
    const isNow = task.foreseen === 'now';
    return [
      [
        names.tasks[task.task] ?? task.task,
        isNow ? `now: ${stateInWords(task.state)}` : rangeInWords(next, to),
        isNow ? '' : likelyInWords(next, to),
        decidesInWords(task, graph, names),
        later.length === 0 ? '' : counted(later.length, 'time'),
        isNow ? '' : n === 0 ? 'the calendar' : daysNoted(n, fromOutings),
      ],
    ];
  });
  return htmlTable('When each thing falls due', ['Task', 'Falls due', 'Likeliest', 'What will decide', 'Again by then', 'Rests on'], rows);
}

/** Every service with the days on which it was done. */
export function servicesTable(services: readonly Service[]): string {
  const rows = services.map(({ title, done }) => [title, done.map(doneInWords).join('; ')]);
  return htmlTable('Services done', ['Service', 'Done on'], rows);
}

function doneInWords({ day, timing }: Service['done'][number]): string {
  return `${dayInWords(day)}${timing === 'late' ? ' (late)' : ''}`;
}
