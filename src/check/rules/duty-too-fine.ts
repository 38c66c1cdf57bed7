import type { Amount, MeterAmount } from '../../graph/rule-graph.js';
import type { Rule } from '../context.js';
import { amountIn, dutiesOf, ordinaryOn } from '../duty-intervals.js';
import { tasksIn } from '../limits.js';
import { diagnostic } from '../report.js';

/** The intervals have a common multiple that is exact, with room for a thousand times the limit. */
export const dutyTooFine: Rule = {
  codes: ['dutyTooFine'],
  scope: 'declaration',
  check: ({ model }) =>
    tasksIn(model).flatMap(({ node, home }) => {
      const duties = dutiesOf(node);
      const [first] = duties;
      const amounts = duties.flatMap((clause) => meterOnly(amountIn(model, home, clause.span)));
      const [own] = amounts;
      if (first === undefined || own === undefined) return [];
      const ordinary = (ordinaryOn(model, home, node, own) ?? []).flatMap((limit) =>
        limit.kind === 'interval' ? meterOnly(amountIn(model, home, limit.span)) : [],
      );
      const multiple = [...ordinary, ...amounts].map(({ ticks }) => BigInt(ticks)).reduce(leastCommonMultiple, 1n);
      if (multiple * 1000n <= BigInt(Number.MAX_SAFE_INTEGER)) return [];
      return [
        diagnostic('dutyTooFine', {
          at: first.at,
          message: "The intervals of this task's duties have no common measure that is exact.",
          help: 'Write rounder numbers.',
        }),
      ];
    }),
};

function meterOnly(amount: Amount | undefined): readonly MeterAmount[] {
  return amount?.on === 'meter' ? [amount] : [];
}

function leastCommonMultiple(a: bigint, b: bigint): bigint {
  let [x, y] = [a, b];
  while (y > 0n) [x, y] = [y, x % y];
  return x === 0n ? 0n : (a / x) * b;
}
