import { addPlain } from '../../graph/calendar-amount.js';
import type { CalendarAmount, Margin } from '../../graph/rule-graph.js';
import { addMonths } from '../../values/calendar.js';
import { type Day, onDay } from '../../values/moment.js';
import type { Axis } from '../axis.js';
import type { World } from '../world.js';
import { serviceStart } from './service-start.js';

/** How spans and margins are added to a day. */
export interface DaySpans {
  readonly add: (base: Day, amount: CalendarAmount, k: number) => Day;
  readonly before: (due: number, margin: Margin) => number;
  readonly after: (due: number, margin: Margin) => number;
}

/** Days of the calendar. */
export function dayAxis(world: World, { unit }: CalendarAmount): Axis {
  const { add, before, after } = world.kinds.aspects['calendar-months'] ?? daysAndMonths;
  return {
    now: () => ({ value: world.now.day, entries: [] }),
    at: (doing) => (doing.when === null ? null : { value: doing.when.day, entries: [] }),
    start: () => serviceStart(world, (day) => day),
    // The base itself before the first span: calendar months would else carry it to the end of its month.
    add: (base, amount: CalendarAmount, k) => (k === 0 ? base : add(base as Day, amount, k)),
    before,
    after,
    point: (value) => ({ on: 'calendar', day: value as Day, goodThrough: unit === 'calendar-months' }),
    reached: (value, strict) => {
      const day = (strict ? value + 1 : value) as Day;
      return { value: day, when: onDay(day), entries: [] };
    },
    missing: { what: 'in-service' },
    rate: 1,
  };
}

/** Days, weeks, months and years. */
const daysAndMonths: DaySpans = {
  add: addPlain,
  before: (due, { size, calendar }) => (calendar?.unit === 'months' ? addMonths(due as Day, -calendar.count) : due - size),
  after: (due, { size, calendar }) => (calendar === undefined ? due + size : addPlain(due as Day, calendar, 1)),
};
