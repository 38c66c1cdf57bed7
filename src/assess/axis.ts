/**
 * The axes on which limits count: a meter, the calendar, time at work. One object per amount, so that the code that judges a
 * limit need not know which axis it is on.
 */
import type { Amount, Margin } from '../graph/rule-graph.js';
import type { Moment } from '../values/moment.js';
import type { DuePoint, Missing } from './assessment.js';
import type { AxisValue, EffectiveDoing } from './doings.js';
import { carried } from './kinds.js';
import type { World } from './world.js';

export interface Axis {
  /** Where the axis stands now, counted from `base` (which matters for time at work only). */
  readonly now: (base: Moment | null) => AxisValue | null;
  /** Where it stood at a doing, or when something else happened, counted from `base` (which matters for time at work only); the doing's own entries are not repeated. */
  readonly at: (doing: Pick<EffectiveDoing, 'when' | 'meter'>, base: Moment | null) => AxisValue | null;
  /** Where it stood when the machine entered service; `null` if that is not on record. */
  readonly start: () => AxisValue | null;
  /** base + k spans, always from the base. INVARIANT: an axis is asked for amounts of its own kind alone, which its implementation takes for granted. */
  add(base: number, amount: Amount, k: number): number;
  /** Where a margin before a due point begins, and where one after it ends. */
  readonly before: (due: number, margin: Margin) => number;
  readonly after: (due: number, margin: Margin) => number;
  readonly point: (value: number) => DuePoint;
  /** The moment from which the axis stood at `value`, which it has reached, or beyond it; `null` where the record does not show it. */
  readonly reached: (value: number, strict: boolean) => (AxisValue & { readonly when: Moment }) | null;
  /** What would settle a missing "now". */
  readonly missing: Missing;
  /** A rate of use in units of the axis a day, where known. */
  readonly rate: number | null;
}

/** What kinds of axis there are: days and minutes are both of the calendar. */
export type AxisKind = 'meter' | 'work' | 'days' | 'minutes';

/** The kind of axis that an amount counts on. */
export function axisKind(amount: Amount): AxisKind {
  if (amount.on !== 'calendar') return amount.on;
  return amount.unit === 'minutes' ? 'minutes' : 'days';
}

/** The axis that an amount counts on. */
export function axisOf(world: World, amount: Amount): Axis {
  // Which kind is made from which amounts the table says; the type checker cannot follow it through the look-up.
  return carried(world.kinds.axes, axisKind(amount))(world, amount as never);
}
