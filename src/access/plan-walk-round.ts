/**
 * Plans a walk-round: from tasks and the stance the machine is in to lines that a person can follow.
 */
import type { RuleGraph, Stance as NamedStance, Task } from '../graph/rule-graph.js';
import { letDownEarly } from './let-down-early.js';
import { linesOf } from './lines-of.js';
import { itemAt } from './item-at.js';
import type { Machine } from './machine.js';
import { clearOfAloft, machineOf, namedStance, placeIndex, stanceFrom } from './machine.js';
import type { PartGroup } from './machine-space.js';
import { askedOf, machineSpace } from './machine-space.js';
import { moveTitle } from './move-title.js';
import type { AccessProblem, SearchCaps, SearchOutcome } from './problem.js';
import { DEFAULT_CAPS } from './problem.js';
import { solve } from './solve.js';
import type { StanceSet } from './stance-set.js';
import { everyStance, holds, meet, NO_STANCE } from './stance-set.js';
import { tasksToDo } from './tasks-to-do.js';
import type { LeftOut, WalkProof, WalkRound } from './walk-round.js';
import { whatBlocks } from './what-blocks.js';

/** Where a walk-round begins and ends, and how long it may be looked for. */
export interface WalkRoundOptions {
  /** Where the parts stand; a part that is left out is as at rest. */
  readonly stance?: NamedStance;
  /** Where the person stands; left out: anywhere, and the first walk costs nothing. */
  readonly place?: string;
  /** How the machine is to be left. Default: at rest. */
  readonly end?: 'rest' | 'work';
  readonly caps?: SearchCaps;
}

const MOST_STANCES = 20_000;

/**
 * The cheapest order, by seconds of steps, walking and tasks, in which the tasks can be done in allowed stances and the machine
 * left at rest or ready to work. Equal arguments give equal answers; the order in which tasks are named does not matter.
 *
 * A task that cannot be reached from where the machine stands is left out and told, with what blocks it; the rest is planned.
 *
 * @example walkRound(graph, ['change-engine-oil', 'engine-oil-level'], { stance: { loader: 'blocked' }, end: 'work' })
 */
export function walkRound(graph: RuleGraph, tasks: readonly string[], options: WalkRoundOptions = {}): WalkRound {
  const stance = stanceFrom(graph, options.stance ?? {});
  const home = machineOf(graph);
  const machine: Machine = { ...home, rest: stance };
  const end = options.end ?? 'rest';
  const asked = graph.tasks.flatMap((task) => (tasks.includes(task.id) ? [task.id] : []));
  const start = { stance, place: placeIndex(graph, options.place) };
  const plan = (chosen: readonly string[]): Plan => {
    const todo = tasksToDo(graph, chosen);
    const problem = problemFor(home, todo, start, end);
    return { todo, problem, outcome: solve(problem, options.caps ?? DEFAULT_CAPS) };
  };
  const known = new Set(graph.tasks.map((task) => task.id));
  const strangers = [...new Set(tasks)].filter((task) => !known.has(task));
  const whole = plan(asked);
  // Only where not everything can be done is it worth finding out what can.
  const { reachable, outOfReach: blocked } =
    whole.outcome.kind === 'impossible' ? sortedByReach(machine, asked) : { reachable: asked, outOfReach: [] };
  const { todo, problem, outcome } = reachable.length === asked.length ? whole : plan(reachable);
  const leftOut = [...strangers.map((task): LeftOut => ({ task, because: 'unknown-task', way: [], rule: null })), ...blocked];
  const acts = outcome.kind === 'optimal' || outcome.kind === 'bounded' ? letDownEarly(home, problem, outcome.acts) : [];
  const lines = linesOf(home, problem, todo, acts);
  const lastTask = lines.findLastIndex((line) => line.kind === 'task');
  return {
    format: 'duewright-walk-round',
    version: 1,
    schedule: { name: graph.schedule.name, title: graph.schedule.title, fingerprint: graph.fingerprint },
    asked,
    start: {
      stance: namedStance(graph, stance),
      place: graph.access.places.find((place) => place.id === options.place)?.id ?? null,
      breaks: graph.access.nevers.flatMap((never, index) => (holds(itemAt(home.nevers, index), stance) ? [never.title] : [])),
    },
    end,
    outcome: outcome.kind === 'impossible' || outcome.kind === 'undecided' ? outcome.kind : 'found',
    ...(outcome.kind === 'undecided' ? { atLeast: outcome.atLeast } : {}),
    lines,
    backFrom: lastTask + 2,
    leftOut,
    totals: totalsOf(lines),
    tools: [...new Set(lines.flatMap((line) => line.tools))],
    supplies: suppliesOf(lines),
    qualified: lines.some((line) => line.qualified),
    proof: proofOf(outcome),
  };
}

