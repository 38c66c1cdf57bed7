import { addAmount, marginAfter, marginBefore } from '../../graph/calendar-amount.js';
import type { Amount, CalendarAmount } from '../../graph/rule-graph.js';
import { type Day, onDay } from '../../values/moment.js';
import type { Axis } from '../axis.js';
import type { World } from '../world.js';
import { serviceStart } from './service-start.js';

/** Days of the calendar. */
export function dayAxis(world: World, { unit }: CalendarAmount): Axis {
  return {
    now: () => ({ value: world.now.day, entries: [] }),
    at: (doing) => (doing.when === null ? null : { value: doing.when.day, entries: [] }),
    atMoment: (when) => ({ value: when.day, entries: [] }),
    start: () => serviceStart(world, (day) => day),
    add: (base, amount, k) => dueDay(base as Day, amount, k),
    before: marginBefore,
    after: marginAfter,
    point: (value) => ({ on: 'calendar', day: value as Day, goodThrough: unit === 'calendar-months' }),
    reached: (value, strict) => {
      const day = (strict ? value + 1 : value) as Day;
      return { value: day, when: onDay(day), entries: [] };
    },
    missing: { what: 'in-service' },
    rate: 1,
  };
}

/** The base itself before the first span: calendar months would else carry it to the end of its month. */
function dueDay(base: Day, amount: Amount, k: number): number {
  return k === 0 ? base : addCalendar(base, amount, k);
}

/** A day plus k calendar spans, from the base each time, so that month ends do not drift. */
export function addCalendar(base: Day, amount: Amount, k: number): number {
  if (amount.on !== 'calendar') throw new Error('not a calendar amount');
  return addAmount(base, amount, k);
}
