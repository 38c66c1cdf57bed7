/** Limits: a base, a span, a due point (§4). */
import type { Amount, CalendarAmount, Counting, LateHold, Margin, WorkAmount } from '../../src/graph/rule-graph.js';
import { after, earliest, later, latest, notBefore, type When } from './calendar.js';
import { firstShows, meterNow } from './meters.js';
import { workSince } from './outings.js';
import { plain, type Due, type Outcome, type State } from './outcome.js';
import type { World } from './world.js';

/** What every limit says of itself. */
export interface Terms {
  readonly id: number;
  readonly early: Margin;
  readonly late: Margin;
  readonly lead: Margin;
  readonly hold?: LateHold;
  readonly strict?: boolean;
  /** Days that a window goes on after its due point. */
  readonly lasts?: number;
}

/** Where counting starts. */
export interface Base {
  /** `null`: nobody knows. */
  readonly when: When | null;
  readonly meter: (meter: string) => number | null;
}

export function unrecorded(terms: Terms): Outcome {
  return plain('unrecorded', terms.id, { stops: terms.hold === undefined ? [] : ['unknown'] });
}

export function unknown(terms: Terms): Outcome {
  return plain('unknown', terms.id, { stops: terms.hold === undefined ? [] : ['unknown'] });
}

/** A limit of one amount from one base. */
export function limit(world: World, terms: Terms, base: Base, amount: Amount): Outcome {
  switch (amount.on) {
    case 'meter':
      return base.meter(amount.meter) === null
        ? unknown(terms)
        : meterLimit(world, terms, amount.meter, base.meter(amount.meter) ?? 0, (base.meter(amount.meter) ?? 0) + amount.ticks);
    case 'work':
      return workLimit(world, terms, base.when, amount, 0);
    case 'calendar':
      return base.when === null ? unknown(terms) : calendarLimit(world, terms, base.when, later(base.when, amount), amount.unit);
  }
}

/** A limit on a meter: `due` and `base` are life totals. */
export function meterLimit(world: World, terms: Terms, meter: string, base: number, due: number, stands = meterNow(world, meter)): Outcome {
  const point: Due = { on: 'meter', meter, ticks: due };
  if (stands === null) return unknown(terms);
  const shown = firstShows(world, meter, (total) => (terms.strict === true ? total > due : total >= due));
  return counted(terms, stands, due, base, point, shown);
}

function counted(terms: Terms, now: number, due: number, base: number, point: Due, reachedAt: When | null): Outcome {
  const late = terms.hold !== undefined && now > latest(due + (terms.lasts ?? 0), terms.hold.after);
  const used = due === base ? 1 : (now - base) / (due - base);
  return plain(stateAt(terms, now, due), terms.id, { due: point, reachedAt, used, stops: late ? ['true'] : [] });
}

/** Due from the due point on, overdue beyond the allowance, coming up from the lead on. */
export function stateAt(terms: Terms, now: number, due: number): State {
  if (now > latest(due + (terms.lasts ?? 0), terms.late)) return 'overdue';
  if (terms.strict === true ? now > due : now >= due) return 'due';
  return now >= earliest(due, terms.lead) ? 'coming-up' : 'clear';
}

/** A limit of time at work; `carried` is what was overrun before. When it was reached is not told. */
export function workLimit(world: World, terms: Terms, base: When | null, amount: WorkAmount, carried: number): Outcome {
  const due = amount.ticks - carried;
  return counted(terms, workSince(world, base, amount.duty), due, -carried, { on: 'work', duty: amount.duty ?? null, ticks: due }, null);
}

/** A limit on the calendar. */
export function calendarLimit(world: World, terms: Terms, base: When, due: When, unit: CalendarAmount['unit']): Outcome {
  if (due.minute !== null) return momentLimit(world, terms, base, due);
  const reachedAt = { day: due.day + (terms.strict === true ? 1 : 0), minute: null };
  return counted(
    terms,
    world.now.day,
    due.day,
    base.day,
    { on: 'calendar', day: due.day, goodThrough: unit === 'calendar-months' },
    reachedAt,
  );
}

function momentLimit(world: World, terms: Terms, base: When, due: When): Outcome {
  const shifted = (days: number): When => ({ day: due.day + days, minute: due.minute });
  const is = terms.strict === true ? after(world.now, due) : notBefore(world.now, due);
  const state = after(world.now, shifted(terms.late.size))
    ? 'overdue'
    : is
      ? 'due'
      : notBefore(world.now, shifted(-terms.lead.size))
        ? 'coming-up'
        : 'clear';
  const late = terms.hold !== undefined && after(world.now, shifted(terms.hold.after.size));
  const minutes = (when: When): number => when.day * 1440 + (when.minute ?? 0);
  const used = (minutes(world.now) - minutes(base)) / (minutes(due) - minutes(base));
  return plain(state, terms.id, { due: { on: 'moment', at: due }, reachedAt: due, used, stops: late ? ['true'] : [] });
}

/** Where a counting rule puts the base for work done somewhere: to where it was done, or to the due point. */
export function nextBase(
  node: { readonly count: Counting; readonly early: Margin; readonly late: Margin },
  due: number | null,
  done: number,
): number {
  if (due === null || node.count === 'doing') return done;
  if (node.count === 'due-if-late') return Math.min(done, due);
  return done >= earliest(due, node.early) && done <= latest(due, node.late) ? due : done;
}
