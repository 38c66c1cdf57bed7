/** A stretch of one axis, both ends included. */
export interface Window {
  readonly from: number;
  readonly to: number;
}

/**
 * The fewest points that meet all windows: taken at the end of the window that ends first, again and again.
 *
 * @param windows in order of their ends.
 */
function fewestPoints(windows: readonly Window[]): readonly number[] {
  const points: number[] = [];
  for (const { from, to } of windows) if ((points.at(-1) ?? -Infinity) < from) points.push(to);
  return points;
}

/**
 * Every choice of as few points as can be that meets all windows, among the ends of windows; the latest points first.
 *
 * @param windows in order of their ends.
 */
export function* visitTimes(windows: readonly Window[]): Generator<readonly number[]> {
  if (windows.length === 0) return;
  const ends = [...new Set(windows.map(({ to }) => to))].reverse();
  yield* choose(windows, ends, [], fewestPoints(windows).length);
}

function* choose(unmet: readonly Window[], ends: readonly number[], chosen: readonly number[], left: number): Generator<readonly number[]> {
  const first = unmet[0];
  if (first === undefined) {
    yield chosen;
    return;
  }
  for (const at of ends) {
    // The next point must meet the window that ends first, or nothing later can.
    if (at > first.to || at < first.from || at <= (chosen.at(-1) ?? -Infinity)) continue;
    const rest = unmet.filter(({ from, to }) => at < from || at > to);
    if (1 + fewestPoints(rest).length <= left) yield* choose(rest, ends, [...chosen, at], left - 1);
  }
}
