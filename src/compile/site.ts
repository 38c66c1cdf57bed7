/**
 * What doing a task or a step takes: minutes, a place, cautions, tools, the procedure.
 */
import { isDefinitionOf } from '../check/model.js';
import { secondsOf } from '../check/quantities/units.js';
import { sound } from '../check/whole.js';
import type { Caution, Site } from '../graph/rule-graph.js';
import type { StepClauseNode, TaskClauseNode } from '../syntax/tree.js';
import { idOf, meaningOf, type Workshop } from './workshop.js';

type Clause = TaskClauseNode | StepClauseNode;

/** Collects the site from a task's or a step's clauses. */
export function compileSite(shop: Workshop, clauses: readonly Clause[]): Site {
  const seconds = clauses.flatMap((clause) => (clause.kind === 'takes' ? [sound(secondsOf(clause.time))] : []))[0];
  const place = clauses.flatMap((clause) => (clause.kind === 'place-at' ? [idOf(shop, clause.place)] : []))[0];
  return {
    seconds: seconds ?? 0,
    ...(place === undefined ? {} : { place }),
    under: clauses.flatMap((clause) => (clause.kind === 'under' ? [under(shop, clause)] : [])),
    cautions: clauses.flatMap((clause) => cautions(shop, clause)),
    qualified: clauses.some(({ kind }) => kind === 'qualified'),
    tools: clauses.flatMap((clause) => (clause.kind === 'needs' ? clause.tools.map(({ text }) => text) : [])),
    procedure: clauses.flatMap((clause) => (clause.kind === 'do' ? [clause.text.text] : [])),
  };
}

/** The author's own reason and the published source, as the graph keeps them. */
export function compileGrounds(clauses: readonly Clause[]): { reason?: string; source?: string } {
  const reasons = clauses.flatMap((clause) => (clause.kind === 'reason' ? [clause.text.text] : []));
  const sources = clauses.flatMap((clause) => (clause.kind === 'source' ? [clause.text.text] : []));
  return {
    ...(reasons.length === 0 ? {} : { reason: reasons.join(' ') }),
    ...(sources.length === 0 ? {} : { source: sources.join('; ') }),
  };
}

function under(shop: Workshop, { part, meant }: Extract<Clause, { kind: 'under' }>): Site['under'][number] {
  return { part: idOf(shop, part), ...(meant === undefined ? {} : { meant: meant.text }) };
}

function cautions(shop: Workshop, clause: Clause): readonly Caution[] {
  if (clause.kind === 'signal') return [{ signal: clause.signal, text: clause.text.text }];
  if (clause.kind !== 'beware') return [];
  return clause.hazards.flatMap((name) => {
    const hazard = meaningOf(shop, name);
    return isDefinitionOf(hazard, 'hazard') ? [{ signal: hazard.node.signal, text: hazard.node.text.text }] : [];
  });
}
