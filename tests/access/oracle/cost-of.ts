/* eslint-disable @typescript-eslint/no-non-null-assertion -- brute force is kept as plain as can be: a hole in an array would be a failing test */
/** Goes a plan step by step, by the rules of docs/walk-round.md, and adds up what it costs; throws where a rule is broken. */
import type { AccessProblem, Act } from '../../../src/access/problem.js';

export function costOf(problem: AccessProblem, acts: readonly Act[]): number {
  const stance = [...problem.start.stance];
  const done = new Set<number>();
  let place = problem.start.place;
  let total = 0;
  const meets = (set: readonly (readonly number[])[]): boolean =>
    set.some((box) => box.every((mask, part) => (mask & (1 << stance[part]!)) !== 0));
  const go = (to: number | null): void => {
    if (to !== null && place !== null) total += problem.walk[place]![to]!;
    place = to ?? place;
  };
  const require = (ok: boolean, what: string): void => {
    if (!ok) throw new Error(what);
  };
  for (const act of acts) {
    if (act.kind === 'move') {
      const move = problem.moves[act.move]!;
      go(move.place);
      require(stance[move.part] === move.from && meets(move.during), `move ${act.move} cannot be made`);
      stance[move.part] = move.to;
      require(meets(move.during) && !problem.nevers.some(meets), `move ${act.move} leads astray`);
      total += move.seconds;
    } else {
      const need = problem.needs[act.need]!;
      go(need.place);
      require(meets(need.stance) && !problem.nevers.some(meets), `need ${act.need} is not met`);
      require(!done.has(act.need) && need.after.every((other) => done.has(other)), `need ${act.need} is out of turn`);
      done.add(act.need);
      total += need.seconds;
    }
  }
  require(done.size === problem.needs.length, 'something is left undone');
  require(problem.goal.every((goal, part) => goal === null || goal === stance[part]), 'it does not end where it should');
  require(Number.isFinite(total), 'there is no way to walk there');
  return total;
}
