/**
 * The intervals of duties, and the ordinary ones that they shorten.
 */
import type { Amount, MeterAmount } from '../graph/rule-graph.js';
import type { InDutyNode, LimitNode, TaskNode } from '../syntax/tree.js';
import { clausesOf } from './clauses-of.js';
import { limitsIn } from './limits.js';
import type { Home, Model } from './model.js';
import { amountOf, isHours } from './quantities/amount.js';
import { valueOf } from './quantities/read.js';

/** The `in d every S` clauses of a task. */
export function dutiesOf({ clauses }: TaskNode): readonly InDutyNode[] {
  return clausesOf(clauses, 'in-duty');
}

/** What a duty's span amounts to; undefined where it cannot be read, which is said elsewhere. */
export function amountIn(model: Model, home: Home, span: InDutyNode['span']): Amount | undefined {
  const read = amountOf(model, home, span);
  return read === undefined ? undefined : valueOf(read);
}

/** Whether an amount is of a meter that counts hours. */
export function isOnHours(model: Model, amount: Amount): amount is MeterAmount {
  return amount.on === 'meter' && isHours(model, amount);
}

/** The task's `every` limits on a duty's meter; undefined where one of them cannot be read, which is said elsewhere. */
export function ordinaryOn(model: Model, home: Home, task: TaskNode, duty: MeterAmount): readonly LimitNode[] | undefined {
  const all = clausesOf(task.clauses, 'every').flatMap(({ plan }) => limitsIn(plan));
  const intervals = all.flatMap((limit) =>
    limit.kind === 'interval' || limit.kind === 'look' ? [{ limit, amount: amountIn(model, home, limit.span) }] : [],
  );
  if (intervals.some(({ amount }) => amount === undefined)) return undefined;
  return intervals.flatMap(({ limit, amount }) => (amount?.on === 'meter' && amount.meter === duty.meter ? [limit] : []));
}
