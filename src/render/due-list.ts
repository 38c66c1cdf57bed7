/**
 * What is due: the verdict on the machine first, then the tasks by state, the gravest first.
 */
import type { Assessment, TaskAssessment, TaskState } from '../assess/assessment.js';
import { namesOf } from '../explain/names.js';
import type { RuleGraph, Task } from '../graph/rule-graph.js';
import type { Timeline } from '../history/timeline.js';
import type { Titles } from './amounts-in-words.js';
import { asSentence, counted } from './count-in-words.js';
import { momentInWords } from './dates-in-words.js';
import { dueInWords, dueReason, holdInWords, leftInWords, noticeInWords } from './due-row.js';
import { notNotedSentence } from './not-noted-sentence.js';
import { safeText } from './safe-text.js';
import { suspectSentence } from './set-aside-sentence.js';
import { stateInWords, stateMark, STATES, verdictInWords } from './state-in-words.js';
import type { Style } from './style.js';
import { table } from './table.js';
import { labelled, wrap } from './wrap.js';

/** What the list shows besides. */
export interface DueListOptions {
  /** States whose tasks are listed one by one; the others are counted. All but clear and resting, unless given. */
  readonly show?: ReadonlySet<TaskState>;
  /** Shown above the verdict, such as the machine's own name. */
  readonly machine?: string;
  /** The history as it was assessed: with it, work that no outing on record explains is told, and what a reading that is not believed showed. */
  readonly timeline?: Timeline;
}

/** How many entries that were set aside are listed; the rest are counted. */
const SET_ASIDE_LISTED = 20;

const SHOWN: ReadonlySet<TaskState> = new Set<TaskState>(['overdue', 'due', 'unrecorded', 'unknown', 'coming-up']);

/**
 * The list, lines parted by `\n`, without one at the end.
 *
 * @example renderDueList(assess(graph, entries, now), graph, plainStyle(80))
 */
export function renderDueList(assessment: Assessment, graph: RuleGraph, style: Style, options: DueListOptions = {}): string {
  const show = options.show ?? SHOWN;
  const names = namesOf(graph);
  const groups = STATES.map((state) => ({ state, tasks: assessment.tasks.filter((task) => task.state === state) }));
  const listed = groups.filter(({ state, tasks }) => show.has(state) && tasks.length > 0);
  const blocks = [
    headLines(assessment, graph, style, options),
    verdictLines(assessment, names, style),
    ...listed.map(({ state, tasks }) => groupLines(state, tasks, graph, names, style)),
    countLines(
      groups.filter(({ state }) => !show.has(state)),
      style,
    ),
    notNotedLines(assessment, graph, options.timeline, style),
    setAsideLines(assessment, names, options.timeline, style),
  ];
  return blocks
    .filter((block) => block.length > 0)
    .map((block) => block.join('\n'))
    .join('\n\n');
}

function headLines(assessment: Assessment, graph: RuleGraph, style: Style, options: DueListOptions): readonly string[] {
  const machine = options.machine === undefined ? '' : `${safeText(options.machine)}: `;
  return wrap(`${machine}${safeText(graph.schedule.title)}, on ${momentInWords(assessment.now)}`, style.width).map(style.paint.quiet);
}

function verdictLines(assessment: Assessment, names: Titles, style: Style): readonly string[] {
  const { verdict, holds, notices } = assessment;
  const shown = holds.filter((hold) => hold.truth === 'true' || verdict === 'cannot-tell');
  return [
    ...wrap(`${verdictInWords(verdict)}.`, style.width).map(style.paint.strong),
    ...shown.flatMap((hold) => bullet(holdInWords(hold, names), style)),
    ...notices.flatMap((notice) => bullet(noticeInWords(notice, names), style)),
  ];
}

function notNotedLines(assessment: Assessment, graph: RuleGraph, timeline: Timeline | undefined, style: Style): readonly string[] {
  const sentence = timeline === undefined ? '' : notNotedSentence(timeline, graph, assessment, namesOf(graph));
  return sentence === '' ? [] : wrap(sentence, style.width);
}

function bullet(text: string, style: Style): readonly string[] {
  return labelled(style.unicode ? '•' : '*', text, style.width, 2);
}

function groupLines(state: TaskState, tasks: readonly TaskAssessment[], graph: RuleGraph, names: Titles, style: Style): readonly string[] {
  const titles = new Map(graph.tasks.map((task) => [task.id, task]));
  const heading = `${stateMark(state, style)}${asSentence(stateInWords(state))} (${tasks.length})`;
  const rows = tasks.map((task) => [
    taskTitle(titles.get(task.task), task),
    leftInWords(task, names),
    dueInWords(task, names),
    dueReason(task, graph, names),
  ]);
  return [style.paint.state(state, heading), ...table(rows, [34, 14, 20, 32], style.width - 2, style.paint).map((line) => `  ${line}`)];
}

function taskTitle(task: Task | undefined, { task: id }: TaskAssessment): string {
  return safeText(task?.title ?? id);
}

function countLines(
  groups: readonly { readonly state: TaskState; readonly tasks: readonly TaskAssessment[] }[],
  style: Style,
): readonly string[] {
  const counts = groups.filter(({ tasks }) => tasks.length > 0).map(({ state, tasks }) => `${tasks.length} ${stateInWords(state)}`);
  return counts.length === 0 ? [] : wrap(`${counts.join(', ')}.`, style.width).map(style.paint.quiet);
}

function setAsideLines({ setAside }: Assessment, names: Titles, timeline: Timeline | undefined, style: Style): readonly string[] {
  if (setAside.length === 0) return [];
  const suspects = new Map(timeline?.suspects.map((suspect) => [`${suspect.entry} ${suspect.meter}`, suspect]));
  const inWords = ({ entry, why, suspect }: Assessment['setAside'][number]): string => {
    const found = suspect === undefined ? undefined : suspects.get(`${entry} ${suspect.meter}`);
    return found === undefined ? `${safeText(entry)}: ${safeText(why)}` : suspectSentence(found, names);
  };
  const heading = `${counted(setAside.length, 'entry', 'entries')} of the logbook set aside, kept but not used:`;
  const listed = setAside.slice(0, SET_ASIDE_LISTED);
  const others = setAside.length - listed.length;
  return [
    ...wrap(heading, style.width),
    ...listed.flatMap((each) => bullet(inWords(each), style)),
    ...(others === 0 ? [] : bullet(`and ${counted(others, 'other', 'others')}`, style)),
  ];
}
