/**
 * Tasks that others ask for: `then T now` of a reading or of a defect's class becomes a node in T's own trigger.
 */
import { clausesOf } from '../check/clauses-of.js';
import { idIn, placed, type Home } from '../check/model.js';
import { axisOf } from '../check/quantities/margin.js';
import { addTo } from '../base/gather.js';
import type { Span } from '../base/span.js';
import type { AskedNode, NodeId } from '../graph/rule-graph.js';
import type { OutcomeNode, SpanNode } from '../syntax/tree.js';
import { marginsOn, noMargins, type LimitTerms } from './margins.js';
import { delayIn, idOf, originOf, type Workshop } from './workshop.js';

/** One asking: by what, how soon, and where it is written. */
export interface Asking {
  readonly by: AskedNode['by'];
  readonly within?: SpanNode;
  readonly home: Home;
  readonly at: Span;
}

/** All askings of a schedule by the id of the task that is asked for, in the order written. */
export function askings(shop: Workshop): ReadonlyMap<string, readonly Asking[]> {
  const byTask = new Map<string, Asking[]>();
  const note = (outcome: OutcomeNode, by: AskedNode['by'], home: Home): void => {
    for (const { task, within, at } of outcome.then) {
      const id = idOf(shop, task);
      addTo(byTask, id, { by, within, home, at });
    }
  };
  for (const { node, home } of placed(shop.model, 'task')) {
    clausesOf(node.clauses, 'reads').forEach(({ bands }, index) => {
      bands.forEach(({ outcome }, rule) => note(outcome, { is: 'reading', task: idIn(home, node.name.text), reads: index, rule }, home));
    });
  }
  for (const { node, home } of placed(shop.model, 'defect')) {
    for (const { name, outcome } of node.rules) note(outcome, { is: 'defect', defect: idIn(home, node.name.text), class: name.text }, home);
  }
  return byTask;
}

/** Adds the node of one asking. */
export function compileAsking(shop: Workshop, asking: Asking, terms: LimitTerms): NodeId {
  const origin = originOf(shop, asking.at);
  if (asking.within === undefined) return shop.add({ kind: 'asked', by: asking.by, ...noMargins, origin });
  const within = delayIn(shop, asking.home, asking.within);
  return shop.add({ kind: 'asked', by: asking.by, within, ...marginsOn(shop, terms, axisOf(shop.model, within)), origin });
}
