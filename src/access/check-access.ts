/**
 * Proves, over every stance that can be reached, that following a schedule leads nobody into a dead end or a hazard.
 *
 * Each law has a function of its own; a fault comes with the shortest way into it. After 29 CFR 1926.600(a)(3)(i), as a model, nobody
 * works under or in a part that is raised and not blocked unless the author says that it is meant.
 */
import type { RuleGraph } from '../graph/rule-graph.js';
import type { AccessFault } from './access-fault.js';
import { deadEnds } from './dead-ends.js';
import { idleSteps } from './idle-steps.js';
import { itemAt } from './item-at.js';
import type { Machine } from './machine.js';
import { machineOf, stancesOf } from './machine.js';
import { machineSpace } from './machine-space.js';
import { noWayToWalk } from './no-way-to-walk.js';
import { outOfReach } from './out-of-reach.js';
import { holds } from './stance-set.js';
import { tooManyStances } from './too-many-stances.js';
import { underRaisedParts } from './under-raised-parts.js';

/** Stances that are looked at; a schedule with more is told so. */
const MOST_STANCES = 20_000;

/** Stances that are looked at to find out what blocks the way, shared among the faults of a kind. */
const LOOKS = 60_000;

/** All faults of a graph's access rules. A graph without parts has none. */
export function checkAccess(graph: RuleGraph): readonly AccessFault[] {
  const machine = machineOf(graph);
  const tangled = tangledConditions(machine);
  const forbidden = forbiddenFromTheStart(machine);
  const walks = noWayToWalk(machine);
  if (tangled.length > 0 || forbidden.length > 0) return [...tangled, ...forbidden, ...walks];
  const asked = new Set(graph.tasks.flatMap((task) => task.stance ?? []));
  const space = machineSpace(
    machine,
    [...asked].map((node) => stancesOf(machine, node)),
    MOST_STANCES,
  );
  const many = space.isWhole ? [] : [tooManyStances(machine, space)];
  const out = [...outOfReach(machine, space, LOOKS), ...deadEnds(machine, space, LOOKS), ...underRaisedParts(machine, space)];
  // Where something is out of reach anyway, the steps that lead there seem idle: one fault is enough.
  return [...walks, ...many, ...out, ...(out.length > 0 ? [] : idleSteps(machine, space))];
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
      if (!holds(itemAt(machine.nevers, index), stance) || (when === 'at work' && graph.access.work === undefined)) return [];
      const message = `The machine ${when} breaks the rule "${never.title}".`;
      return [{ kind: 'forbidden-from-the-start', at: never.origin, message, way: [], help: `Change the rule, or what \`${when}\` says.` }];
    }),
  );
}
