/**
 * What `at rest` and `at work` say.
 */
import type { StanceItemNode } from '../syntax/tree.js';
import { placed, type Model } from './model.js';

/** The positions said in all `at rest`, or in all `at work`. */
export function itemsOf(model: Model, which: 'rest' | 'work'): readonly StanceItemNode[] {
  return placed(model, 'rest').flatMap(({ node }) => (node.which === which ? node.items : []));
}
