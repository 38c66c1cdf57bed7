/**
 * What lies ahead, for people: when each task falls due and what decides, how the machine is used, what goes of its fluids, what breaks again.
 */
import { namesOf } from '../../explain/names.js';
import type { RuleGraph } from '../../graph/rule-graph.js';
import type { Outlook } from '../../outlook/outlook.js';
import type { TaskAhead } from '../../outlook/year-ahead.js';
import type { Titles } from '../amounts-in-words.js';
import { DEFERENCE } from '../cautions.js';
import { listed } from '../../base/listed.js';
import { asSentence, counted, inSentence } from '../count-in-words.js';
import { dayInWords, momentInWords } from '../dates-in-words.js';
import { safeText } from '../safe-text.js';
import type { Style } from '../style.js';
import { table } from '../table.js';
import { wrap } from '../wrap.js';
import { decidesInWords } from './decides-in-words.js';
import { likelyInWords, rangeInWords } from './range-in-words.js';
import { defectRow, ENOUGH_READ, fluidRow, meterRow } from './use-in-words.js';

/** The outlook as text, lines parted by `\n`, without one at the end. */
export function renderAhead(outlook: Outlook, graph: RuleGraph, style: Style): string {
  const names = namesOf(graph);
  const { tasks, to } = outlook;
  const dated = tasks.filter(({ foreseen, next }) => foreseen !== 'now' && next !== null).sort(byDay);
  const blocks = [
    wrap(`${safeText(graph.schedule.title)}, on ${momentInWords(outlook.now)}: what lies ahead up to ${dayInWords(to)}`, style.width).map(
      style.paint.quiet,
    ),
    nowLines(tasks, names, style),
    section(
      'When each thing falls due',
      dated.map((task) => taskRow(task, to, graph, names)),
      [28, 22, 18, 32],
      style,
    ),
    restLines(tasks, to, names, style),
    section(
      'How it is used',
      outlook.meters.map((meter) => meterRow(meter, names)),
      [26, 22, 22, 30],
      style,
    ),
    section(
      'What goes of its fluids',
      outlook.fluids.map((fluid) => fluidRow(fluid, names, to)),
      [22, 22, 36, 20],
      style,
    ),
    section(
      'What was found more than once',
      outlook.defects.filter(({ found }) => found > 1).map((defect) => defectRow(defect, names)),
      [28, 18, 30, 24],
      style,
    ),
    footLines(outlook, style),
  ];
  return blocks
    .filter((block) => block.length > 0)
    .map((block) => block.join('\n'))
    .join('\n\n');
}

/** Tasks with dates in the order in which they are looked for; what may lie beyond comes last. */
export function byDay(a: TaskAhead, b: TaskAhead): number {
  return (a.next?.likely ?? Infinity) - (b.next?.likely ?? Infinity) || (a.next?.early ?? 0) - (b.next?.early ?? 0) || 0;
}

function section(title: string, rows: readonly (readonly string[])[], weights: readonly number[], style: Style): readonly string[] {
  if (rows.length === 0) return [];
  return [style.paint.strong(title), ...table(rows, weights, style.width - 2, style.paint).map((line) => `  ${line}`)];
}

function nowLines(tasks: readonly TaskAhead[], names: Titles, style: Style): readonly string[] {
  const now = tasks.filter(({ foreseen }) => foreseen === 'now');
  if (now.length === 0) return [];
  const titles = listed(now.map(({ task }) => titleOf(task, names)));
  return [style.paint.strong(`Due now (${now.length})`), ...wrap(asSentence(`${titles}.`), style.width - 2).map((line) => `  ${line}`)];
}

function titleOf(task: string, names: Titles): string {
  return inSentence(safeText(names.tasks[task] ?? task));
}

function taskRow(task: TaskAhead, to: Outlook['to'], graph: RuleGraph, names: Titles): readonly string[] {
  const { next, later, unforeseen } = task;
  if (next === null) return [];
  const again = later.length === 0 ? '' : `; then ${counted(later.length, 'more time')}`;
  const leftOut = unforeseen.length === 0 ? '' : `; left out: ${listed(unforeseen.map(safeText))}, read too seldom for a date`;
  const basis = task.n === 0 ? '' : ` (${counted(task.n, 'day')} ${task.fromOutings ? 'worked' : 'read'})`;
  return [
    safeText(names.tasks[task.task] ?? task.task),
    ...(task.foreseen === 'use-unknown'
      ? [`${dayInWords(next.likely ?? to)} at the latest`, '']
      : [rangeInWords(next, to), likelyInWords(next, to)]),
    `${decidesInWords(task, graph, names)}${basis}${leftOut}${again}`,
  ];
}

/** What has no date, and why: counted where that is ordinary, named where something could be done about it. */
function restLines(tasks: readonly TaskAhead[], to: Outlook['to'], names: Titles, style: Style): readonly string[] {
  const of = (foreseen: TaskAhead['foreseen']): readonly TaskAhead[] => tasks.filter((task) => task.foreseen === foreseen);
  const named = (some: readonly TaskAhead[]): string => listed(some.map(({ task }) => titleOf(task, names)));
  const beyond = tasks.filter(({ foreseen, next }) => (foreseen === 'simulated' || foreseen === 'calendar') && next === null);
  const [unknown, useless] = [of('unknown'), of('use-unknown').filter(({ next }) => next === null)];
  const sentences = [
    beyond.length === 0 ? '' : `By use and the calendar hardly before ${dayInWords(to)}: ${named(beyond)}.`,
    unknown.length === 0 ? '' : `Unknown, because a reading or a record is missing: ${named(unknown)}.`,
    useless.length === 0 ? '' : `No date, because their meter was read too seldom: ${named(useless)}.`,
    tasks.some(({ unforeseen }) => unforeseen.length > 0) ? `A date by a meter takes ${ENOUGH_READ}.` : '',
    of('no-date').length === 0
      ? ''
      : `${counted(of('no-date').length, 'task')} without a date: they come with work, a reading or an event.`,
    of('resting').length === 0 ? '' : `${counted(of('resting').length, 'task')} resting.`,
  ];
  return sentences.filter((sentence) => sentence !== '').flatMap((sentence) => wrap(sentence, style.width));
}

function footLines({ tasks, fluids, meters }: Outlook, style: Style): readonly string[] {
  const simulated = new Set(tasks.filter(({ foreseen }) => foreseen === 'simulated').map(({ method }) => method));
  const sentences = [
    simulated.size === 0 ? '' : `Dates: ${listed([...simulated])}; a range holds in four cases of five, if the use goes on as it was.`,
    meters.some(({ rate }) => rate !== null) ? `Use: ${[...new Set(meters.flatMap(({ rate }) => rate?.method ?? []))].join('; ')}.` : '',
    fluids.some(({ loss }) => loss !== null) ? `Fluids: ${fluids.flatMap(({ loss }) => loss?.litresPerHour.method ?? [])[0] ?? ''}.` : '',
    'Each thing is taken to be done on the day on which it falls due.',
    DEFERENCE,
  ];
  return sentences.filter((sentence) => sentence !== '').flatMap((sentence) => wrap(sentence, style.width).map(style.paint.quiet));
}
