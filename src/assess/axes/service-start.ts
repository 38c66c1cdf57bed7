import type { EntryId } from '../../history/entry.js';
import type { Day } from '../../values/moment.js';
import type { AxisValue } from '../doings.js';
import type { World } from '../world.js';

/** Where an axis stood on the day on which the machine entered service. */
export function serviceStart(world: World, value: (day: Day, entry: EntryId) => number): AxisValue | null {
  const { machine } = world.timeline;
  return machine.inService === null || machine.entry === null
    ? null
    : { value: value(machine.inService, machine.entry), entries: [machine.entry] };
}
