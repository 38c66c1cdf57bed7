/**
 * An assessment as a page shows it: words and marks, plain data that can be posted between a page and its worker.
 */
import type { Assessment, RuleGraph, TaskAssessment, TaskState, Verdict } from '../../../engine.js';
import { namesOf } from '../../../engine.js';
import { asSentence } from '../../../render/count-in-words.js';
import { momentInWords } from '../../../render/dates-in-words.js';
import { dueInWords, dueReason, holdInWords, leftInWords, noticeInWords } from '../../../render/due-row.js';
import { safeText } from '../../../render/safe-text.js';
import { stateInWords, stateMark, STATES, verdictInWords } from '../../../render/state-in-words.js';
import { plainStyle } from '../../../render/style.js';

/** One task. */
export interface DueRow {
  readonly task: string;
  readonly title: string;
  readonly state: TaskState;
  readonly left: string;
  readonly due: string;
  readonly reason: string;
  /** Share of the governing limit that is used up, 0 to 1 and beyond; `null` where there is no limit. */
  readonly used: number | null;
}

/** The tasks of one state, with its word and mark. */
export interface DueGroup {
  readonly state: TaskState;
  readonly word: string;
  readonly mark: string;
  readonly rows: readonly DueRow[];
}

/** The whole answer in words. */
export interface AnswerView {
  readonly title: string;
  readonly edition: string;
  readonly on: string;
  readonly verdict: Verdict;
  readonly verdictWords: string;
  readonly holds: readonly string[];
  readonly notices: readonly string[];
  /** The gravest state first; states without tasks are left out. */
  readonly groups: readonly DueGroup[];
  readonly setAside: readonly string[];
}

/** Puts an assessment (made with its record) into words. */
export function answerView(graph: RuleGraph, assessment: Assessment): AnswerView {
  const names = namesOf(graph);
  const { edition } = graph.schedule;
  const holds = assessment.holds.filter((hold) => hold.truth === 'true' || assessment.verdict === 'cannot-tell');
  return {
    title: safeText(graph.schedule.title),
    edition: edition === undefined ? '' : `edition ${edition.number} of ${safeText(edition.date)} by ${safeText(edition.by)}`,
    on: momentInWords(assessment.now),
    verdict: assessment.verdict,
    verdictWords: verdictInWords(assessment.verdict),
    holds: holds.map((hold) => holdInWords(hold, names)),
    notices: assessment.notices.map((notice) => noticeInWords(notice, names)),
    groups: groupsOf(graph, assessment),
    setAside: assessment.setAside.map(({ entry, why }) => `${safeText(entry)}: ${safeText(why)}`),
  };
}

/** The tasks by state, the gravest state first. */
function groupsOf(graph: RuleGraph, assessment: Assessment): readonly DueGroup[] {
  const titles = new Map(graph.tasks.map(({ id, title }) => [id, title]));
  const names = namesOf(graph);
  const row = (task: TaskAssessment): DueRow => ({
    task: task.task,
    title: safeText(titles.get(task.task) ?? task.task),
    state: task.state,
    left: leftInWords(task, names),
    due: dueInWords(task, names),
    reason: dueReason(task, graph, names),
    used: usedOf(assessment, task),
  });
  return STATES.map((state) => ({
    state,
    word: asSentence(stateInWords(state)),
    mark: markOf(state),
    rows: assessment.tasks.filter((task) => task.state === state).map(row),
  })).filter(({ rows }) => rows.length > 0);
}

/** The mark of a state, one sign. */
function markOf(state: TaskState): string {
  return stateMark(state, plainStyle()).trim();
}

function usedOf(assessment: Assessment, { task, governing }: TaskAssessment): number | null {
  if (governing === null) return null;
  return assessment.record[task]?.find(({ node }) => node === governing)?.limit?.used ?? null;
}
