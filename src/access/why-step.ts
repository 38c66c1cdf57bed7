/**
 * Why each step of a plan is there: which later lines could not be done had the part stayed where it was.
 *
 * A later line hangs on a step if, with that one part put back where the step found it and everything else as it is, the line could
 * not be done. Links stop at the next step of the same part, which hangs on this one in any case.
 */
import type { Task } from '../graph/rule-graph.js';
import type { Machine } from './machine.js';
import type { AccessProblem } from './problem.js';
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
    const here = plan[index];
    const move = here?.kind === 'move' ? problem.moves[here.move] : undefined;
    if (here === undefined || move === undefined) continue;
    const enables: StepWhy['enables'][number][] = [];
    const forTasks = new Set<string>();
    let [isLast, leadsBack] = [true, false];
    for (const [later, then] of plan.entries()) {
      if (later <= index || !isLast) continue;
      const rule = ruleBroken(machine, problem, tasks, then, move.part, move.from);
      const moves = then.kind === 'move' && problem.moves[then.move]?.part === move.part;
      if (moves) isLast = false;
      if (rule === null && !moves) continue;
      enables.push({ line: later + 1, ...(rule ?? { by: 'next-move', rule: '' }) });
      if (then.kind === 'need') forTasks.add(tasks[then.need]?.id ?? '');
      whys[later]?.tasks.forEach((task) => forTasks.add(task));
      leadsBack ||= whys[later]?.putsBack ?? false;
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

/** The words of the rule that keeps `then` from being done with `part` at `position`; `null` if it could be done all the same. */
function ruleBroken(
  machine: Machine,
  problem: AccessProblem,
  tasks: readonly Task[],
  then: Happening,
  part: number,
  position: number,
): Broken | null {
  const other = (stance: Stance): Stance => stance.map((now, index) => (index === part ? position : now));
  const never = (stance: Stance): Broken | null => {
    const index = problem.nevers.findIndex((set) => holds(set, stance));
    return index < 0 ? null : { by: 'never', rule: machine.graph.access.nevers[index]?.title ?? '' };
  };
  if (then.kind === 'need') {
    const stance = tasks[then.need]?.stance;
    const words = stance === undefined ? '' : (machine.graph.nodes[stance]?.origin.text ?? '');
    return holds(problem.needs[then.need]?.stance ?? [], other(then.before)) ? never(other(then.before)) : { by: 'condition', rule: words };
  }
  if (then.kind !== 'move') return null;
  const move = problem.moves[then.move];
  if (move === undefined || move.part === part) return null;
  const condition = machine.origins[then.move]?.step.while;
  const words = condition === undefined ? '' : (machine.graph.nodes[condition]?.origin.text ?? '');
  return holds(move.during, other(then.before)) ? never(other(then.after)) : { by: 'condition', rule: words };
}
