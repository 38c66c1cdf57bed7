/* eslint-disable @typescript-eslint/no-non-null-assertion -- brute force is kept as plain as can be: a hole in an array would be a failing test */
/**
 * An independent answer, by brute force: Dijkstra over every stance × place × set of things done, one thing at a time, nothing
 * collapsed, nothing absorbed, no bound. Shares no code with src/access, only the shape of the question.
 */
import type { AccessProblem } from '../../../src/access/problem.js';

type Cubes = readonly (readonly number[])[];

function meets(cubes: Cubes, stance: readonly number[]): boolean {
  for (const cube of cubes) {
    let fits = true;
    for (let part = 0; part < stance.length; part++) if (((1 << (stance[part] as number)) & (cube[part] as number)) === 0) fits = false;
    if (fits) return true;
  }
  return false;
}

/** The least total seconds, or `null` if there is no way. */
export function rawDijkstra(problem: AccessProblem): number | null {
  const dist = new Map<string, number>();
  const heap: [number, string, number[], number, number][] = [];
  const push = (cost: number, stance: number[], place: number, done: number): void => {
    const key = `${stance.join(',')};${place};${done}`;
    if ((dist.get(key) ?? Infinity) <= cost) return;
    dist.set(key, cost);
    heap.push([cost, key, stance, place, done]);
    for (let at = heap.length - 1; at > 0;) {
      const up = (at - 1) >> 1;
      if (heap[up]![0] <= heap[at]![0]) break;
      [heap[up], heap[at]] = [heap[at]!, heap[up]!];
      at = up;
    }
  };
  const pop = (): [number, string, number[], number, number] | undefined => {
    const top = heap[0];
    const last = heap.pop();
    if (top === undefined || last === undefined || heap.length === 0) return top;
    heap[0] = last;
    for (let at = 0; ;) {
      let least = at;
      for (const down of [2 * at + 1, 2 * at + 2]) if (down < heap.length && heap[down]![0] < heap[least]![0]) least = down;
      if (least === at) break;
      [heap[least], heap[at]] = [heap[at]!, heap[least]!];
      at = least;
    }
    return top;
  };
  const forbidden = (stance: readonly number[]): boolean => problem.nevers.some((never) => meets(never, stance));
  const walk = (from: number, to: number): number => (from < 0 || from === to ? 0 : problem.walk[from]![to]!);
  push(0, [...problem.start.stance], problem.start.place ?? -1, 0);
  for (let top = pop(); top !== undefined; top = pop()) {
    const [cost, key, stance, place, done] = top;
    if (cost > dist.get(key)!) continue;
    if (done === 2 ** problem.needs.length - 1 && problem.goal.every((goal, part) => goal === null || goal === stance[part])) return cost;
    for (const move of problem.moves) {
      if (stance[move.part] !== move.from || !meets(move.during, stance)) continue;
      const next = stance.map((position, part) => (part === move.part ? move.to : position));
      const there = move.place ?? place;
      if (!forbidden(next) && walk(place, there) < Infinity) push(cost + walk(place, there) + move.seconds, next, there, done);
    }
    if (forbidden(stance)) continue;
    problem.needs.forEach((need, index) => {
      if ((done >> index) & 1 || !need.after.every((other) => (done >> other) & 1) || !meets(need.stance, stance)) return;
      const there = need.place ?? place;
      if (walk(place, there) < Infinity) push(cost + walk(place, there) + need.seconds, stance, there, done | (1 << index));
    });
  }
  return null;
}
