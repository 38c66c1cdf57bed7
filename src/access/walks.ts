/**
 * How long it takes to walk from any place to any other.
 */
import type { RuleGraph } from '../graph/rule-graph.js';

/**
 * Seconds between places, by index. A walk counts both ways; where none is stated, the shortest way by stated ones counts. Nobody
 * walks *through* a place that is under a part: such a place only begins or ends a walk. Without any stated walk all are 0; where
 * there is no way, `Infinity`.
 */
export function closedWalks(graph: RuleGraph): readonly (readonly number[])[] {
  const { places, walks } = graph.access;
  if (walks.length === 0) return places.map(() => places.map(() => 0));
  const seconds = places.map((_, from) => places.map((__, to) => (from === to ? 0 : Infinity)));
  const index = new Map(places.map((place, at) => [place.id, at]));
  const shorten = (from: number | undefined, to: number | undefined, least: number): void => {
    const row = from === undefined ? undefined : seconds[from];
    if (row !== undefined && to !== undefined && least < (row[to] ?? 0)) row[to] = least;
  };
  for (const walk of walks) {
    shorten(index.get(walk.from), index.get(walk.to), walk.seconds);
    shorten(index.get(walk.to), index.get(walk.from), walk.seconds);
  }
  places.forEach((through, via) => {
    if (through.under !== undefined) return;
    for (const [from, row] of seconds.entries())
      row.forEach((_, to) => shorten(from, to, (row[via] ?? Infinity) + (seconds[via]?.[to] ?? Infinity)));
  });
  return seconds;
}
