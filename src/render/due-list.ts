/**
 * What is due: the verdict on the machine first, then the tasks by state, the gravest first.
 */
import type { Assessment, Hold, TaskAssessment, TaskState } from '../assess/assessment.js';
import { namesOf } from '../explain/names.js';
import type { NodeId, RuleGraph, Task } from '../graph/rule-graph.js';
import { lengthInWords, pointInWords } from './amounts-in-words.js';
import type { Titles } from './amounts-in-words.js';
import { asSentence, counted } from './count-in-words.js';
import { missingSentence } from './missing-sentence.js';
import { momentInWords } from './dates-in-words.js';
import { nodeInWords } from './rule-in-words.js';
import { safeText } from './safe-text.js';
import { stateInWords, stateMark, STATES, verdictInWords } from './state-in-words.js';
import type { Style } from './style.js';
import { table } from './table.js';
import { labelled, wrap } from './wrap.js';

export interface DueListOptions {
  /** States whose tasks are listed one by one; the others are counted. All but clear and resting, unless given. */
  readonly show?: ReadonlySet<TaskState>;
  /** Shown above the verdict, such as the machine's own name. */
  readonly machine?: string;
}

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
    setAsideLines(assessment, style),
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
    ...notices.flatMap((notice) => bullet(`“${safeText(notice.text)}”`, style)),
  ];
}

function holdInWords(hold: Hold, names: Titles): string {
  const missing =
    hold.truth === 'unknown' && hold.missing.length > 0 ? `: ${hold.missing.map((each) => missingSentence(each, names)).join(', ')}` : '';
  return `“${safeText(hold.text)}” (${holdSource(hold, names)}${missing})`;
}

function holdSource({ why }: Hold, names: Titles): string {
  switch (why.is) {
    case 'stop':
      return safeText(why.stop);
    case 'reading':
      return safeText(names.gauges[why.instrument]?.title ?? names.dipsticks[why.instrument]?.title ?? why.instrument);
    case 'defect':
      return `${safeText(names.defects[why.defect] ?? why.defect)}, ${safeText(why.class)}`;
    case 'late':
      return safeText(names.tasks[why.task] ?? why.task);
  }
}

function bullet(text: string, style: Style): readonly string[] {
  return labelled(style.unicode ? '•' : '*', text, style.width, 2);
}

function groupLines(state: TaskState, tasks: readonly TaskAssessment[], graph: RuleGraph, names: Titles, style: Style): readonly string[] {
  const titles = new Map(graph.tasks.map((task) => [task.id, task]));
  const heading = `${stateMark(state, style)}${asSentence(stateInWords(state))} (${tasks.length})`;
  const rows = tasks.map((task) => [
    taskTitle(titles.get(task.task), task),
    left(task, names),
    due(task, names),
    reason(task, titles.get(task.task), graph, names),
  ]);
  return [style.paint.state(state, heading), ...table(rows, [34, 14, 20, 32], style.width - 2, style.paint).map((line) => `  ${line}`)];
}

function taskTitle(task: Task | undefined, { task: id }: TaskAssessment): string {
  return safeText(task?.title ?? id);
}

/** `4 h past`, `now`, `20 h left`; nothing where there is no limit. */
function left({ due: point, left: length }: TaskAssessment, names: Titles): string {
  if (point === null || length === null) return '';
  if (length === 0) return 'now';
  return `${lengthInWords(length, point, names)} ${length > 0 ? 'left' : 'past'}`;
}

function due({ due: point }: TaskAssessment, names: Titles): string {
  if (point === null) return '';
  return point.on === 'calendar' && point.goodThrough ? `good to ${pointInWords(point, names)}` : pointInWords(point, names);
}

/** The rule that governs, or what is not known. */
function reason(task: TaskAssessment, definition: Task | undefined, graph: RuleGraph, names: Titles): string {
  if (task.resting !== null) return restingReason(task, definition, graph, names);
  if (task.state === 'unknown' && task.missing[0] !== undefined) return missingSentence(task.missing[0], names);
  if (task.state === 'unrecorded') return 'no record that it was ever done';
  return task.governing === null ? '' : nodeWords(task.governing, graph, names);
}

function restingReason(task: TaskAssessment, definition: Task | undefined, graph: RuleGraph, names: Titles): string {
  if (task.resting === 'attachment-off') return 'its attachment is off';
  if (task.resting === 'serial') return 'for other serial numbers';
  return definition?.gate === undefined ? '' : `only if ${nodeWords(definition.gate, graph, names)}`;
}

function nodeWords(id: NodeId, graph: RuleGraph, names: Titles): string {
  const node = graph.nodes[id];
  return node === undefined ? '' : nodeInWords(node, (other) => graph.nodes[other], names);
}

function countLines(
  groups: readonly { readonly state: TaskState; readonly tasks: readonly TaskAssessment[] }[],
  style: Style,
): readonly string[] {
  const counts = groups.filter(({ tasks }) => tasks.length > 0).map(({ state, tasks }) => `${tasks.length} ${stateInWords(state)}`);
  return counts.length === 0 ? [] : wrap(`${counts.join(', ')}.`, style.width).map(style.paint.quiet);
}

function setAsideLines({ setAside }: Assessment, style: Style): readonly string[] {
  if (setAside.length === 0) return [];
  const heading = `${counted(setAside.length, 'entry', 'entries')} of the logbook set aside, kept but not used:`;
  return [...wrap(heading, style.width), ...setAside.flatMap(({ entry, why }) => bullet(`${safeText(entry)}: ${safeText(why)}`, style))];
}
