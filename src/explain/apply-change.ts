/**
 * Makes a change happen in a history, so that anybody can try what an explanation says would alter the state.
 *
 * Law (held by tests/properties): assessing the result of `applyChange(change, …)` gives the task the state `change.becomes`;
 * assessing that of `justShort(change, …)` does not.
 */
import { assertNever } from '../base/assert-never.js';
import type { Entry } from '../history/entry.js';
import { dayOf, formatDate } from '../values/civil.js';
import type { Day, Moment } from '../values/moment.js';
import { unitsOf } from '../values/ticks.js';
import type { Change, MeterReaches } from './change.js';
import { edgeValue, shortOfEdge } from './edges.js';

/** A history with the moment at which it is looked at. */
export interface Situation {
  readonly history: readonly Entry[];
  readonly now: Moment;
}

/**
 * The situation after the change.
 *
 * @example applyChange({ change: 'do-it', task: 'change-engine-oil', becomes: 'clear' }, history, now)
 */
export function applyChange(change: Change, history: readonly Entry[], now: Moment): Situation {
  const past = history.filter((entry) => hasHappened(entry, now));
  const common = { id: freshId(history, 'what-if'), ...stamp(now) };
  switch (change.change) {
    case 'do-it':
      return { history: [...past, { kind: 'done', ...common, tasks: [change.task] }], now };
    case 'meter-reaches':
      return { history: [...past, ...readMeter(change, change.ticks, history, now)], now };
    case 'date-reaches':
      return { history: past, now: { day: change.day, minute: null } };
    case 'reads':
      return { history: [...past, { kind: 'reading', ...common, readings: { [change.instrument]: edgeValue(change) } }], now };
    case 'state-it':
      return {
        history: [...past, { kind: 'stated', ...common, task: change.task, doneBy: formatDate(now.day), doneAt: { ...change.doneAt } }],
        now,
      };
    case 'happens':
      return { history: [...past, { kind: 'event', ...common, event: change.event }], now };
    case 'opens':
      return { history: [...past, { kind: 'defect-opened', ...common, defect: change.defect, class: change.class }], now };
    default:
      return assertNever(change);
  }
}

/** The situation just short of the change: a tick or a day less, a reading on the other side of the edge, a thing not done. */
export function justShort(change: Change, history: readonly Entry[], now: Moment): Situation {
  const past = history.filter((entry) => hasHappened(entry, now));
  switch (change.change) {
    case 'meter-reaches':
      return { history: [...past, ...readMeter(change, change.ticks - 1, history, now)], now };
    case 'date-reaches': {
      const before = (change.day - 1) as Day;
      return { history: past, now: before === now.day ? now : { day: before, minute: null } };
    }
    case 'reads': {
      const reading: Entry = {
        kind: 'reading',
        id: freshId(history, 'what-if'),
        ...stamp(now),
        readings: { [change.instrument]: shortOfEdge(change) },
      };
      return { history: [...past, reading], now };
    }
    case 'do-it':
    case 'state-it':
    case 'happens':
    case 'opens':
      return { history: past, now };
    default:
      return assertNever(change);
  }
}

/** A reading of the dial, confirmed, since nobody knows how long the meter took to get there. */
function readMeter(change: MeterReaches, ticks: number, history: readonly Entry[], now: Moment): readonly Entry[] {
  const reading = freshId(history, 'what-if');
  return [
    { kind: 'reading', id: reading, ...stamp(now), meters: { [change.meter]: unitsOf(ticks - change.dialBehind) } },
    { kind: 'confirm', id: freshId(history, 'what-if-confirmed'), ...stamp(now), entry: reading },
  ];
}

/** Entries dated later than now are not part of what the explanation speaks about: "and nothing else happens". */
function hasHappened(entry: Entry, now: Moment): boolean {
  const day = dayOf(entry.on);
  if (day === null || day > now.day) return false;
  const minute = entry.at === undefined ? null : minuteOf(entry.at);
  return day < now.day || now.minute === null || minute === null || minute <= now.minute;
}

function stamp(now: Moment): { readonly on: string; readonly at?: string } {
  return { on: formatDate(now.day), ...(now.minute === null ? {} : { at: clock(now.minute) }) };
}

function clock(minute: number): string {
  return `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
}

function minuteOf(time: string): number {
  return Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5));
}

function freshId(history: readonly Entry[], wish: string): string {
  const taken = new Set(history.map((entry) => entry.id));
  let id = wish;
  for (let n = 2; taken.has(id); n += 1) id = `${wish}-${n}`;
  return id;
}
