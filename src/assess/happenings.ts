/** When something last happened that rules count from: an event that was noted, one of a day that the schedule names, or the doing of a task. */
import type { EntryId } from '../history/entry.js';
import type { Stamped, Timeline } from '../history/timeline.js';
import { type Day, type Moment, onDay } from '../values/moment.js';
import type { Note } from './assessment.js';
import type { Axis } from './axis.js';
import { type AxisValue, datedDoings, lastDoingSince, meterValueAt, valueAt } from './doings.js';
import type { World } from './world.js';

/** Something that happened. */
export interface Happening {
  readonly when: Moment;
  readonly entries: readonly EntryId[];
  /** Where an axis stood then. */
  readonly on: (axis: Axis) => AxisValue | null;
}

/** What is told of something that has not happened. */
export interface NotYet {
  readonly entries: readonly EntryId[];
  readonly note: Extract<Note, { is: 'not-happened' }>;
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

/** One of the times that something happened: as it was noted, or what else it is known by. */
export type OneTime = Stamped | Pick<Happening, 'when' | 'entries'>;

/** Each time that an event of the schedule happened, in order: nothing is copied, for there may be thousands. */
export function happeningsOf(world: World, event: string): readonly OneTime[] {
  const { task, on } = world.index.events.get(event) ?? {};
  if (task !== undefined) return datedDoings(world, task);
  if (on === undefined) return world.timeline.events.get(event) ?? [];
  return [onItsDay(world, on as Day)].filter((each) => each !== undefined);
}

/** The entries that tell of one of the times. */
export function entriesOf(time: OneTime): readonly EntryId[] {
  return 'entry' in time ? [time.entry] : time.entries;
}

/** What is told of an event that has not happened: the day on which it will, where the schedule names one, and the entry that puts it off. */
export function notYet({ index, timeline }: World, event: string): NotYet {
  const on = index.events.get(event)?.on;
  if (on === undefined) return { entries: [], note: { is: 'not-happened' } };
  const { when, entries } = met(timeline, on as Day);
  return { entries, note: { is: 'not-happened', on: when.day } };
}

/** What happens to every machine on a day that the schedule names; to one that entered service later, when it did. Undefined before. */
export function onItsDay(world: World, day: Day): Happening | undefined {
  const { when, entries } = met(world.timeline, day);
  if (when.day > world.now.day) return undefined;
  return { when, entries, on: (axis) => (when.day > day ? axis.start() : stoodAt(world, axis, when, undefined)) };
}

/** When a machine meets what happens on a day to every one, and the entry that tells so where it is later. */
function met({ machine }: Timeline, day: Day): Pick<Happening, 'when' | 'entries'> {
  const when = onDay(dayItHappens(machine, day));
  return { when, entries: when.day > day && machine.entry !== null ? [machine.entry] : [] };
}

/** The day on which a machine meets what happens on a day to every one that is in service. */
export function dayItHappens({ inService }: Timeline['machine'], day: Day): Day {
  return Math.max(day, inService ?? day) as Day;
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
