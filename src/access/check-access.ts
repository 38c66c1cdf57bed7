/**
 * Proves, over every stance that can be reached, that following a schedule leads nobody into a dead end or a hazard.
 *
 * Each law has a function of its own; a fault comes with the shortest way into it. After 29 CFR 1926.600(a)(3)(i), as a model, nobody
 * works under or in a part that is raised and not blocked unless the author says that it is meant.
 */
import type { Origin, RuleGraph, Site } from '../graph/rule-graph.js';
import type { AccessFault } from './access-fault.js';
import { idleSteps } from './idle-steps.js';
import type { Machine } from './machine.js';
import { aloftPositions, machineOf, partIndex, placeIndex, undersOf } from './machine.js';
import { moveTitle } from './move-title.js';
import type { StanceSet } from './stance-set.js';
import { everyStance, holds, meet, withPartAt, withPartFixed } from './stance-set.js';
import type { StanceSpace, Way } from './stance-space.js';
import { exploreStances, whatBlocks } from './stance-space.js';

/** Stances that are looked at; a schedule with more is told so. */
export const MOST_STANCES = 20_000;

/** All faults of a graph's access rules. A graph without parts has none. */
export function checkAccess(graph: RuleGraph): readonly AccessFault[] {
  const machine = machineOf(graph);
  const tangled = tangledConditions(machine);
  const forbidden = forbiddenFromTheStart(machine);
  const walks = noWayToWalk(machine);
  if (tangled.length > 0 || forbidden.length > 0) return [...tangled, ...forbidden, ...walks];
  const space = exploreStances(machine, MOST_STANCES);
  if (!space.isWhole) return [...walks, tooManyStances(machine)];
  const out = [...outOfReach(machine, space), ...deadEnds(machine, space), ...underRaisedParts(machine, space)];
  // Where something is out of reach anyway, the steps that lead there seem idle: one fault is enough.
  return [...walks, ...out, ...(out.length > 0 ? [] : idleSteps(machine, space))];
}

function tangledConditions(machine: Machine): readonly AccessFault[] {
  const { graph } = machine;
  const conditions = [
    ...graph.access.steps.flatMap((step) => (step.while === undefined ? [] : [{ node: step.while, at: step.origin, name: step.id }])),
    ...graph.access.nevers.map((never) => ({ node: never.condition, at: never.origin, name: never.title })),
    ...graph.tasks.flatMap((task) => (task.stance === undefined ? [] : [{ node: task.stance, at: task.origin, name: task.id }])),
  ];
  return conditions
    .filter(({ node }) => machine.condition(node) === null)
    .map(({ at, name }) => ({
      kind: 'tangled-condition',
      at,
      message: `The stance that \`${name}\` asks for cannot be worked with: it is too tangled, or speaks of more than positions.`,
      way: [],
      help: 'Say it with fewer alternatives, of positions alone.',
    }));
}

function forbiddenFromTheStart(machine: Machine): readonly AccessFault[] {
  const { graph, rest, work } = machine;
  return graph.access.nevers.flatMap((never, index) =>
    (
      [
        ['at rest', rest],
        ['at work', work],
      ] as const
    ).flatMap(([when, stance]): readonly AccessFault[] => {
      if (!holds(machine.nevers[index] ?? [], stance) || (when === 'at work' && graph.access.work === undefined)) return [];
      const message = `The machine ${when} breaks the rule "${never.title}".`;
      return [{ kind: 'forbidden-from-the-start', at: never.origin, message, way: [], help: `Change the rule, or what \`${when}\` says.` }];
    }),
  );
}

function outOfReach(machine: Machine, space: StanceSpace): readonly AccessFault[] {
  const { graph } = machine;
  const wanted = graph.tasks.flatMap((task) =>
    task.stance === undefined ? [] : [{ name: `\`${task.id}\``, at: task.origin, set: machine.condition(task.stance) ?? [] }],
  );
  if (graph.access.work !== undefined) {
    const at = graph.access.parts[0]?.origin;
    if (at !== undefined) wanted.push({ name: 'The stance `at work`', at, set: [machine.work.map((position) => 1 << position)] });
  }
  return wanted.filter(({ set }) => space.nearest(set) < 0).map(({ name, at, set }) => unreachable(machine, name, at, set));
}

