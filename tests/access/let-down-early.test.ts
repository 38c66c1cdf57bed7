/** A raised part comes down as early as that costs nothing and breaks nothing; orders told act by act. */
import { describe, expect, test } from 'vitest';
import { letDownEarly } from '../../src/access/let-down-early.js';
import { machineOf, type Machine } from '../../src/access/machine.js';
import type { AccessProblem, Act } from '../../src/access/problem.js';
import { uncheckedGraph } from './unchecked-graph.js';

const graph = uncheckedGraph([
  'position arm low, high aloft, hung aloft, propped',
  'position lid shut, open',
  'at rest arm low, lid shut',
  'place front "Front"',
  'place rear "Rear"',
  'walk front to rear 10 s',
  'step lift "Lift" arm low to high takes 5 s at front back "Lower"',
  'step hang "Hang" arm high to hung takes 1 s at front back "Unhang"',
  'step prop "Prop" arm high to propped takes 2 s at front back "Unprop"',
  'step open-lid "Open" lid shut to open takes 3 s at front back "Shut"',
]);

/** Worked out for each test: what it is made with is under test too. */
const machine = (): Machine => machineOf(graph);

function titlesOf({ origins }: Machine): readonly (string | undefined)[] {
  return origins.map(({ step, isBack }) => (isBack ? step.back?.title : step.title));
}
const [low, high, hung] = [1, 2, 4];
const any = 0b1111;

/** Asks for an arm and a lid; each bit mask says where they may be. */
function problemOf(
  asked: readonly (readonly [arm: number, lid: number, place: number | null])[],
  more: Partial<AccessProblem> = {},
): AccessProblem {
  const needs = asked.map(([arm, lid, place]) => ({ stance: [[arm, lid]], place, seconds: 60, after: [] }));
  const { sizes: parts, moves, nevers, walk, rest } = machine();
  return { parts, moves, nevers, walk, needs, start: { stance: rest, place: 0 }, goal: rest, ...more };
}

/** Acts by the titles of moves and the numbers of needs, and back. */
function early(problem: AccessProblem, ...acts: readonly (string | number)[]): readonly (string | number | undefined)[] {
  const titles = titlesOf(machine());
  const order = acts.map((act): Act =>
    typeof act === 'number' ? { kind: 'need', need: act } : { kind: 'move', move: titles.indexOf(act) },
  );
  return letDownEarly(machine(), problem, order).map((act) => (act.kind === 'need' ? act.need : titles[act.move]));
}

describe('a raised part', () => {
  test('comes down before work that does not need it up', () => {
    expect(
      early(
        problemOf([
          [high, 3, 0],
          [any, 3, 0],
        ]),
        'Lift',
        0,
        1,
        'Lower',
      ),
    ).toEqual(['Lift', 0, 'Lower', 1]);
  });

  test('stays up for work that needs it up, and for a place of its own', () => {
    const problem = problemOf([
      [high, 3, 0],
      [any, 3, 0],
      [high, 3, 0],
    ]);
    expect(early(problem, 'Lift', 0, 1, 2, 'Lower')).toEqual(['Lift', 0, 1, 2, 'Lower']);
  });

  test('comes down as early as it can, past several acts, but not before it went up', () => {
    const problem = problemOf([
      [any, 3, 0],
      [any, 3, 0],
    ]);
    expect(early(problem, 'Open', 'Lift', 'Hang', 'Unhang', 'Lower', 0, 1, 'Shut')).toEqual([
      'Open',
      'Lift',
      'Hang',
      'Unhang',
      'Lower',
      0,
      1,
      'Shut',
    ]);
    expect(early(problem, 'Lift', 'Open', 0, 1, 'Shut', 'Lower')).toEqual(['Lift', 'Lower', 'Open', 0, 1, 'Shut']);
  });

  test('goes onto its props early too; from one position aloft to another is not coming down, and going up is not', () => {
    const problem = problemOf([[any, 3, 0]]);
    expect(early(problem, 'Lift', 0, 'Prop')).toEqual(['Lift', 'Prop', 0]);
    expect(early(problem, 'Lift', 0, 'Hang')).toEqual(['Lift', 0, 'Hang']);
    expect(early(problem, 0, 'Lift')).toEqual([0, 'Lift']);
    expect(early(problem, 0, 'Unprop')).toEqual([0, 'Unprop']);
    expect(early(problem, 0, 'Open')).toEqual([0, 'Open']);
  });

  test('does not come down where that costs a walk more: there and back is 20 s', () => {
    const problem = problemOf([
      [high, 3, 0],
      [any, 3, 1],
      [any, 3, 1],
    ]);
    expect(early(problem, 'Lift', 0, 1, 2, 'Lower')).toEqual(['Lift', 0, 'Lower', 1, 2]);
    const fromRear = problemOf(
      [
        [any, 3, 1],
        [any, 3, 1],
      ],
      { start: { stance: [1, 0], place: 1 } },
    );
    expect(early(fromRear, 0, 1, 'Lower')).toEqual([0, 1, 'Lower']);
    const fromAnywhere = problemOf([[any, 3, 1]], { start: { stance: [1, 0], place: null } });
    expect(early(fromAnywhere, 0, 'Lower')).toEqual(['Lower', 0]);
  });

  test('does not come down where it must stay for a step to be made', () => {
    const moves = machine().moves.map((move, index) =>
      titlesOf(machine())[index] === 'Open' ? { ...move, during: [[high | hung, 3]] } : move,
    );
    expect(early(problemOf([[any, 2, 0]], { moves }), 'Lift', 'Open', 0, 'Lower')).toEqual(['Lift', 'Open', 'Lower', 0]);
  });

  test('does not come down into what a rule forbids, nor where that leaves work forbidden', () => {
    const nevers = [[[low, 2]]];
    const asked = problemOf([[any, 3, 0]], { nevers });
    expect(early(asked, 'Lift', 'Open', 0, 'Shut', 'Lower')).toEqual(['Lift', 'Open', 0, 'Shut', 'Lower']);
    // Where it starts open, it may come down only once that is shut.
    const start = { stance: [1, 1], place: 0 };
    expect(early(problemOf([[any, 3, 0]], { nevers, start }), 0, 'Shut', 'Lower')).toEqual([0, 'Shut', 'Lower']);
    const shut = problemOf([[any, 3, 0]], { nevers: [[[low, 1]]], start: { stance: [1, 0], place: 0 } });
    expect(early(shut, 0, 'Open', 'Lower')).toEqual([0, 'Open', 'Lower']);
  });

  test('that stands forbidden as it is comes down first where that mends it', () => {
    const nevers = [[[high, 1]]];
    expect(early(problemOf([[any, 3, 0]], { nevers, start: { stance: [1, 0], place: 0 } }), 'Lower', 0)).toEqual(['Lower', 0]);
  });
});
