/**
 * Why each step of a plan is there: which later lines could not be done had the part stayed where it was.
 *
 * A later line hangs on a step if, with that one part put back where the step found it and everything else as it is, the line could
 * not be done. Links stop at the next step of the same part, which hangs on this one in any case.
 */
import type { NodeId, Task } from '../graph/rule-graph.js';
import { itemAt } from './item-at.js';
import type { Machine } from './machine.js';
import { stancesOf } from './machine.js';
import type { AccessProblem, Move } from './problem.js';
import type { Stance } from './stance-set.js';
import { holds } from './stance-set.js';
import type { StepWhy } from './walk-round.js';

/** One thing that happens in a plan, with the stance before and after it. */
export type Happening = { readonly seconds: number; readonly before: Stance; readonly after: Stance } & (
  | { readonly kind: 'walk'; readonly from: number; readonly place: number }
  | { readonly kind: 'move'; readonly move: number; readonly place: number | null }
  | { readonly kind: 'need'; readonly need: number; readonly place: number | null }
);

/** For each line the reason, where it is a step. */
export function whyOf(
  machine: Machine,
  problem: AccessProblem,
  tasks: readonly Task[],
  plan: readonly Happening[],
): readonly (StepWhy | null)[] {
  const whys: (StepWhy | null)[] = plan.map(() => null);
  for (let index = plan.length - 1; index >= 0; index--) {
    const here = itemAt(plan, index);
    if (here.kind !== 'move') continue;
    const move = itemAt(problem.moves, here.move);
    const enables: StepWhy['enables'][number][] = [];
    const forTasks = new Set<string>();
    let [isLast, leadsBack] = [true, false];
    for (const [later, then] of plan.entries()) {
      if (later <= index || !isLast) continue;
      const moves = then.kind === 'move' && itemAt(problem.moves, then.move).part === move.part;
      const broken = moves ? GOES_ON : ruleBroken(machine, problem, tasks, then, move);
      if (moves) isLast = false;
      if (broken === null) continue;
      enables.push({ line: later + 1, ...broken });
      if (then.kind === 'need') {
        forTasks.add(itemAt(tasks, then.need).id);
        continue;
      }
      const why = itemAt(whys, later);
      why.tasks.forEach((task) => forTasks.add(task));
      leadsBack ||= why.putsBack;
    }
    const isGoal = isLast && problem.goal[move.part] === move.to;
    whys[index] = {
      enables,
      tasks: tasks.flatMap((task) => (forTasks.has(task.id) ? [task.id] : [])),
      putsBack: isGoal || (leadsBack && forTasks.size === 0),
    };
  }
  return whys;
}

type Broken = Pick<StepWhy['enables'][number], 'by' | 'rule'>;

const GOES_ON: Broken = { by: 'next-move', rule: '' };

/** The rule, in words, that keeps `then` from being done with the part where a move found it; `null` if it could be done all the same. */
function ruleBroken(
  machine: Machine,
  problem: AccessProblem,
  tasks: readonly Task[],
  then: Happening,
  { part, from }: Move,
): Broken | null {
  const other = (stance: Stance): Stance => stance.with(part, from);
  const never = (stance: Stance): Broken | null => {
    const index = problem.nevers.findIndex((set) => holds(set, stance));
    return index < 0 ? null : { by: 'never', rule: itemAt(machine.graph.access.nevers, index).title };
  };
  const before = other(then.before);
  switch (then.kind) {
    case 'walk':
      return null;
    case 'need':
      if (holds(itemAt(problem.needs, then.need).stance, before)) return never(before);
      return unmet(machine, itemAt(tasks, then.need).stance, before, part);
    case 'move': {
      const move = itemAt(problem.moves, then.move);
      if (holds(move.during, before)) return never(other(then.after));
      const { step, isBack } = itemAt(machine.origins, then.move);
      // The condition reads the moving part as standing where the step, as written, begins.
      return unmet(machine, step.while, before.with(move.part, isBack ? move.to : move.from), part);
    }
  }
}

/** Which of two rules is not met in a stance: the stated condition, or else that nobody is under a part that is held up by nothing. */
function unmet(machine: Machine, condition: NodeId | undefined, stance: Stance, part: number): Broken {
  const isStated = condition !== undefined && !holds(stancesOf(machine, condition), stance);
  const rule = isStated ? itemAt(machine.graph.nodes, condition).origin.text : `${itemAt(machine.graph.access.parts, part).id} not aloft`;
  return { by: 'condition', rule };
}