/** Where the logbook last left the parts; those that it does not speak of are as at rest. */
export function stanceOnRecord(timeline: { readonly positions: ReadonlyMap<string, { readonly position: string }> }): NamedStance {
  return Object.fromEntries([...timeline.positions].map(([part, { position }]) => [part, position]));
}

/** The stance that a task asks for, with nobody under anything that is held up by nothing. */
function taskStance(machine: Machine, task: Task): StanceSet {
  const asked = task.stance === undefined ? everyStance(machine.sizes) : (machine.condition(task.stance) ?? NO_STANCE);
  return meet(asked, clearOfAloft(machine, task.site)) ?? NO_STANCE;
}

function problemFor(
  machine: Machine,
  todo: ReturnType<typeof tasksToDo>,
  start: AccessProblem['start'],
  end: 'rest' | 'work',
): AccessProblem {
  return {
    parts: machine.sizes,
    moves: machine.moves,
    nevers: machine.nevers,
    walk: machine.walk,
    needs: todo.tasks.map((task, index) => ({
      stance: taskStance(machine, task),
      place: placeIndex(machine.graph, task.site.place),
      seconds: task.site.seconds,
      after: itemAt(todo.after, index),
    })),
    start,
    goal: end === 'work' ? machine.work : machine.rest,
  };
}

interface Plan {
  readonly todo: ReturnType<typeof tasksToDo>;
  readonly problem: AccessProblem;
  readonly outcome: SearchOutcome;
}

/** Tasks that can be reached from where the machine stands (which `machine.rest` is here), and those that cannot, with what blocks them. */
function sortedByReach(
  machine: Machine,
  tasks: readonly string[],
): { readonly reachable: readonly string[]; readonly outOfReach: readonly LeftOut[] } {
  const wanted = machine.graph.tasks.flatMap((task) =>
    tasks.includes(task.id) ? [{ task: task.id, set: taskStance(machine, task) }] : [],
  );
  const space = machineSpace(
    machine,
    wanted.map(({ set }) => set),
    MOST_STANCES,
  );
  const sorted = wanted.map((each) => ({ ...each, group: space.unreachableIn(each.set) }));
  const lost = sorted.flatMap(({ task, set, group }) => (group === null ? [] : [{ task, set, group }]));
  const most = Math.floor(MOST_STANCES / lost.length);
  return {
    reachable: sorted.flatMap(({ task, group }) => (group === null ? [task] : [])),
    outOfReach: lost.map(({ task, set, group }) => outOfReach(machine, group, task, set, most)),
  };
}

function outOfReach(machine: Machine, group: PartGroup, task: string, set: StanceSet, most: number): LeftOut {
  const target = askedOf(machine, group, set);
  const blocked = whatBlocks(machine, machine.rest, target, { moves: (part) => group.parts.has(part), most });
  if (blocked.kind !== 'blocked') return { task, because: 'out-of-reach', way: [], rule: null };
  const { step } = itemAt(machine.origins, blocked.move);
  const way = [...blocked.way, blocked.move].map((move) => moveTitle(machine, move));
  return { task, because: 'out-of-reach', way, rule: blocked.never?.title ?? step.origin.text };
}

function proofOf(outcome: SearchOutcome): WalkProof | null {
  if (outcome.kind === 'optimal') return { kind: 'optimal', expanded: outcome.expanded };
  if (outcome.kind !== 'bounded') return null;
  return { kind: 'bounded', atLeast: outcome.atLeast, gap: outcome.seconds - outcome.atLeast, expanded: outcome.expanded };
}

function totalsOf(lines: WalkRound['lines']): WalkRound['totals'] {
  const sum = (kind: 'walk' | 'step' | 'task'): number => lines.reduce((total, line) => total + (line.kind === kind ? line.seconds : 0), 0);
  return { seconds: sum('walk') + sum('step') + sum('task'), steps: sum('step'), walking: sum('walk'), tasks: sum('task') };
}

function suppliesOf(lines: WalkRound['lines']): WalkRound['supplies'] {
  const amounts = new Map<string, number>();
  for (const line of lines) {
    if (line.kind !== 'task') continue;
    for (const { supply, amount } of line.uses) amounts.set(supply, (amounts.get(supply) ?? 0) + amount);
  }
  return [...amounts].map(([supply, amount]) => ({ supply, amount }));
}
