/**
 * Turns what the search found into lines: walking put in, times added up, and for each step the reason why it is there.
 */
import type { Site } from '../graph/rule-graph.js';
import { itemAt } from './item-at.js';
import type { Machine } from './machine.js';
import { namedStance } from './machine.js';
import { moveTitle } from './move-title.js';
import type { AccessProblem, Act } from './problem.js';
import type { Stance } from './stance-set.js';
import type { tasksToDo } from './tasks-to-do.js';
import type { WalkRoundLine } from './walk-round.js';
import { whyOf, type Happening } from './why-step.js';

type Todo = ReturnType<typeof tasksToDo>;

export function linesOf(machine: Machine, problem: AccessProblem, todo: Todo, acts: readonly Act[]): readonly WalkRoundLine[] {
  const happenings = happeningsOf(machine, problem, acts);
  const whys = whyOf(machine, problem, todo.tasks, happenings);
  let total = 0;
  return happenings.map((happening, index): WalkRoundLine => {
    total += happening.seconds;
    const place = happening.place === null ? null : itemAt(machine.graph.access.places, happening.place).id;
    const common = { number: index + 1, place, seconds: happening.seconds, total, ...standing(machine, happening.after) };
    switch (happening.kind) {
      case 'walk': {
        const { places } = machine.graph.access;
        return {
          kind: 'walk',
          ...common,
          title: `Go to: ${itemAt(places, happening.place).title}`,
          from: itemAt(places, happening.from).id,
          cautions: [],
          qualified: false,
          tools: [],
          procedure: [],
        };
      }
      case 'move':
        return { ...common, ...stepFacts(machine, happening.move), why: itemAt(whys, index) };
      case 'need':
        return { ...common, ...taskFacts(machine, todo, happening.need) };
    }
  });
}

function happeningsOf(machine: Machine, problem: AccessProblem, acts: readonly Act[]): readonly Happening[] {
  const happenings: Happening[] = [];
  let [stance, place] = [problem.start.stance, problem.start.place];
  const walkTo = (there: number | null): void => {
    if (there === null || there === place) return;
    if (place !== null) {
      const seconds = itemAt(itemAt(machine.walk, place), there);
      happenings.push({ kind: 'walk', from: place, place: there, seconds, before: stance, after: stance });
    }
    place = there;
  };
  for (const act of acts) {
    if (act.kind === 'move') {
      const move = itemAt(problem.moves, act.move);
      walkTo(move.place);
      const after = stance.map((position, part) => (part === move.part ? move.to : position));
      happenings.push({ kind: 'move', move: act.move, place, seconds: move.seconds, before: stance, after });
      stance = after;
    } else {
      const need = itemAt(problem.needs, act.need);
      walkTo(need.place);
      happenings.push({ kind: 'need', need: act.need, place, seconds: need.seconds, before: stance, after: stance });
    }
  }
  return happenings;
}

function standing(machine: Machine, stance: Stance): Pick<WalkRoundLine, 'stance' | 'leftOpen'> {
  const leftOpen = machine.graph.access.parts.flatMap((part, index) =>
    stance[index] === machine.rest[index] ? [] : [{ part: part.id, position: itemAt(part.positions, itemAt(stance, index)).name }],
  );
  return { stance: namedStance(machine.graph, stance), leftOpen };
}

function siteFacts(site: Site): Pick<WalkRoundLine, 'cautions' | 'qualified' | 'tools' | 'procedure'> {
  return { cautions: site.cautions, qualified: site.qualified, tools: site.tools, procedure: site.procedure };
}

function stepFacts(machine: Machine, move: number) {
  const { step, isBack } = itemAt(machine.origins, move);
  const [from, to] = isBack ? [step.to, step.from] : [step.from, step.to];
  const reason = isBack ? null : (step.reason ?? null);
  return {
    kind: 'step' as const,
    step: step.id,
    isBack,
    part: step.part,
    from,
    to,
    reason,
    title: moveTitle(machine, move),
    ...siteFacts(step.site),
  };
}

function taskFacts(machine: Machine, todo: Todo, need: number) {
  const task = itemAt(todo.tasks, need);
  const needs = task.stance === undefined ? null : itemAt(machine.graph.nodes, task.stance).origin.text;
  return {
    kind: 'task' as const,
    task: task.id,
    title: task.title,
    covers: todo.covered.get(task.id) ?? [],
    broughtBy: todo.broughtBy.get(task.id) ?? null,
    needs,
    uses: task.uses,
    torques: task.torques.map(({ what, written }) => ({ what, written })),
    reason: task.reason ?? null,
    ...siteFacts(task.site),
  };
}
