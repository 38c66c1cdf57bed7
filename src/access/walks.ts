/**
 * How long it takes to walk from any place to any other.
 */
import type { RuleGraph } from '../graph/rule-graph.js';
import { itemAt } from './item-at.js';

/**
 * Seconds between places, by index. A walk counts both ways; where none is stated, the shortest way by stated ones counts. Nobody
 * walks *through* a place that is under a part: such a place only begins or ends a walk. Without any stated walk all are 0; where
 * there is no way, `Infinity`.
 */
export function closedWalks(graph: RuleGraph): readonly (readonly number[])[] {
  const { places, walks } = graph.access;
  if (walks.length === 0) return places.map(() => places.map(() => 0));
  const seconds = places.map((_, from) => places.map((__, to) => (from === to ? 0 : Infinity)));
  const at = (id: string): number => places.findIndex((place) => place.id === id);
  const between = (from: number, to: number): number => itemAt(itemAt(seconds, from), to);
  const shorten = (from: number, to: number, least: number): void => {
    itemAt(seconds, from)[to] = Math.min(between(from, to), least);
  };
  for (const walk of walks) {
    shorten(at(walk.from), at(walk.to), walk.seconds);
    shorten(at(walk.to), at(walk.from), walk.seconds);
  }
  places.forEach((through, via) => {
    if (through.under !== undefined) return;
    for (const from of seconds.keys()) for (const to of seconds.keys()) shorten(from, to, between(from, via) + between(via, to));
  });
  return seconds;
}
