/**
 * Work under or in a part that is raised and held up by nothing (29 CFR 1926.600(a)(3)(i), as a model).
 */
import type { RuleGraph, Site, Step } from '../graph/rule-graph.js';
import type { AccessFault } from './access-fault.js';
import { wayTitles } from './fault-words.js';
import { itemAt } from './item-at.js';
import type { Machine } from './machine.js';
import type { MachineSpace } from './machine-space.js';
import { aloftPositions, partIndex, stancesOf, undersOf } from './machine.js';
import type { StanceSet } from './stance-set.js';
import { everyStance, meet, NO_STANCE, withPartAt, withPartFixed } from './stance-set.js';

/** One fault for each task or step, and part that it can put a person under or in while that is aloft. */
export function underRaisedParts(machine: Machine, space: MachineSpace): readonly AccessFault[] {
  const { graph } = machine;
  const sites = [
    ...graph.tasks.map((task) => ({
      id: task.id,
      title: task.title,
      site: task.site,
      at: task.origin,
      set: task.stance === undefined ? everyStance(machine.sizes) : stancesOf(machine, task.stance),
      step: null,
    })),
    ...graph.access.steps.map((step) => ({
      id: step.id,
      title: step.title,
      site: step.site,
      at: step.origin,
      set: stepStances(machine, step),
      step,
    })),
  ];
  return sites.flatMap(({ id, title, site, at, set, step }) =>
    undersOf(graph, site).flatMap((part): readonly AccessFault[] => {
      const index = partIndex(graph, part);
      const own = step?.part === part ? step : null;
      const asked = own !== null ? set : (meet(set, withPartAt(machine.sizes, index, aloftPositions(graph, index))) ?? NO_STANCE);
      const raised = own !== null && !movesAloft(graph, own) ? null : space.wayInto(asked);
      if (raised === null) return [];
      const way = [...wayTitles(machine, raised), title];
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
function stepStances(machine: Machine, step: Step): StanceSet {
  const part = partIndex(machine.graph, step.part);
  const at = (name: string): number => positionsOf(machine.graph, step).findIndex((position) => position.name === name);
  const asked = step.while === undefined ? everyStance(machine.sizes) : stancesOf(machine, step.while);
  return (
    meet(withPartFixed(asked, machine.sizes, part, at(step.from)), withPartAt(machine.sizes, part, [at(step.from), at(step.to)])) ??
    NO_STANCE
  );
}

function movesAloft(graph: RuleGraph, step: Step): boolean {
  return positionsOf(graph, step).some((position) => position.aloft && (position.name === step.from || position.name === step.to));
}

function positionsOf(graph: RuleGraph, step: Step): RuleGraph['access']['parts'][number]['positions'] {
  return itemAt(graph.access.parts, partIndex(graph, step.part)).positions;
}

function raisedHelp(graph: RuleGraph, part: string, site: Site): string {
  const safe = itemAt(graph.access.parts, partIndex(graph, part)).positions.filter((position) => !position.aloft);
  const place = graph.access.places.find((each) => each.id === site.place && each.under === part);
  const positions = safe.map((position) => `\`${part} ${position.name}\``).join(' or ');
  return `Ask for ${positions}${place === undefined ? '' : `; \`${place.id}\` is under it`}; or, where it has to be so, say why: \`under ${part} meant "…"\`.`;
}
