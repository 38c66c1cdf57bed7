import type { MeterAmount } from '../../graph/rule-graph.js';
import type { Axis } from '../axis.js';
import { meterValueAt, valueAt } from '../doings.js';
import { firstPointReaching } from '../first-point-reaching.js';
import type { World } from '../world.js';
import { inTicks } from './in-ticks.js';
import { serviceStart } from './service-start.js';

/** Ticks of a meter's life total. */
export function meterAxis(world: World, { meter }: MeterAmount): Axis {
  const track = world.timeline.meters.get(meter);
  return {
    now: () => meterValueAt(world, meter, world.now),
    at: (doing) => doing.meter(meter),
    // It stood at what the machine's own entry notes, else at 0.
    start: () => serviceStart(world, (_, entry) => track?.points.find((point) => point.entry === entry)?.total ?? 0),
    ...inTicks,
    point: (value) => ({ on: 'meter', meter, ticks: value }),
    reached: (value, strict) => {
      const point = firstPointReaching(world, meter, value, strict);
      const at = valueAt(point);
      return point === undefined || at === null ? null : { ...at, when: point.when };
    },
    missing: { what: 'meter', meter },
    rate: world.options.rates?.get(meter) ?? null,
  };
}
