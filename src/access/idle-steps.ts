/**
 * Steps that are of no use: never possible, or on no shortest way between rest, work and the tasks.
 */
import type { RuleGraph } from '../graph/rule-graph.js';
import type { AccessFault } from './access-fault.js';
import { itemAt } from './item-at.js';
import type { Machine } from './machine.js';
import type { MachineSpace, PartGroup } from './machine-space.js';
import { askedOf } from './machine-space.js';
import { stancesOf } from './machine.js';
import { MinHeap } from './min-heap.js';
import { neverBrought } from './never-brought.js';
import type { StanceSet } from './stance-set.js';
import type { StanceSpace, WaysIn } from './stance-space.js';
import { reversed } from './stance-space.js';

/** Ways between stances that are gone along, and stances asked whether they are wanted; past that no step is called idle. */
const MOST_LOOKED_AT = 8_000_000;

/** A step counts as used if it, or its way back, lies on a shortest way (in seconds; ties count) from one wanted stance to another. */
export function idleSteps(machine: Machine, space: MachineSpace, most = MOST_LOOKED_AT): readonly AccessFault[] {
  const { graph } = machine;
  const possible = new Set(space.groups.flatMap((group) => [...possibleSteps(machine, group)]));
  const sure = space.groups.filter((group) => group.space.isWhole);
  const used = new Set(sure.flatMap((group) => [...usedSteps(machine, group, possible, most)]));
  const isSure = (step: RuleGraph['access']['steps'][number]): boolean =>
    sure.some((group) => group.parts.has(graph.access.parts.findIndex((part) => part.id === step.part)));
  return graph.access.steps.flatMap((step): readonly AccessFault[] => {
    if (used.has(step.id) || !isSure(step)) return [];
    const never = !possible.has(step.id);
    return [
      {
        kind: 'idle-step',
        at: step.origin,
        message: never
          ? `\`${step.id}\` can never be done.`
          : `\`${step.id}\` is of no use: every task is reached and left as quickly without it.`,
        way: [],
        help: never ? helpFor(machine, step.id) : 'Leave it out, or let a task ask for the position that it leads to.',
      },
    ];
  });
}

function helpFor(machine: Machine, step: string): string {
  const missing = neverBrought(machine, step);
  if (missing === null) return 'Change what it needs, or leave it out.';
  return `No step brings \`${missing.part}\` to \`${missing.position}\`: declare one, change what this one needs, or leave it out.`;
}

function possibleSteps(machine: Machine, { space }: PartGroup): ReadonlySet<string> {
  const moves = new Set<number>();
  for (let stance = 0; stance < space.size; stance++) {
    const out = space.exits(stance);
    for (let index = 0; index < out.length; index += 2) moves.add(itemAt(out, index));
  }
  return new Set([...moves].map((move) => itemAt(machine.origins, move).step.id));
}

/** Most machines need every step on the way from rest to some task, so that the first look is the last. */
function usedSteps(machine: Machine, group: PartGroup, possible: ReadonlySet<string>, most: number): ReadonlySet<string> {
  const { space } = group;
  const own = new Set(
    machine.moves.flatMap((move, index) => {
      const { id } = itemAt(machine.origins, index).step;
      return group.parts.has(move.part) && possible.has(id) ? [id] : [];
    }),
  );
  const sets = wantedStances(machine, group);
  if (sets.length * space.size > most) return own;
  const wanted = sets.map((set) => space.members(set));
  const weights = Float64Array.from(machine.moves, weightOf);
  const exits = Array.from({ length: space.size }, (_, stance) => space.exits(stance));
  const into = reversed(exits);
  const used = new Set<string>();
  let looked = 0;
  for (const from of wanted) {
    if (used.size === own.size) break;
    looked += into.from.length;
    if (looked > most) return own;
    const seconds = secondsFrom(space, weights, from);
    for (const move of movesOnShortest(into, weights, seconds, wanted)) used.add(itemAt(machine.origins, move).step.id);
  }
  return used;
}

/** Rest, work and what tasks ask for, as far as it concerns the group; each once. */
function wantedStances(machine: Machine, group: PartGroup): readonly StanceSet[] {
  const exactly = (stance: readonly number[]): StanceSet => [stance.map((position) => 1 << position)];
  const asked = new Set(machine.graph.tasks.flatMap((task) => task.stance ?? []));
  const sets = [exactly(machine.rest), exactly(machine.work), ...[...asked].map((node) => stancesOf(machine, node))];
  const distinct = new Map<string, StanceSet>();
  for (const set of sets) {
    const projected = askedOf(machine, group, set);
    distinct.set(projected.map((box) => box.join()).join(';'), projected);
  }
  return [...distinct.values()];
}

/** Seconds first; of equal seconds, fewer steps. */
function weightOf(move: { readonly seconds: number }): number {
  return move.seconds * 1024 + 1;
}

function secondsFrom(space: StanceSpace, weights: Float64Array, from: Uint8Array): Float64Array {
  const seconds = new Float64Array(space.size).fill(Infinity);
  const queue = new MinHeap();
  from.forEach((is, stance) => {
    if (is === 0) return;
    seconds[stance] = 0;
    queue.push(stance, 0);
  });
  while (!queue.isEmpty) {
    const { item, priority } = queue.pop();
    if (priority > (seconds[item] ?? 0)) continue;
    const out = space.exits(item);
    for (let index = 0; index < out.length; index += 2) {
      const to = out[index + 1] ?? 0;
      const through = priority + (weights[out[index] ?? 0] ?? 0);
      if (through >= (seconds[to] ?? 0)) continue;
      seconds[to] = through;
      queue.push(to, through);
    }
  }
  return seconds;
}

/** The moves on any shortest way to the nearest stances of each set. */
function movesOnShortest(into: WaysIn, weights: Float64Array, seconds: Float64Array, ends: readonly Uint8Array[]): ReadonlySet<number> {
  const isOnWay = new Uint8Array(seconds.length);
  const open: number[] = [];
  const add = (stance: number): void => {
    if (isOnWay[stance] === 0) open.push(stance);
    isOnWay[stance] = 1;
  };
  for (const end of ends) nearestOf(end, seconds).forEach(add);
  const moves = new Set<number>();
  for (let stance = open.pop(); stance !== undefined; stance = open.pop()) {
    for (let link = into.first[stance] ?? 0; link < (into.first[stance + 1] ?? 0); link++) {
      const [from, move] = [into.from[link] ?? 0, into.move[link] ?? 0];
      if ((seconds[from] ?? Infinity) + (weights[move] ?? 0) !== seconds[stance]) continue;
      moves.add(move);
      add(from);
    }
  }
  return moves;
}

/** Without a dead end every stance is reached from every other, so that only an empty set has no nearest. */
function nearestOf(set: Uint8Array, seconds: Float64Array): readonly number[] {
  let least = Infinity;
  set.forEach((is, stance) => (least = is === 1 ? Math.min(least, seconds[stance] ?? Infinity) : least));
  return [...set.keys()].filter((stance) => set[stance] === 1 && seconds[stance] === least);
}
