/**
 * A rule graph's access rules as the search and the checks take them: indexes, sets of stances and whole seconds.
 */
import type { Node, NodeId, RuleGraph, Site, Stance as NamedStance, Step } from '../graph/rule-graph.js';
import { itemAt } from './item-at.js';
import type { AccessProblem, Move } from './problem.js';
import type { PartSizes, Stance, StanceSet } from './stance-set.js';
import { everyStance, join, meet, NO_STANCE, withPartAt, withPartFixed, withPartNotAt } from './stance-set.js';
import { closedWalks } from './walks.js';

/** Which step a move is, and which way. */
export interface MoveOrigin {
  readonly step: Step;
  readonly isBack: boolean;
}

/** Everything about the machine that does not depend on what is to be done. */
export interface Machine {
  readonly graph: RuleGraph;
  readonly sizes: PartSizes;
  readonly moves: readonly Move[];
  /** For each move where it comes from. */
  readonly origins: readonly MoveOrigin[];
  /** For each never-rule what it forbids. */
  readonly nevers: readonly StanceSet[];
  readonly walk: AccessProblem['walk'];
  readonly rest: Stance;
  readonly work: Stance;
  /** The stances in which a condition holds; `null`: it speaks of more than positions, or is too tangled to work with. */
  readonly condition: (node: NodeId) => StanceSet | null;
}

/** The parts, how they move, and from where: all that it takes to know which stances there are. */
export type MovingParts = Pick<Machine, 'sizes' | 'moves' | 'nevers' | 'rest'>;

const machines = new WeakMap<RuleGraph, Machine>();

/** The machine of a graph, made once and kept for as long as the graph is (a pure function of it): it is proven, and then walked round. */
export function machineOf(graph: RuleGraph): Machine {
  const machine = machines.get(graph) ?? madeOf(graph);
  machines.set(graph, machine);
  return machine;
}

function madeOf(graph: RuleGraph): Machine {
  const sizes = graph.access.parts.map((part) => Math.max(1, part.positions.length));
  const sets = conditionSets(graph, sizes);
  const condition = (node: NodeId): StanceSet | null => sets[node]?.yes ?? null;
  const rest = stanceFrom(graph, graph.access.rest);
  const base = { graph, sizes, condition, rest };
  const both = graph.access.steps.flatMap((step) => [
    { step, isBack: false },
    ...(step.back === undefined ? [] : [{ step, isBack: true }]),
  ]);
  return {
    ...base,
    moves: both.map(({ step, isBack }) => moveOf(base, step, isBack)),
    origins: both,
    // A rule that cannot be worked with forbids everything: the checks say so, and nothing is ever done against it.
    nevers: graph.access.nevers.map((never) => condition(never.condition) ?? everyStance(sizes)),
    walk: closedWalks(graph),
    work: stanceFrom(graph, { ...graph.access.rest, ...graph.access.work }),
  };
}

type MachineBase = Pick<Machine, 'graph' | 'sizes' | 'condition' | 'rest'>;

/**
 * The stances in which a site's person is not under or in a part that is held up by nothing. What the author says is meant is let pass.
 */
export function clearOfAloft(machine: Pick<Machine, 'graph' | 'sizes'>, site: Site): StanceSet {
  return undersOf(machine.graph, site).reduce<StanceSet>((set, part) => {
    const index = partIndex(machine.graph, part);
    return meet(set, withPartNotAt(machine.sizes, index, aloftPositions(machine.graph, index))) ?? NO_STANCE;
  }, everyStance(machine.sizes));
}

/** The parts that a site puts a person under or in, also by its place, without those that are meant. */
export function undersOf(graph: RuleGraph, site: Site): readonly string[] {
  const meant = site.under.filter((under) => under.meant !== undefined).map((under) => under.part);
  const place = graph.access.places.find((each) => each.id === site.place)?.under;
  const all = [...site.under.map((under) => under.part), ...(place === undefined ? [] : [place])];
  return [...new Set(all)].filter((part) => !meant.includes(part));
}

/**
 * The stances in which a condition holds, once it is checked that it can be worked with.
 *
 * @throws RangeError of one that speaks of more than positions, or is too tangled.
 */
export function stancesOf(machine: Pick<Machine, 'condition'>, node: NodeId): StanceSet {
  return itemAt([machine.condition(node)], 0);
}

