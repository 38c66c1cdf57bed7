/**
 * Stages with what they count on.
 */
import type { SpanNode } from '../syntax/tree.js';
import type { Home, Model } from './model.js';
import { amountOf } from './quantities/amount.js';
import { axisOf, type Axis } from './quantities/margin.js';
import { valueOf } from './quantities/read.js';

/** A stage, with what it counts on. */
export interface Stage {
  readonly span: SpanNode;
  readonly axis: Axis;
}

/** A span as a stage; none where it cannot be read, which is said elsewhere. */
export function stage(model: Model, home: Home, span: SpanNode): readonly Stage[] {
  const read = amountOf(model, home, span);
  const amount = read === undefined ? undefined : valueOf(read);
  return amount === undefined ? [] : [{ span, axis: axisOf(model, amount) }];
}

/** Whether two limits count on the same meter, or both on the calendar. */
export function sameAxis(a: Axis, b: Axis): boolean {
  return a.on === b.on && a.meter === b.meter;
}