function unreachable(machine: Machine, name: string, at: Origin, set: StanceSet): AccessFault {
  const kind = 'out-of-reach';
  const blocked = whatBlocks(machine, machine.rest, set, MOST_STANCES);
  if (blocked === null) {
    const forbidden = machine.nevers.findIndex(
      (never) => set.length > 0 && set.every((box) => never.some((wider) => box.every((mask, part) => (mask & ~(wider[part] ?? 0)) === 0))),
    );
    const rule = ruleOf(machine, forbidden);
    const help =
      rule === undefined ? `No steps lead there from rest: ${missingStep(machine, set)}.` : 'Ask for another stance, or change the rule.';
    const message = rule === undefined ? `${name} needs a stance that no steps lead to.` : `${name} needs a stance that a rule forbids.`;
    return { kind, at, message, way: [], help, ...(rule === undefined ? {} : { rule }) };
  }
  const step = machine.origins[blocked.move];
  const title = moveTitle(machine, blocked.move);
  const byNever = ruleOf(machine, blocked.never ?? -1);
  const rule =
    byNever ?? (step === undefined ? undefined : { at: step.step.origin, text: `"${title}" needs what cannot be had on the way` });
  return {
    kind,
    at,
    message: `${name} needs a stance that cannot be reached from rest: ${byNever === undefined ? `"${title}" cannot be done` : `"${title}" would break a rule`}.`,
    way: [...wayTitles(machine, blocked.way), `blocked: ${title}`],
    help: 'Change the rule or the step that blocks the way, or add a step that leads round it.',
    ...(rule === undefined ? {} : { rule }),
  };
}

function missingStep(machine: Machine, set: StanceSet): string {
  const box = set[0];
  if (box === undefined) return 'it asks for two positions of one part at a time, or for a position that there is not';
  const part = box.findIndex((mask, index) => {
    const reachable = machine.moves.reduce(
      (bits, move) => (move.part === index ? bits | (1 << move.to) : bits),
      1 << (machine.rest[index] ?? 0),
    );
    return (mask & reachable) === 0;
  });
  const named = machine.graph.access.parts[part];
  const position = named?.positions.find((_, index) => (((box[part] ?? 0) >> index) & 1) === 1);
  return named === undefined ? 'a step is missing' : `no step brings \`${named.id}\` to \`${position?.name ?? ''}\``;
}

/** One fault for each way into trouble: the stance with the fewest steps, not each of the stances behind it. */
function deadEnds(machine: Machine, space: StanceSpace): readonly AccessFault[] {
  const faults: AccessFault[] = [];
  const told = new Set<number>();
  space.exits.forEach((out, from) => {
    if (space.returns[from] !== true) return;
    for (const { move, to } of out) {
      if (space.returns[to] === true || told.has(move)) continue;
      told.add(move);
      faults.push(deadEnd(machine, space, from, move, to));
    }
  });
  return faults;
}

function deadEnd(machine: Machine, space: StanceSpace, from: number, move: number, to: number): AccessFault {
  const stance = space.stances[to] ?? [];
  const blocked = whatBlocks(machine, stance, [machine.rest.map((position) => 1 << position)], MOST_STANCES);
  const origin = machine.origins[move]?.step;
  const rule = blocked === null ? undefined : (ruleOf(machine, blocked.never ?? -1) ?? stepRule(machine, blocked.move));
  return {
    kind: 'dead-end',
    at: origin?.origin ?? machine.graph.access.parts[0]?.origin ?? NOWHERE,
    message: `After "${moveTitle(machine, move)}" there is no way back to rest.`,
    way: [
      ...wayTitles(machine, space.wayTo(from)),
      moveTitle(machine, move),
      ...(blocked === null ? [] : [...wayTitles(machine, blocked.way), `blocked: ${moveTitle(machine, blocked.move)}`]),
    ],
    help:
      blocked === null
        ? 'Give the step a way back, or add a step that leads out of it.'
        : 'Let the step back be done in this stance, or keep the machine from getting into it.',
    ...(rule === undefined ? {} : { rule }),
  };
}

function underRaisedParts(machine: Machine, space: StanceSpace): readonly AccessFault[] {
  const { graph } = machine;
  const sites = [
    ...graph.tasks.map((task) => ({
      id: task.id,
      title: task.title,
      site: task.site,
      at: task.origin,
      set: task.stance === undefined ? everyStance(machine.sizes) : (machine.condition(task.stance) ?? []),
      moves: null,
    })),
    ...graph.access.steps.map((step) => ({
      id: step.id,
      title: step.title,
      site: step.site,
      at: step.origin,
      set: stepStances(machine, step.id),
      moves: step.part,
    })),
  ];
  return sites.flatMap(({ id, title, site, at, set, moves }) =>
    undersOf(graph, site).flatMap((part): readonly AccessFault[] => {
      const index = partIndex(graph, part);
      const asked = moves === part ? set : (meet(set, withPartAt(machine.sizes, index, aloftPositions(graph, index))) ?? []);
      const raised = moves === part && !movesAloft(machine, id, index) ? -1 : space.nearest(asked);
      if (raised < 0) return [];
      const way = [...wayTitles(machine, space.wayTo(raised)), title];
      return [
        {
          kind: 'under-raised-part',
          at,
          message: `\`${id}\` can put a person under or in \`${part}\` while it is raised and not blocked.`,
          way,
          help: raisedHelp(graph, part, site),
        },
      ];
    }),
  );
}