export function partIndex(graph: RuleGraph, part: string): number {
  return graph.access.parts.findIndex((each) => each.id === part);
}

export function placeIndex(graph: RuleGraph, place: string | undefined): number | null {
  const index = graph.access.places.findIndex((each) => each.id === place);
  return index < 0 ? null : index;
}

/** A stance by index; a part that is not named, or at a position that it does not have, is where it rests, else at its first position. */
export function stanceFrom(graph: RuleGraph, named: NamedStance): Stance {
  return graph.access.parts.map((part) => {
    const at = (position: string | undefined): number => part.positions.findIndex((each) => each.name === position);
    return Math.max(0, at(named[part.id]) >= 0 ? at(named[part.id]) : at(graph.access.rest[part.id]));
  });
}

/** A stance by name. */
export function namedStance(graph: RuleGraph, stance: Stance): NamedStance {
  return Object.fromEntries(graph.access.parts.map((part, index) => [part.id, itemAt(part.positions, itemAt(stance, index)).name]));
}

/** Positions of a part in which it is raised and held up by nothing. */
export function aloftPositions(graph: RuleGraph, part: number): readonly number[] {
  return itemAt(graph.access.parts, part).positions.flatMap((position, index) => (position.aloft ? [index] : []));
}

function moveOf(machine: MachineBase, step: Step, isBack: boolean): Move {
  const { graph, sizes } = machine;
  const part = partIndex(graph, step.part);
  const { positions } = itemAt(graph.access.parts, part);
  const at = (name: string): number => positions.findIndex((position) => position.name === name);
  const [from, to] = isBack ? [at(step.to), at(step.from)] : [at(step.from), at(step.to)];
  const asked = step.while === undefined ? everyStance(sizes) : (machine.condition(step.while) ?? NO_STANCE);
  // The condition is about the other parts: the moving one is read as standing where the step, as written, begins.
  const ofOthers = withPartFixed(asked, sizes, part, at(step.from));
  const clear = clearOfAloft(machine, step.site);
  const safe = withPartFixed(withPartFixed(clear, sizes, part, from), sizes, part, to);
  const isUnderItself = undersOf(graph, step.site).includes(step.part);
  const aloft = aloftPositions(graph, part);
  const barred = isUnderItself && (aloft.includes(from) || aloft.includes(to));
  const during = barred ? NO_STANCE : (meet(ofOthers, safe) ?? NO_STANCE);
  return { part, from, to, during, place: placeIndex(graph, step.site.place), seconds: step.site.seconds };
}

interface BothWays {
  readonly yes: StanceSet | null;
  readonly no: StanceSet | null;
}

/** For each node that speaks of positions alone, where it holds and where it does not. Nodes come after what they refer to. */
function conditionSets(graph: RuleGraph, sizes: PartSizes): readonly (BothWays | undefined)[] {
  const sets: (BothWays | undefined)[] = [];
  for (const node of graph.nodes) sets.push(bothWays(graph, sizes, sets, node));
  return sets;
}

function bothWays(graph: RuleGraph, sizes: PartSizes, sets: readonly (BothWays | undefined)[], node: Node): BothWays | undefined {
  if (node.kind === 'position-is') {
    const part = partIndex(graph, node.part);
    const position = itemAt(graph.access.parts, part).positions.findIndex((each) => each.name === node.position);
    return { yes: withPartAt(sizes, part, [position]), no: withPartNotAt(sizes, part, [position]) };
  }
  if (node.kind === 'not') {
    const part = sets[node.part];
    return part && { yes: part.no, no: part.yes };
  }
  if (node.kind !== 'and' && node.kind !== 'or') return undefined;
  const parts = node.parts.map((part) => sets[part]);
  if (!parts.every((part) => part !== undefined)) return undefined;
  const yes = parts.map((part) => part.yes);
  const no = parts.map((part) => part.no);
  return node.kind === 'and' ? { yes: all(yes, sizes), no: any(no) } : { yes: any(yes), no: all(no, sizes) };
}

function all(sets: readonly (StanceSet | null)[], sizes: PartSizes): StanceSet | null {
  return sets.reduce<StanceSet | null>((sum, set) => (sum === null || set === null ? null : meet(sum, set)), everyStance(sizes));
}

function any(sets: readonly (StanceSet | null)[]): StanceSet | null {
  return sets.reduce<StanceSet | null>((sum, set) => (sum === null || set === null ? null : join(sum, set)), NO_STANCE);
}
