/**
 * Steps that are of no use: never possible, or on no shortest way between rest, work and the tasks.
 */
import type { AccessFault } from './access-fault.js';
import type { Machine } from './machine.js';
import type { StanceSet } from './stance-set.js';
import { holds } from './stance-set.js';
import type { StanceSpace } from './stance-space.js';

/** A step counts as used if it, or its way back, lies on a shortest way (in seconds; ties count) from one wanted stance to another. */
export function idleSteps(machine: Machine, space: StanceSpace): readonly AccessFault[] {
  const { graph } = machine;
  const possible = new Set(space.exits.flatMap((out) => out.map(({ move }) => machine.origins[move]?.step.id)));
  const used = usedSteps(machine, space);
  return graph.access.steps.flatMap((step): readonly AccessFault[] => {
    if (used.has(step.id)) return [];
    const never = !possible.has(step.id);
    return [
      {
        kind: 'idle-step',
        at: step.origin,
        message: never
          ? `\`${step.id}\` can never be done.`
          : `\`${step.id}\` is of no use: every task is reached and left as quickly without it.`,
        way: [],
        help: never ? 'Change what it needs, or leave it out.' : 'Leave it out, or let a task ask for the position that it leads to.',
      },
    ];
  });
}

function usedSteps(machine: Machine, space: StanceSpace): ReadonlySet<string> {
  const { graph } = machine;
  const sets = new Map<string, StanceSet>();
  for (const task of graph.tasks) if (task.stance !== undefined) sets.set(String(task.stance), machine.condition(task.stance) ?? []);
  const exactly = (stance: readonly number[]): StanceSet => [stance.map((position) => 1 << position)];
  const wanted = [exactly(machine.rest), exactly(machine.work), ...sets.values()].map((set) =>
    space.stances.map((stance) => holds(set, stance)),
  );
  const used = new Set<string>();
  const into = incoming(space);
  for (const from of wanted) {
    const reached = secondsFrom(machine, space, from);
    for (const to of wanted) markShortest(machine, into, reached, to, used);
  }
  return used;
}

/** Seconds first; of equal seconds, fewer steps. */
function weightOf(machine: Machine, move: number): number {
  return (machine.moves[move]?.seconds ?? 0) * 1024 + 1;
}

function secondsFrom(machine: Machine, space: StanceSpace, from: readonly boolean[]): readonly number[] {
  const seconds = from.map((is) => (is ? 0 : Infinity));
  let open = from.flatMap((is, stance) => (is ? [stance] : []));
  while (open.length > 0) {
    const next = new Set<number>();
    for (const stance of open) {
      for (const { move, to } of space.exits[stance] ?? []) {
        const through = (seconds[stance] ?? Infinity) + weightOf(machine, move);
        if (through >= (seconds[to] ?? Infinity)) continue;
        seconds[to] = through;
        next.add(to);
      }
    }
    open = [...next];
  }
  return seconds;
}

function markShortest(machine: Machine, into: Incoming, reached: readonly number[], to: readonly boolean[], used: Set<string>): void {
  const least = Math.min(...reached.filter((_, stance) => to[stance] === true));
  if (!Number.isFinite(least)) return;
  const onWay = new Set(reached.flatMap((seconds, stance) => (to[stance] === true && seconds === least ? [stance] : [])));
  const open = [...onWay];
  for (let stance = open.pop(); stance !== undefined; stance = open.pop()) {
    for (const { from, move } of into[stance] ?? []) {
      if ((reached[from] ?? Infinity) + weightOf(machine, move) !== reached[stance]) continue;
      const step = machine.origins[move]?.step.id;
      if (step !== undefined) used.add(step);
      if (!onWay.has(from)) open.push(from);
      onWay.add(from);
    }
  }
}

function incoming(space: StanceSpace): Incoming {
  const into: { from: number; move: number }[][] = space.exits.map(() => []);
  space.exits.forEach((out, from) => out.forEach(({ move, to }) => into[to]?.push({ from, move })));
  return into;
}

type Incoming = readonly (readonly { readonly from: number; readonly move: number }[])[];
