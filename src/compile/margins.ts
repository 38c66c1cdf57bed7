/**
 * The margins of each limit of a task: allowance early and late, lead, hard stop.
 */
import { clausesOf } from '../check/clauses-of.js';
import { type Axis, defaultLead, marginOf } from '../check/quantities/margin.js';
import type { Counting, LateHold, Margin } from '../graph/rule-graph.js';
import type { MarginNode, TaskClauseNode } from '../syntax/tree.js';
import type { Workshop } from './workshop.js';

export interface Margins {
  readonly early: Margin;
  readonly late: Margin;
  readonly lead: Margin;
  readonly hold?: LateHold;
}

/** The clauses of a task that say how its limits count. */
export interface LimitTerms {
  readonly count: Counting;
  readonly early: readonly MarginNode[];
  readonly late: readonly MarginNode[];
  readonly lead: readonly MarginNode[];
  readonly holds: readonly { readonly margin: MarginNode | undefined; readonly text: string }[];
}

/** Reads the terms out of a task's clauses. */
export function limitTerms(clauses: readonly TaskClauseNode[]): LimitTerms {
  const sides = clausesOf(clauses, 'allow').flatMap((clause) => clause.sides);
  return {
    count: clausesOf(clauses, 'count')[0]?.from ?? 'doing',
    early: sides.flatMap(({ side, margin }) => (side === 'early' ? [margin] : [])),
    late: sides.flatMap(({ side, margin }) => (side === 'late' ? [margin] : [])),
    lead: clausesOf(clauses, 'lead').flatMap((clause) => clause.margins),
    holds: clausesOf(clauses, 'hold').map(({ margin, text }) => ({ margin, text: text.text })),
  };
}

/** The margins on one axis. Of several that belong to it, the first written counts. */
export function marginsOn(shop: Workshop, terms: LimitTerms, axis: Axis): Margins {
  const first = (margins: readonly MarginNode[]): Margin | undefined =>
    margins.flatMap((margin) => marginOf(shop.model, margin, axis) ?? [])[0];
  const late = first(terms.late) ?? { size: 0 };
  const hold = terms.holds.flatMap(({ margin, text }) => {
    const after = margin === undefined ? late : marginOf(shop.model, margin, axis);
    return after === undefined ? [] : [{ after, text }];
  })[0];
  return {
    early: first(terms.early) ?? { size: 0 },
    late,
    lead: first(terms.lead) ?? { size: defaultLead(axis) },
    ...(hold === undefined ? {} : { hold }),
  };
}

/** The margins of something that is due at once: none. */
export const noMargins: Margins = { early: { size: 0 }, late: { size: 0 }, lead: { size: 0 } };
