/**
 * Proves, over every stance that can be reached, that following a schedule leads nobody into a dead end or a hazard.
 *
 * Each law has a function of its own; a fault comes with the shortest way into it. After 29 CFR 1926.600(a)(3)(i), as a model, nobody
 * works under or in a part that is raised and not blocked unless the author says that it is meant.
 */
import type { RuleGraph } from '../graph/rule-graph.js';
import type { AccessFault } from './access-fault.js';
import { deadEnds } from './dead-ends.js';
import { NOWHERE } from './fault-words.js';
import { idleSteps } from './idle-steps.js';
import type { Machine } from './machine.js';
import { machineOf } from './machine.js';
import type { MachineSpace } from './machine-space.js';
import { machineSpace } from './machine-space.js';
import { noWayToWalk } from './no-way-to-walk.js';
import { outOfReach } from './out-of-reach.js';
import { holds } from './stance-set.js';
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
    [...asked].map((node) => machine.condition(node) ?? []),
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
      if (!holds(machine.nevers[index] ?? [], stance) || (when === 'at work' && graph.access.work === undefined)) return [];
      const message = `The machine ${when} breaks the rule "${never.title}".`;
      return [{ kind: 'forbidden-from-the-start', at: never.origin, message, way: [], help: `Change the rule, or what \`${when}\` says.` }];
    }),
  );
}

/** Names the parts that could not be gone through, where that is not all of them. */
function tooManyStances(machine: Machine, space: MachineSpace): AccessFault {
  const { parts } = machine.graph.access;
  const passed = space.groups.filter((group) => !group.space.isWhole);
  const lost = parts.filter((_, index) => passed.some((group) => group.parts.has(index)));
  const names = lost.map((part) => `\`${part.id}\``);
  const listed = names.length > 6 ? `${names.slice(0, 5).join(', ')} and ${names.length - 5} more` : names.join(', ');
  const message =
    lost.length === parts.length
      ? 'The moving parts have more than 20,000 stances together: whether every task can be reached was not checked.'
      : `Of the moving parts, ${listed} have more than 20,000 stances together: whether what needs them can be reached was not checked.`;
  return {
    kind: 'too-many-stances',
    at: lost[0]?.origin ?? NOWHERE,
    message,
    way: [],
    help: 'Tie the parts together with `while` conditions, or leave out parts that no task asks about.',
  };
}
