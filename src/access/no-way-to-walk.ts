/**
 * Places that are used and that no stated walk leads to.
 */
import type { AccessFault } from './access-fault.js';
import type { Machine } from './machine.js';
import { placeIndex } from './machine.js';

/** One fault for each place that cannot be walked to from the first one that is used. */
export function noWayToWalk(machine: Machine): readonly AccessFault[] {
  const { graph } = machine;
  const sites = [
    ...graph.access.steps.map(({ id, site, origin }) => ({ id, site, at: origin })),
    ...graph.tasks.map(({ id, site, origin }) => ({ id, site, at: origin })),
  ];
  const used = sites.flatMap(({ id, site, at }) => (site.place === undefined ? [] : [{ id, place: site.place, at }]));
  const first = used[0]?.place ?? '';
  const from = placeIndex(graph, first);
  const told = new Set<string>();
  return used.flatMap(({ id, place, at }): readonly AccessFault[] => {
    const to = placeIndex(graph, place);
    if (from === null || to === null || Number.isFinite(machine.walk[from]?.[to]) || told.has(place)) return [];
    told.add(place);
    const message = `No walk leads from \`${first}\` to \`${place}\`, where \`${id}\` is done.`;
    const help = `State one: \`walk ${first} to ${place} 10 s\`. Nobody walks through a place that is under a part.`;
    return [{ kind: 'no-way-to-walk', at, message, way: [], help }];
  });
}
