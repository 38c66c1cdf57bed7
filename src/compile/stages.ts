/**
 * First and staged limits: at S1, S2, S3 after the machine's start or after an event.
 */
import { axisOf, type Axis } from '../check/quantities/margin.js';
import type { Home } from '../check/model.js';
import type { Span } from '../base/span.js';
import type { Amount, NodeId, StagesNode } from '../graph/rule-graph.js';
import type { PlanNode, SpanNode } from '../syntax/tree.js';
import { marginsOn, type LimitTerms } from './margins.js';
import { amountIn, originOf, type Workshop } from './workshop.js';
import { stageSpans } from '../check/quantities/stage-spans.js';

/** Adds a node of stages, on one axis, in rising order. */
export function compileStages(
  shop: Workshop,
  home: Home,
  spans: readonly SpanNode[],
  from: StagesNode['from'],
  at: Span,
  terms: LimitTerms,
): NodeId {
  const amounts = stageSpans(spans).map((span) => amountIn(shop, home, span));
  return shop.add({ kind: 'stages', amounts, from, ...marginsOn(shop, terms, stageAxis(shop, amounts)), origin: originOf(shop, at) });
}

/** Adds the nodes of `first at` a plan: each of its intervals once, from the machine's start or an event. */
export function compileFirstPlan(shop: Workshop, home: Home, plan: PlanNode, from: StagesNode['from'], terms: LimitTerms): NodeId {
  if (plan.kind === 'whichever') {
    const parts = plan.parts.map((part) => compileFirstPlan(shop, home, part, from, terms));
    return shop.add({ kind: 'whichever', mode: plan.mode ?? 'first', parts, origin: originOf(shop, plan.at) });
  }
  if (plan.kind !== 'interval') throw new Error(`unchecked: first at ${plan.kind}`);
  return compileStages(shop, home, [plan.span], from, plan.at, terms);
}

/** Percentages and the default lead are of the shortest step between stages, so that no window reaches over another stage. */
function stageAxis(shop: Workshop, amounts: readonly Amount[]): Axis {
  const axes = amounts.map((amount) => axisOf(shop.model, amount));
  const steps = axes.map(({ size }, index) => size - (axes[index - 1]?.size ?? 0));
  const [first] = axes;
  if (first === undefined) throw new Error('unchecked: no stages');
  return { ...first, size: Math.min(...steps) };
}
