import type { Amount, MeterAmount } from '../../graph/rule-graph.js';
import type { InDutyNode, LimitNode, TaskNode } from '../../syntax/tree.js';
import type { Rule } from '../context.js';
import { limitsIn, tasksIn } from '../limits.js';
import type { Home, Model } from '../model.js';
import { amountOf, isHours } from '../quantities/amount.js';
import { valueOf } from '../quantities/read.js';
import { diagnostic } from '../report.js';

/** A duty's interval is on an hour meter. */
export const dutyNotOnHours: Rule = {
  codes: ['dutyNotOnHours'],
  check: ({ model }) =>
    tasksIn(model).flatMap(({ node, home }) =>
      dutiesOf(node).flatMap((clause) => {
        const amount = amountIn(model, home, clause.span);
        if (amount === undefined || isOnHours(model, amount)) return [];
        return [
          diagnostic('dutyNotOnHours', {
            at: clause.span.at,
            message: "A duty's interval has to be in hours of a meter.",
            help: 'Write it in hours: `in dusty every 50 h of engine`.',
          }),
        ];
      }),
    ),
};

/** It shortens the one ordinary interval on that meter. */
export const dutyWithoutInterval: Rule = {
  codes: ['dutyWithoutInterval'],
  check: ({ model }) =>
    tasksIn(model).flatMap(({ node, home }) =>
      dutiesOf(node).flatMap((clause) => {
        const amount = amountIn(model, home, clause.span);
        if (amount === undefined || !isOnHours(model, amount)) return [];
        const ordinary = ordinaryOn(model, home, node, amount);
        if (ordinary === undefined || (ordinary.length === 1 && !isStrict(ordinary[0]))) return [];
        const why = ordinary.length > 1 ? 'more than one' : ordinary.length === 1 ? 'only a `more than` limit' : 'no ordinary interval';
        const labels = ordinary.map(({ at }) => ({ at, text: 'on this meter' }));
        return [
          diagnostic('dutyWithoutInterval', {
            at: clause.at,
            message: `There is ${why} on this meter for the duty to shorten.`,
            labels,
            help: 'Give the task one `every … h of …` on the same meter.',
          }),
        ];
      }),
    ),
};

/** The intervals have a common multiple that is exact, with room for a thousand times the limit. */
export const dutyTooFine: Rule = {
  codes: ['dutyTooFine'],
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

function dutiesOf({ clauses }: TaskNode): readonly InDutyNode[] {
  return clauses.flatMap((clause) => (clause.kind === 'in-duty' ? [clause] : []));
}

function amountIn(model: Model, home: Home, span: InDutyNode['span']): Amount | undefined {
  const read = amountOf(model, home, span);
  return read === undefined ? undefined : valueOf(read);
}

function isOnHours(model: Model, amount: Amount): amount is MeterAmount {
  return amount.on === 'meter' && isHours(model, amount);
}

function meterOnly(amount: Amount | undefined): readonly MeterAmount[] {
  return amount?.on === 'meter' ? [amount] : [];
}

/** The task's `every` limits on a duty's meter; undefined where one of them cannot be read, which is said elsewhere. */
function ordinaryOn(model: Model, home: Home, task: TaskNode, duty: MeterAmount): readonly LimitNode[] | undefined {
  const all = task.clauses.flatMap((clause) => (clause.kind === 'every' ? limitsIn(clause.plan) : []));
  const intervals = all.flatMap((limit) =>
    limit.kind === 'interval' || limit.kind === 'look' ? [{ limit, amount: amountIn(model, home, limit.span) }] : [],
  );
  if (intervals.some(({ amount }) => amount === undefined)) return undefined;
  return intervals.flatMap(({ limit, amount }) => (amount?.on === 'meter' && amount.meter === duty.meter ? [limit] : []));
}

function isStrict(limit: LimitNode | undefined): boolean {
  return limit?.kind === 'interval' && limit.strict;
}

function leastCommonMultiple(a: bigint, b: bigint): bigint {
  let [x, y] = [a, b];
  while (y > 0n) [x, y] = [y, x % y];
  return x === 0n ? 0n : (a / x) * b;
}
