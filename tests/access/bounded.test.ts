/** A walk-round for which there was not enough room to look: what was found, and how far off it can be at most. */
import { expect, test } from 'vitest';
import { walkRound } from '../../src/access/plan-walk-round.js';
import type { AccessProblem } from '../../src/access/problem.js';
import { gripper } from './published-instances.js';
import { uncheckedGraph } from './unchecked-graph.js';

/** A puzzle as a schedule: its parts at rest stand where they have to end. */
function declarations({ parts, moves, goal }: AccessProblem): readonly string[] {
  const at = (part: number, position: number): string => `part${part} p${position}`;
  const all = (part: number): readonly number[] => [...Array(parts[part]).keys()];
  /** Said by where the part may not be, so that it stays one alternative. */
  const asked = (box: readonly number[]): string =>
    box
      .flatMap((mask, part) => all(part).flatMap((position) => (((mask >> position) & 1) === 1 ? [] : [`not ${at(part, position)}`])))
      .join(' and ');
  return [
    ...parts.map(
      (_, part) =>
        `position part${part} ${all(part)
          .map((position) => `p${position}`)
          .join(', ')}`,
    ),
    `at rest ${parts.map((_, part) => at(part, goal[part] ?? 0)).join(', ')}`,
    ...moves.map(({ part, from, to, during: [box = []], seconds }, index) => {
      const condition = asked(box) === '' ? '' : `while ${asked(box)} `;
      return `step move${index} "Move ${index}" part${part} p${from} to p${to} ${condition}takes ${seconds} s one way`;
    }),
  ];
}

test('is told with the gap, or as undecided', () => {
  const puzzle = gripper(5);
  const graph = uncheckedGraph(declarations(puzzle));
  const stance = Object.fromEntries(puzzle.start.stance.map((position, part) => [`part${part}`, `p${position}`]));
  const within = (expanded: number) => walkRound(graph, [], { stance, caps: { expanded, held: 100_000 } });
  expect(within(1000)).toMatchObject({ outcome: 'found', proof: { kind: 'optimal' } });
  const optimum = within(1000).totals.seconds;
  const some = within(150);
  expect(some).toMatchObject({ outcome: 'found', proof: { kind: 'bounded', expanded: 150 } });
  if (some.proof?.kind !== 'bounded') throw new Error('it should not be certain');
  expect(some.proof.atLeast).toBeLessThan(some.totals.seconds);
  expect(some.proof.atLeast).toBeLessThanOrEqual(optimum);
  expect(some.proof.atLeast + some.proof.gap).toBe(some.totals.seconds);
  expect(some.lines.length).toBeGreaterThan(0);
  const none = within(10);
  expect(none).toMatchObject({ outcome: 'undecided', lines: [], proof: null });
  expect(none.atLeast).toBeGreaterThan(0);
  expect(none.atLeast).toBeLessThanOrEqual(optimum);
  expect('atLeast' in some).toBe(false);
});
