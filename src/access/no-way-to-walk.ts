/**
 * Places that are used and that no stated walk leads to.
 */
import type { AccessFault } from './access-fault.js';
import { itemAt } from './item-at.js';
import type { Machine } from './machine.js';
import { placeIndex } from './machine.js';

/** One fault for each place that cannot be walked to from the first one that is used. */
export function noWayToWalk(machine: Machine): readonly AccessFault[] {
  const { graph } = machine;
  const sites = [
    ...graph.access.steps.map(({ id, site, origin }) => ({ id, site, at: origin })),
    ...graph.tasks.map(({ id, site, origin }) => ({ id, site, at: origin })),
  ];
  const used = sites.flatMap(({ id, site, at }) => {
    const place = placeIndex(graph, site.place);
    return place === null ? [] : [{ id, place, at }];
  });
  const [first] = used;
  if (first === undefined) return [];
  const walks = itemAt(machine.walk, first.place);
  const from = itemAt(graph.access.places, first.place).id;
  const told = new Set<number>();
  return used.flatMap(({ id, place, at }): readonly AccessFault[] => {
    if (Number.isFinite(itemAt(walks, place)) || told.has(place)) return [];
    told.add(place);
    const to = itemAt(graph.access.places, place).id;
    const message = `No walk leads from \`${from}\` to \`${to}\`, where \`${id}\` is done.`;
    const help = `State one: \`walk ${from} to ${to} 10 s\`. Nobody walks through a place that is under a part.`;
    return [{ kind: 'no-way-to-walk', at, message, way: [], help }];
  });
}
