/**
 * Shorter intervals in named duties: hours in several duties use up one limit in proportion (Palmgren–Miner, Σ hᵢ/Nᵢ ≥ 1).
 */
import { clausesOf } from '../check/clauses-of.js';
import type { Home } from '../check/model.js';
import type { TaskClauseNode } from '../syntax/tree.js';
import { amountIn, idOf, type Workshop } from './workshop.js';

export interface DutyShare {
  readonly duty: string;
  readonly meter: string;
  /** The interval if all work were in this duty. */
  readonly ticks: number;
}

/** The `in d every S` clauses of a task. */
export function dutyShares(shop: Workshop, home: Home, clauses: readonly TaskClauseNode[]): readonly DutyShare[] {
  return clausesOf(clauses, 'in-duty').flatMap(({ duty, span }) => {
    const amount = amountIn(shop, home, span);
    return amount.on === 'meter' ? [{ duty: idOf(shop, duty), meter: amount.meter, ticks: amount.ticks }] : [];
  });
}
