import type { MeterAmount, WorkAmount } from '../../graph/rule-graph.js';
import type { Axis } from '../axis.js';

/** Spans and margins on the axes that count in ticks. */
export const inTicks: Pick<Axis, 'add' | 'before' | 'after'> = {
  add: (base, { ticks }: MeterAmount | WorkAmount, k) => base + k * ticks,
  before: (due, { size }) => due - size,
  after: (due, { size }) => due + size,
};
