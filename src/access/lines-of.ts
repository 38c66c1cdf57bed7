/**
 * Turns what the search found into lines: walking put in, times added up, and for each step the reason why it is there.
 */
import type { Site } from '../graph/rule-graph.js';
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
    const place = happening.place === null ? null : (machine.graph.access.places[happening.place]?.id ?? null);
    const common = { number: index + 1, place, seconds: happening.seconds, total, ...standing(machine, happening.after) };
    switch (happening.kind) {
      case 'walk': {
        const titles = (at: number): string => machine.graph.access.places[at]?.title ?? '';
        const from = machine.graph.access.places[happening.from]?.id ?? '';
        return {
          kind: 'walk',
          ...common,
          title: `Go to: ${titles(happening.place)}`,
          from,
          cautions: [],
          qualified: false,
          tools: [],
          procedure: [],
        };
      }
      case 'move':
        return { ...common, ...stepFacts(machine, happening.move), why: whys[index] ?? { enables: [], tasks: [], putsBack: false } };
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
    const seconds = place === null ? 0 : (machine.walk[place]?.[there] ?? 0);
    if (place !== null) happenings.push({ kind: 'walk', from: place, place: there, seconds, before: stance, after: stance });
    place = there;
  };
  for (const act of acts) {
    if (act.kind === 'move') {
      const move = problem.moves[act.move];
      if (move === undefined) continue;
      walkTo(move.place);
      const after = stance.map((position, part) => (part === move.part ? move.to : position));
      happenings.push({ kind: 'move', move: act.move, place, seconds: move.seconds, before: stance, after });
      stance = after;
    } else {
      walkTo(problem.needs[act.need]?.place ?? null);
      happenings.push({
        kind: 'need',
        need: act.need,
        place,
        seconds: problem.needs[act.need]?.seconds ?? 0,
        before: stance,
        after: stance,
      });
    }
  }
  return happenings;
}

function standing(machine: Machine, stance: Stance): Pick<WalkRoundLine, 'stance' | 'leftOpen'> {
  const named = namedStance(machine.graph, stance);
  const leftOpen = machine.graph.access.parts.flatMap((part, index) =>
    stance[index] === machine.rest[index] ? [] : [{ part: part.id, position: named[part.id] ?? '' }],
  );
  return { stance: named, leftOpen };
}

function siteFacts(site: Site): Pick<WalkRoundLine, 'cautions' | 'qualified' | 'tools' | 'procedure'> {
  return { cautions: site.cautions, qualified: site.qualified, tools: site.tools, procedure: site.procedure };
}

function stepFacts(machine: Machine, move: number) {
  const origin = machine.origins[move];
  if (origin === undefined) throw new Error('a move without a step');
  const { step, isBack } = origin;
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
  const task = todo.tasks[need];
  if (task === undefined) throw new Error('a need without a task');
  const needs = task.stance === undefined ? null : (machine.graph.nodes[task.stance]?.origin.text ?? null);
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
