/**
 * Places that are used and that no stated walk leads to.
 */
import type { AccessFault } from './access-fault.js';
import type { Machine } from './machine.js';
import { placeIndex } from './machine.js';

/** One fault for each place that cannot be walked to from the first one that is used. */
export function noWayToWalk(machine: Machine): readonly AccessFault[] {
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
