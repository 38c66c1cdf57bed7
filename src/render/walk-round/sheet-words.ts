/**
 * The words around the lines of a sheet, the same in text and in HTML.
 */
import type { WalkRound, WalkRoundLine } from '../../access/walk-round.js';
import type { Assessment } from '../../assess/assessment.js';
import type { TasksForWalk } from '../../assess/tasks-for-walk.js';
import type { RuleGraph } from '../../graph/rule-graph.js';
import type { Titles } from '../amounts-in-words.js';
import { counted } from '../count-in-words.js';
import { holdInWords } from '../due-row.js';
import { verdictInWords } from '../state-in-words.js';
import { secondsInWords } from './seconds-in-words.js';

export interface SheetWords {
  readonly title: string;
  readonly summary: string;
  readonly proof: string;
  readonly starts: string;
  readonly ends: string;
  readonly tools: string | null;
  readonly supplies: string | null;
  readonly warnings: readonly string[];
  readonly leftOut: readonly string[];
}

export function sheetWords(walk: WalkRound, graph: RuleGraph): SheetWords {
  const { totals } = walk;
  const tasks = walk.lines.filter((line) => line.kind === 'task').length;
  return {
    title: walk.schedule.title,
    summary:
      `${tasks} ${tasks === 1 ? 'task' : 'tasks'}, ${secondsInWords(totals.seconds)} in all: tasks ${secondsInWords(totals.tasks)}, ` +
      `opening and closing ${secondsInWords(totals.steps)}, walking ${secondsInWords(totals.walking)}.${untimedWords(walk)}`,
    proof: proofWords(walk),
    starts: startWords(walk, graph),
    ends: walk.end === 'work' ? 'Ends ready to work.' : 'Ends at rest.',
    tools: walk.tools.length === 0 ? null : `Have ready: ${walk.tools.join(', ')}.`,
    supplies: walk.supplies.length === 0 ? null : `Takes: ${walk.supplies.map((each) => supplyWords(each, graph)).join(', ')}.`,
    warnings: walk.start.breaks.map((rule) => `The machine stands in a way that the schedule forbids: "${rule}".`),
    leftOut: walk.leftOut.map((left) => leftOutWords(left, graph)),
  };
}

/** What a line takes; of work and steps of which the schedule says no time, that. */
export function timeWords(line: WalkRoundLine): string {
  return line.kind !== 'walk' && line.seconds === 0 ? 'time not stated' : secondsInWords(line.seconds);
}

/** How many lines the sum leaves out, as nobody stated what they take. */
function untimedWords({ lines }: WalkRound): string {
  const untimed = (kind: 'task' | 'step'): number => lines.filter((line) => line.kind === kind && line.seconds === 0).length;
  const [tasks, steps] = [untimed('task'), untimed('step')];
  const counts = [...(tasks === 0 ? [] : [counted(tasks, 'task')]), ...(steps === 0 ? [] : [counted(steps, 'step')])];
  return counts.length === 0 ? '' : ` Besides, ${counts.join(' and ')} of which the schedule states no time.`;
}

/** What stands beside a walk-round that is not of its order. */
export interface BesideWalk {
  /** Why the machine must not be worked, see {@link heldWords}: before all else. */
  readonly held?: readonly string[];
  /** What was left apart, see {@link apartWords}. */
  readonly apart?: readonly string[];
}

/** That the machine must not be worked, and why, where an assessment holds it: a walk-round gives nobody leave to. */
export function heldWords({ verdict, holds }: Pick<Assessment, 'verdict' | 'holds'>, names: Titles): readonly string[] {
  if (verdict !== 'held') return [];
  return [`${verdictInWords(verdict)}.`, ...holds.filter(({ truth }) => truth === 'true').map((hold) => holdInWords(hold, names))];
}

/** What is wanted but is not in the walk-round, in words; nothing where nothing was left apart. */
export function apartWords({ mechanic, unrecorded }: Pick<TasksForWalk, 'mechanic' | 'unrecorded'>, graph: RuleGraph): readonly string[] {
  const titles = (tasks: readonly string[]): string =>
    tasks.map((id) => graph.tasks.find((task) => task.id === id)?.title ?? id).join('; ');
  return [
    ...(mechanic.length === 0 ? [] : [`Due, but for a qualified mechanic, so not in this walk-round: ${titles(mechanic)}.`]),
    ...(unrecorded.length === 0 ? [] : [`No record that it was ever done, so not in this walk-round: ${titles(unrecorded)}.`]),
  ];
}

/** What stands open after a line. */
export function openWords(line: WalkRoundLine): string {
  return line.leftOpen.map(({ part, position }) => `${part} ${position}`).join(', ');
}

export function supplyWords({ supply, amount }: { readonly supply: string; readonly amount: number }, graph: RuleGraph): string {
  const known = graph.supplies.find((each) => each.id === supply);
  return `${amount}${known?.unit === undefined ? '' : ` ${known.unit}`} ${known?.title ?? supply}`;
}

function proofWords({ outcome, proof, totals }: WalkRound): string {
  if (outcome === 'impossible') return 'There is no order in which all of this can be done and the machine put back. That is proved.';
  if (outcome === 'undecided') return 'No order was found within the limits of the search; there may be one.';
  if (proof?.kind !== 'bounded') return 'No order takes less time: that is proved.';
  return `The shortest found. An order of less than ${secondsInWords(proof.atLeast)} is ruled out, so at most ${secondsInWords(proof.gap)} of ${secondsInWords(totals.seconds)} could be saved.`;
}

function startWords({ start }: WalkRound, graph: RuleGraph): string {
  const unusual = graph.access.parts.flatMap((part) => {
    const position = start.stance[part.id];
    return position === undefined || position === graph.access.rest[part.id] ? [] : [`${part.id} ${position}`];
  });
  return unusual.length === 0 ? 'Begins at rest.' : `Begins with ${unusual.join(', ')}.`;
}

function leftOutWords(left: WalkRound['leftOut'][number], graph: RuleGraph): string {
  const title = graph.tasks.find((task) => task.id === left.task)?.title ?? left.task;
  if (left.because === 'unknown-task') return `\`${left.task}\` is not a task of this schedule.`;
  const blocked = left.way.at(-1);
  const way = left.way.slice(0, -1);
  const until = way.length === 0 ? '' : ` after ${way.map((step) => `"${step}"`).join(', ')}`;
  return blocked === undefined
    ? `"${title}" cannot be reached: no steps lead there.`
    : `"${title}" cannot be reached:${until} "${blocked}" is blocked by ${left.rule ?? 'its own condition'}.`;
}
