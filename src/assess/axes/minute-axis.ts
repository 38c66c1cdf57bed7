import type { CalendarAmount } from '../../graph/rule-graph.js';
import { type Day, firstMinute, lastMinute, MINUTES_PER_DAY, type Moment } from '../../values/moment.js';
import type { Axis } from '../axis.js';
import type { World } from '../world.js';
import { serviceStart } from './service-start.js';

/** Minutes since 1970-01-01T00:00. A base without a minute counts from the start of its day, a now without one at the end of it. */
export function minuteAxis(world: World): Axis {
  return {
    now: () => ({ value: lastMinute(world.now), entries: [] }),
    at: (doing) => (doing.when === null ? null : { value: firstMinute(doing.when), entries: [] }),
    start: () => serviceStart(world, (day) => day * MINUTES_PER_DAY),
    add: (base, { count }: CalendarAmount, k) => base + k * count,
    before: (due, { size }) => due - size * MINUTES_PER_DAY,
    after: (due, { size }) => due + size * MINUTES_PER_DAY,
    point: (value) => ({ on: 'moment', at: momentOf(value) }),
    reached: (value) => ({ value, when: momentOf(value), entries: [] }),
    missing: { what: 'in-service' },
    rate: MINUTES_PER_DAY,
  };
}

function momentOf(minutes: number): Moment {
  const day = Math.floor(minutes / MINUTES_PER_DAY);
  return { day: day as Day, minute: minutes - day * MINUTES_PER_DAY };
}