/** Stances before or after the step as written, whatever else forbids it: the check is about what a person could be led to do. */
function stepStances(machine: Machine, id: string): StanceSet {
  const step = machine.graph.access.steps.find((each) => each.id === id);
  if (step === undefined) return [];
  const part = partIndex(machine.graph, step.part);
  const at = (name: string): number => machine.graph.access.parts[part]?.positions.findIndex((position) => position.name === name) ?? 0;
  const asked = step.while === undefined ? everyStance(machine.sizes) : (machine.condition(step.while) ?? []);
  return (
    meet(withPartFixed(asked, machine.sizes, part, at(step.from)), withPartAt(machine.sizes, part, [at(step.from), at(step.to)])) ?? []
  );
}

function movesAloft(machine: Machine, id: string, part: number): boolean {
  const step = machine.graph.access.steps.find((each) => each.id === id);
  const positions = machine.graph.access.parts[part]?.positions ?? [];
  return positions.some((position) => position.aloft && (position.name === step?.from || position.name === step?.to));
}

function raisedHelp(graph: RuleGraph, part: string, site: Site): string {
  const safe = graph.access.parts.find((each) => each.id === part)?.positions.filter((position) => !position.aloft) ?? [];
  const byPlace = graph.access.places.find((place) => place.id === site.place)?.under === part;
  const positions = safe.map((position) => `\`${part} ${position.name}\``).join(' or ');
  return `Ask for ${positions}${byPlace ? `; \`${site.place ?? ''}\` is under it` : ''}; or, where it has to be so, say why: \`under ${part} meant "…"\`.`;
}

function noWayToWalk(machine: Machine): readonly AccessFault[] {
  const { graph } = machine;
  const used = [
    ...graph.access.steps.map((step) => ({ id: step.id, place: step.site.place, at: step.origin })),
    ...graph.tasks.map((task) => ({ id: task.id, place: task.site.place, at: task.origin })),
  ];
  const first = used.find(({ place }) => place !== undefined);
  const from = placeIndex(graph, first?.place);
  const told = new Set<string>();
  return used.flatMap(({ id, place, at }): readonly AccessFault[] => {
    const to = placeIndex(graph, place);
    if (to === null || from === null || Number.isFinite(machine.walk[from]?.[to]) || told.has(place ?? '')) return [];
    told.add(place ?? '');
    const message = `No walk leads from \`${first?.place ?? ''}\` to \`${place ?? ''}\`, where \`${id}\` is done.`;
    return [
      {
        kind: 'no-way-to-walk',
        at,
        message,
        way: [],
        help: `State one: \`walk ${first?.place ?? ''} to ${place ?? ''} 10 s\`. Nobody walks through a place that is under a part.`,
      },
    ];
  });
}

function tooManyStances(machine: Machine): AccessFault {
  const message = `The moving parts have more than 20,000 stances together: whether every task can be reached was not checked.`;
  return {
    kind: 'too-many-stances',
    at: machine.graph.access.parts[0]?.origin ?? NOWHERE,
    message,
    way: [],
    help: 'Tie the parts together with `while` conditions, or leave out parts that no task asks about.',
  };
}

function ruleOf(machine: Machine, never: number): AccessFault['rule'] {
  const rule = machine.graph.access.nevers[never];
  return rule === undefined ? undefined : { at: rule.origin, text: `the rule "${rule.title}"` };
}

function stepRule(machine: Machine, move: number): AccessFault['rule'] {
  const step = machine.origins[move]?.step;
  return step === undefined ? undefined : { at: step.origin, text: `"${moveTitle(machine, move)}" cannot be done then` };
}

function wayTitles(machine: Machine, way: Way): readonly string[] {
  return way.map((move) => moveTitle(machine, move));
}

const NOWHERE: Origin = { source: 0, line: 1, column: 1, text: '' };
