/**
 * What the needs ask of a few parts alone, each distinct thing once.
 */
import type { EffectiveNeed } from './effective-needs.js';
import type { AccessProblem } from './problem.js';
import type { Box } from './stance-set.js';

/** More distinct demands than this are not kept apart; a bound stays a bound without them. */
const MOST_DEMANDS = 20;

export interface Demands {
  /** For each demand the boxes that meet it, reduced to the parts of the pattern, in their order. */
  readonly sets: readonly (readonly Box[])[];
  /** For each need the bit of its demand; 0 if it asks nothing of these parts. */
  readonly ofNeed: readonly number[];
}

export function distinctDemands(problem: AccessProblem, needs: readonly EffectiveNeed[], parts: readonly number[]): Demands {
  const sets: (readonly Box[])[] = [];
  const known = new Map<string, number>();
  const all = parts.map((part) => 2 ** (problem.parts[part] ?? 0) - 1);
  const ofNeed = needs.map((need) => {
    const boxes = need.stance.map((box) => parts.map((part) => box[part] ?? 0));
    if (boxes.some((box) => box.every((mask, index) => mask === all[index]))) return 0;
    const key = boxes.map((box) => box.join()).join(';');
    const seen = known.get(key);
    if (seen !== undefined) return seen;
    if (sets.length >= MOST_DEMANDS) return 0;
    const bit = 1 << sets.length;
    sets.push(boxes);
    known.set(key, bit);
    return bit;
  });
  return { sets, ofNeed };
}
