/**
 * Of orders that cost the same, the one in which nothing hangs in the air for longer than it has to.
 *
 * The search does not care when a raised part comes down, as long as it costs nothing. Whoever works beside it does: so each move that
 * brings a part down from a position called `aloft` is brought forward as far as that adds no second and breaks no rule. A move that
 * another part has to make way for stays where it is.
 */
import { itemAt } from './item-at.js';
import type { Machine } from './machine.js';
import { aloftPositions } from './machine.js';
import type { AccessProblem, Act } from './problem.js';
import { holds } from './stance-set.js';

/** The same acts at the same cost, each raised part let down as early as it can be. `acts` must lead from the start of the problem to its goal. */
export function letDownEarly(machine: Machine, problem: AccessProblem, acts: readonly Act[]): readonly Act[] {
  return acts.reduce((order, act, at) => (bringsDown(machine, problem, act) ? broughtForward(problem, order, at) : order), acts);
}

function bringsDown(machine: Machine, problem: AccessProblem, act: Act): boolean {
  if (act.kind !== 'move') return false;
  const move = itemAt(problem.moves, act.move);
  const aloft = aloftPositions(machine.graph, move.part);
  return aloft.includes(move.from) && !aloft.includes(move.to);
}

/** Only acts before `at` move up by one, so that the places of later acts in the order stay as they are. */
function broughtForward(problem: AccessProblem, order: readonly Act[], at: number): readonly Act[] {
  const most = walking(problem, order);
  const act = order.slice(at, at + 1);
  for (let to = 0; to < at; to++) {
    const other = [...order.slice(0, to), ...act, ...order.slice(to, at), ...order.slice(at + 1)];
    if (walking(problem, other) <= most) return other;
  }
  return order;
}

/** Seconds of walking; `Infinity` where some act cannot be done when its turn comes. The moves take the same in any order. */
function walking(problem: AccessProblem, order: readonly Act[]): number {
  const stance = [...problem.start.stance];
  let [place, seconds] = [problem.start.place, 0];
  const walkTo = (there: number | null): void => {
    if (there === null) return;
    if (place !== null) seconds += itemAt(itemAt(problem.walk, place), there);
    place = there;
  };
  for (const act of order) {
    if (act.kind === 'need') {
      const need = itemAt(problem.needs, act.need);
      if (!holds(need.stance, stance)) return Infinity;
      walkTo(need.place);
    } else {
      const move = itemAt(problem.moves, act.move);
      if (stance[move.part] !== move.from || !holds(move.during, stance)) return Infinity;
      walkTo(move.place);
      stance[move.part] = move.to;
      // No move leads into what is forbidden, so that nothing is done there either.
      if (problem.nevers.some((never) => holds(never, stance))) return Infinity;
    }
  }
  return seconds;
}
