import type { Hold } from './assessment.js';
import { test } from './condition.js';
import type { World } from './world.js';

/** Declared stops whose condition is true or unknown. */
export function stopHolds(world: World): readonly Hold[] {
  return world.index.graph.stops.flatMap((stop): Hold[] => {
    const { truth, entries, missing } = test(world, stop.condition);
    return truth === 'false' ? [] : [{ why: { is: 'stop', stop: stop.id }, text: stop.title, truth, entries, missing }];
  });
}
