/**
 * Values on the two sides of an edge of a range.
 */
import type { Beyond } from './change.js';

/** The least step that tells two readings of a gauge apart, in its unit (of a dipstick: a thousandth of low to full). */
const LEAST = 0.001;

/** The nearest value that is beyond the edge. */
export function edgeValue(edge: { readonly beyond: Beyond; readonly value: number }): number {
  if (edge.beyond === 'above') return edge.value + LEAST;
  return edge.beyond === 'below' ? edge.value - LEAST : edge.value;
}

/** The nearest value that is not. */
export function shortOfEdge(edge: { readonly beyond: Beyond; readonly value: number }): number {
  if (edge.beyond === 'at-least') return edge.value - LEAST;
  return edge.beyond === 'at-most' ? edge.value + LEAST : edge.value;
}
