import type { Amount } from '../../graph/rule-graph.js';
import type { Axis } from '../axis.js';

/** Spans and margins on the axes that count in ticks. */
export const inTicks: Pick<Axis, 'add' | 'before' | 'after'> = {
  add: (base, amount, k) => base + k * ticksOf(amount),
  before: (due, { size }) => due - size,
  after: (due, { size }) => due + size,
};

function ticksOf(amount: Amount): number {
  if (amount.on === 'calendar') throw new Error('a calendar amount has no ticks');
  return amount.ticks;
}
