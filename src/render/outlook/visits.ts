/**
 * Proposed visits, for people: on which day, what to do, what to open up, what it takes.
 */
import { namesOf } from '../../explain/names.js';
import type { RuleGraph } from '../../graph/rule-graph.js';
import type { VisitAhead, VisitsAhead } from '../../outlook/visits-ahead.js';
import type { Day, Moment } from '../../values/moment.js';
import { durationText } from '../../values/number-text.js';
import { TICKS_PER_MINUTE } from '../../values/ticks.js';
import { DEFERENCE } from '../cautions.js';
import { listed } from '../../base/listed.js';
import { counted, inSentence } from '../count-in-words.js';
import { dayInWords, momentInWords } from '../dates-in-words.js';
import { safeText } from '../safe-text.js';
import type { Style } from '../style.js';
import { labelled, wrap } from '../wrap.js';
import { supplyInWords, timeInWords } from './takes-in-words.js';

/** The visits as text, lines parted by `\n`, without one at the end. */
export function renderVisits(
  visits: VisitsAhead,
  { now, to }: { readonly now: Moment; readonly to: Day },
  graph: RuleGraph,
  style: Style,
): string {
  const head = `${safeText(graph.schedule.title)}, on ${momentInWords(now)}: visits proposed up to ${dayInWords(to)}`;
  const blocks = [
    wrap(head, style.width).map(style.paint.quiet),
    visits.visits.length === 0 ? ['Nothing has a date in that time.'] : [],
    ...visits.visits.map((visit) => visitLines(visit, now.day, graph, style)),
    footLines(visits, style),
  ];
  return blocks
    .filter((block) => block.length > 0)
    .map((block) => block.join('\n'))
    .join('\n\n');
}

function visitLines({ day, tasks, opens, takes }: VisitAhead, now: Day, graph: RuleGraph, style: Style): readonly string[] {
  const names = namesOf(graph);
  const steps = graph.access.steps.filter(({ id }) => opens.includes(id)).map(({ title }) => inSentence(safeText(title)));
  const line = (label: string, text: string): readonly string[] =>
    text === '' ? [] : labelled(label, text, style.width - 2, 8).map((each) => `  ${each}`);
  return [
    style.paint.strong(`${day === now ? 'Now' : dayInWords(day)} (${counted(tasks.length, 'task')}, ${timeInWords(takes)})`),
    ...tasks.flatMap((task) =>
      labelled(style.unicode ? '•' : '*', `${safeText(names.tasks[task] ?? task)}${mechanic(task, graph)}`, style.width - 2, 2).map(
        (each) => `  ${each}`,
      ),
    ),
    ...line('Opens', listed(steps)),
    ...line('Takes', listed(takes.supplies.map(supplyInWords))),
    ...line('Tools', takes.tools.map(safeText).join(', ')),
  ];
}

function mechanic(task: string, graph: RuleGraph): string {
  return graph.tasks.find(({ id }) => id === task)?.site.qualified === true ? ' (for a qualified mechanic)' : '';
}

function footLines({ visits, opening, thrownAway, proved, method }: VisitsAhead, style: Style): readonly string[] {
  const sentences = [
    visits.length === 0
      ? ''
      : `${counted(visits.length, 'visit')}, ${durationText(opening * TICKS_PER_MINUTE)} of opening up and closing again, ${counted(thrownAway, 'day')} of life given away by doing tasks early${proved ? '' : '; the search was cut short, and there may be a better plan'}. Method: ${method}.`,
    'The next doing of each task only; what comes with work is left out. In what order it is safe to open up, the walk-round says.',
    DEFERENCE,
  ];
  return sentences.filter((sentence) => sentence !== '').flatMap((sentence) => wrap(sentence, style.width).map(style.paint.quiet));
}
