/**
 * Which names the clauses of a task and of a step use.
 */
import { assertNever } from '../base/assert-never.js';
import type {
  CautionNode,
  FirstNode,
  GateNode,
  LimitNode,
  MarginNode,
  NameNode,
  OccasionWhat,
  OutcomeNode,
  PlanNode,
  SiteNode,
  StepClauseNode,
  TaskClauseNode,
} from '../syntax/tree.js';
import { instrumentKinds, usesInCondition, usesInSpan, type Use } from './references-in-conditions.js';
import type { NameKind } from './model.js';

/** The names in one clause of a task, in the order written. */
export function usesInTaskClause(clause: TaskClauseNode): readonly Use[] {
  switch (clause.kind) {
    case 'every':
      return usesInPlan(clause.plan);
    case 'first':
      return usesInFirst(clause);
    case 'series':
      return [...clause.spans.flatMap(usesInSpan), use(clause.event, ...happenings)];
    case 'in-duty':
      return [use(clause.duty, 'duty'), ...usesInSpan(clause.span)];
    case 'while-every':
      return [...usesInCondition(clause.condition), ...usesInPlan(clause.plan)];
    case 'when':
    case 'with':
      return usesInCondition(clause.condition);
    case 'occasion':
      return usesInOccasion(clause.what);
    case 'sooner':
      return [use(clause.dipstick, 'dipstick')];
    case 'only-if':
    case 'unless':
    case 'for-serial':
      return usesInGate(clause);
    case 'allow':
      return clause.sides.flatMap(({ margin }) => usesInMargin(margin));
    case 'lead':
      return clause.margins.flatMap(usesInMargin);
    case 'hold':
      return clause.margin === undefined ? [] : usesInMargin(clause.margin);
    case 'takes':
    case 'place-at':
    case 'under':
      return usesInSite(clause);
    case 'reads':
      return [{ name: clause.instrument, kinds: instrumentKinds }, ...clause.bands.flatMap(({ outcome }) => usesInOutcome(outcome))];
    case 'uses':
      return clause.items.map(({ supply }) => use(supply, 'supply'));
    case 'signal':
    case 'beware':
    case 'qualified':
      return usesInCaution(clause);
    case 'covers':
    case 'restarts':
    case 'follows':
    case 'met-by':
      return clause.names.map((name) => use(name, 'task'));
    case 'mends':
      return clause.names.map((name) => use(name, 'defect'));
    case 'count':
    case 'record':
    case 'needs':
    case 'tighten':
    case 'do':
    case 'reason':
    case 'source':
      return [];
    default:
      return assertNever(clause);
  }
}

/** The names in one clause of a step; those that are clauses of tasks, too, use the same names there. */
export function usesInStepClause(clause: StepClauseNode): readonly Use[] {
  switch (clause.kind) {
    case 'while-stance':
      return usesInCondition(clause.condition);
    case 'back':
    case 'one-way':
      return [];
    default:
      return usesInTaskClause(clause);
  }
}

/** The names in a plan: its limits' meters and duties. */
function usesInPlan(plan: PlanNode): readonly Use[] {
  return plan.kind === 'whichever' ? plan.parts.flatMap(usesInPlan) : usesInLimit(plan);
}

/** The names in one limit. */
export function usesInLimit(limit: LimitNode): readonly Use[] {
  return 'span' in limit ? usesInSpan(limit.span) : [];
}

/** The names in an occasion: an attachment, an event or a task. */
export function usesInOccasion(what: OccasionWhat): readonly Use[] {
  if (what.when === 'after-attaching') return [use(what.attachment, 'attachment')];
  if (what.when === 'shortly-before') return usesInSpan(what.within);
  if (what.when === 'event') return [...usesInSpan(what.within), use(what.event, ...happenings)];
  return what.when === 'so-often' ? [use(what.event, ...happenings)] : [];
}

/** The tasks that an outcome asks for. */
export function usesInOutcome(outcome: OutcomeNode): readonly Use[] {
  return outcome.then.flatMap(({ task, within }) => [use(task, 'task'), ...usesInSpan(within)]);
}

function usesInFirst({ what, after }: FirstNode): readonly Use[] {
  const spans = what.kind === 'plan' ? usesInPlan(what.plan) : what.spans.flatMap(usesInSpan);
  return after === undefined ? spans : [...spans, use(after, ...happenings)];
}

function usesInGate(gate: GateNode): readonly Use[] {
  return gate.kind === 'for-serial' ? [] : usesInCondition(gate.condition);
}

function usesInMargin(margin: MarginNode): readonly Use[] {
  if (margin.kind === 'lesser') return [...usesInMargin(margin.first), ...usesInMargin(margin.second)];
  return margin.kind === 'span' ? usesInSpan(margin) : [];
}

function usesInSite(site: SiteNode): readonly Use[] {
  if (site.kind === 'place-at') return [use(site.place, 'place')];
  return site.kind === 'under' ? [use(site.part, 'position')] : [];
}

function usesInCaution(caution: CautionNode): readonly Use[] {
  return caution.kind === 'beware' ? caution.hazards.map((name) => use(name, 'hazard')) : [];
}

/** What can have happened: what is noted as such, and work that was done. */
const happenings: readonly NameKind[] = ['event', 'task'];

function use(name: NameNode, ...kinds: readonly NameKind[]): Use {
  return { name, kinds };
}
