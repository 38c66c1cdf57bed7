/**
 * When a task is due, as a trigger: its timing clauses and what others ask of it, joined by `any`.
 */
import { clausesOf } from '../check/clauses-of.js';
import type { Home } from '../check/model.js';
import type { NodeId, StagesNode } from '../graph/rule-graph.js';
import type { FirstNode, SoonerNode, TaskClauseNode, TaskNode, WhenNode, WhileEveryNode } from '../syntax/tree.js';
import { compileAsking, type Asking } from './asked.js';
import { compileCondition } from './condition.js';
import { dutyShares } from './duty-mix.js';
import { limitTerms } from './margins.js';
import { compileOccasion } from './occasion.js';
import { compilePlan, type PlanTerms } from './plan.js';
import { compileFirstPlan, compileStages } from './stages.js';
import { idOf, originOf, type Workshop } from './workshop.js';

/** Adds the nodes of a task's timing; undefined where nothing ever makes it due by itself. */
export function compileTrigger(shop: Workshop, home: Home, task: TaskNode, asked: readonly Asking[]): NodeId | undefined {
  const context: PlanTerms = { home, terms: limitTerms(task.clauses), duties: dutyShares(shop, home, task.clauses) };
  const own = task.clauses.flatMap((clause) => compileClause(shop, clause, context, task) ?? []);
  const asking = asked.map((each) => compileAsking(shop, each, context.terms));
  return joined(shop, task, [...own, ...asking]);
}

function compileClause(shop: Workshop, clause: TaskClauseNode, context: PlanTerms, task: TaskNode): NodeId | undefined {
  const { home, terms } = context;
  switch (clause.kind) {
    case 'every':
      // `first` speaks for the intervals that follow it.
      return task.clauses.some(({ kind }) => kind === 'first') ? undefined : compilePlan(shop, clause.plan, context);
    case 'first':
      return compileFirst(shop, clause, context, task);
    case 'series':
      return compileStages(shop, home, clause.spans, { is: 'event', event: idOf(shop, clause.event) }, clause.at, terms);
    case 'while-every':
      return compileWhile(shop, clause, context);
    case 'when':
      return compileWhen(shop, clause, home);
    case 'occasion':
      return compileOccasion(shop, home, clause, terms);
    case 'sooner':
      return compileSooner(shop, clause);
    default:
      return undefined;
  }
}

function compileFirst(shop: Workshop, { what, after, at }: FirstNode, context: PlanTerms, task: TaskNode): NodeId {
  const { home, terms } = context;
  const from: StagesNode['from'] = after === undefined ? { is: 'start' } : { is: 'event', event: idOf(shop, after) };
  const first =
    what.kind === 'plan' ? compileFirstPlan(shop, home, what.plan, from, terms) : compileStages(shop, home, what.spans, from, at, terms);
  const plans = clausesOf(task.clauses, 'every').map(({ plan }) => compilePlan(shop, plan, context));
  const then = joined(shop, task, plans);
  return shop.add({ kind: 'first', first, then, origin: originOf(shop, at) });
}

function compileWhile(shop: Workshop, { condition, plan, at }: WhileEveryNode, context: PlanTerms): NodeId {
  const when = compileCondition(shop, context.home, condition);
  const then = compilePlan(shop, plan, { ...context, duties: [] });
  return shop.add({ kind: 'while', condition: when, then, origin: originOf(shop, at) });
}

function compileWhen(shop: Workshop, { condition, at }: WhenNode, home: Home): NodeId {
  const node = compileCondition(shop, home, condition);
  return shop.add({ kind: 'when', condition: node, origin: originOf(shop, at) });
}

function compileSooner(shop: Workshop, { dipstick, share, at }: SoonerNode): NodeId {
  return shop.add({ kind: 'sooner', dipstick: idOf(shop, dipstick), share, origin: originOf(shop, at) });
}

function joined(shop: Workshop, task: TaskNode, parts: readonly NodeId[]): NodeId | undefined {
  return parts.length < 2 ? parts[0] : shop.add({ kind: 'any', parts: [...parts], origin: originOf(shop, task.at) });
}
