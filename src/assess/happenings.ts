/** When something last happened that rules count from: an event that was noted, one of a day that the schedule names, or the doing of a task. */
import type { EntryId } from '../history/entry.js';
import type { Stamped, Timeline } from '../history/timeline.js';
import { type Day, type Moment, onDay } from '../values/moment.js';
import type { Note } from './assessment.js';
import type { Axis } from './axis.js';
import { type AxisValue, lastDoingSince, meterValueAt, valueAt } from './doings.js';
import type { World } from './world.js';

/** Something that happened. */
export interface Happening {
  readonly when: Moment;
  readonly entries: readonly EntryId[];
  /** Where an axis stood then. */
  readonly on: (axis: Axis) => AxisValue | null;
}

/** The last time that an event of the schedule happened; undefined where it never did, as far as the record shows. */
export function lastHappening(world: World, event: string): Happening | undefined {
  const { task, on } = world.index.events.get(event) ?? {};
  if (on !== undefined) return onItsDay(world, on as Day);
  if (task !== undefined) {
    const doing = lastDoingSince(world, task, null);
    return doing && { when: doing.when, entries: doing.entries, on: (axis) => axis.at(doing, doing.when) };
  }
  return asHappening(world, world.timeline.events.get(event)?.at(-1));
}

/** What is noted of an event that has not happened: the day on which it will, where the schedule names one. */
export function notYet(world: World, event: string): Extract<Note, { is: 'not-happened' }> {
  const on = world.index.events.get(event)?.on;
  return { is: 'not-happened', ...(on === undefined ? {} : { on: on as Day }) };
}

/** What happens to every machine on a day that the schedule names; to one that entered service later, when it did. Undefined before. */
export function onItsDay(world: World, day: Day): Happening | undefined {
  const { machine } = world.timeline;
  const { entry } = machine;
  const when = onDay(dayItHappens(machine, day));
  const late = when.day > day;
  if (when.day > world.now.day) return undefined;
  return {
    when,
    entries: late && entry !== null ? [entry] : [],
    on: (axis) => (late ? axis.start() : stoodAt(world, axis, when, undefined)),
  };
}

/** The day on which a machine meets what happens on a day to every one that is in service. */
export function dayItHappens({ inService }: Timeline['machine'], day: Day): Day {
  return inService !== null && inService > day ? inService : day;
}

/** What one entry says that happened. */
export function asHappening(world: World, noted: Stamped | undefined): Happening | undefined {
  return noted && { when: noted.when, entries: [noted.entry], on: (axis) => stoodAt(world, axis, noted.when, noted.entry) };
}

/** Where an axis stood when something happened that an entry tells of: for a meter, what that entry notes of it goes first. */
export function stoodAt(world: World, axis: Axis, when: Moment, by: EntryId | undefined): AxisValue | null {
  const meterThen = (meter: string): AxisValue | null => {
    const isCounted = world.index.meters.get(meter)?.fromOutings === true;
    const own = isCounted ? undefined : world.timeline.meters.get(meter)?.points.findLast(({ entry }) => entry === by);
    return valueAt(own) ?? meterValueAt(world, meter, when);
  };
  return axis.at({ when, meter: meterThen }, when);
}
