/**
 * What doing a task or a step takes: minutes, a place, cautions, tools, the procedure.
 */
import { clausesOf } from '../check/clauses-of.js';
import { isDefinitionOf } from '../check/model.js';
import { secondsOf } from '../check/quantities/units.js';
import { sound } from '../check/whole.js';
import type { Caution, Site } from '../graph/rule-graph.js';
import type { StepClauseNode, TaskClauseNode } from '../syntax/tree.js';
import { idOf, meaningOf, type Workshop } from './workshop.js';

type Clause = TaskClauseNode | StepClauseNode;

/** Collects the site from a task's or a step's clauses. */
export function compileSite(shop: Workshop, clauses: readonly Clause[]): Site {
  const takes = clausesOf(clauses, 'takes')[0];
  const place = clausesOf(clauses, 'place-at')[0];
  return {
    seconds: takes === undefined ? 0 : sound(secondsOf(takes.time)),
    ...(place === undefined ? {} : { place: idOf(shop, place.place) }),
    under: clausesOf(clauses, 'under').map((clause) => under(shop, clause)),
    cautions: clauses.flatMap((clause) => cautions(shop, clause)),
    qualified: clauses.some(({ kind }) => kind === 'qualified'),
    tools: clausesOf(clauses, 'needs').flatMap(({ tools }) => tools.map(({ text }) => text)),
    procedure: clausesOf(clauses, 'do').map(({ text }) => text.text),
  };
}

/** The author's own reason and the published source, as the graph keeps them. */
export function compileGrounds(clauses: readonly Clause[]): { reason?: string | undefined; source?: string | undefined } {
  const reasons = clausesOf(clauses, 'reason').map(({ text }) => text.text);
  const sources = clausesOf(clauses, 'source').map(({ text }) => text.text);
  return {
    reason: reasons.length === 0 ? undefined : reasons.join(' '),
    source: sources.length === 0 ? undefined : sources.join('; '),
  };
}

function under(shop: Workshop, { part, meant }: Extract<Clause, { kind: 'under' }>): Site['under'][number] {
  return { part: idOf(shop, part), meant: meant?.text };
}

function cautions(shop: Workshop, clause: Clause): readonly Caution[] {
  if (clause.kind === 'signal') return [{ signal: clause.signal, text: clause.text.text }];
  if (clause.kind !== 'beware') return [];
  return clause.hazards.flatMap((name) => {
    const hazard = meaningOf(shop, name);
    return isDefinitionOf(hazard, 'hazard') ? [{ signal: hazard.node.signal, text: hazard.node.text.text }] : [];
  });
}
