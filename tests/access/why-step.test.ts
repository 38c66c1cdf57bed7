/** Why a step is there, of plans that are written by hand, good ones and others. */
import { describe, expect, test } from 'vitest';
import { machineOf, type Machine } from '../../src/access/machine.js';
import { walkRound } from '../../src/access/plan-walk-round.js';
import type { AccessProblem } from '../../src/access/problem.js';
import { whyOf, type Happening } from '../../src/access/why-step.js';
import { whySentence } from '../../src/render/walk-round/why-sentence.js';
import { uncheckedGraph } from './unchecked-graph.js';

const graph = uncheckedGraph([
  'position tap shut, half, open',
  'position lid shut, open',
  'at rest tap shut, lid shut',
  'step half "Half" tap shut to half',
  'step full "Full" tap half to open',
  'step lift "Lift" lid shut to open',
  'never "Lid open over a shut tap" lid open and tap shut',
  'task look with tap half',
  'task gape with tap shut',
]);
const machine = machineOf(graph);
const [HALF, BACK, FULL, , LIFT] = [0, 1, 2, 3, 4];

/** The lines of a plan, with the stances before and after each. */
function planOf(machine: Machine, start: readonly number[], ...acts: readonly (number | 'look' | 'gape')[]): readonly Happening[] {
  let stance = start;
  return acts.map((act): Happening => {
    const before = stance;
    if (typeof act === 'string') return { kind: 'need', need: act === 'look' ? 0 : 1, place: null, seconds: 1, before, after: before };
    const move = machine.moves[act];
    stance = before.with(move?.part ?? 0, move?.to ?? 0);
    return { kind: 'move', move: act, place: null, seconds: 1, before, after: stance };
  });
}

function whys(goal: AccessProblem['goal'], start: readonly number[], ...acts: readonly (number | 'look' | 'gape')[]) {
  const needs = graph.tasks.map(({ stance = -1 }) => ({ stance: machine.condition(stance) ?? [], place: null, seconds: 1, after: [] }));
  const { moves, nevers, walk, sizes: parts } = machine;
  const problem: AccessProblem = { parts, moves, nevers, walk, needs, start: { stance: start, place: null }, goal };
  return whyOf(machine, problem, graph.tasks, planOf(machine, start, ...acts));
}

describe('a step', () => {
  test('that nothing hangs on has no reason; what is no step has none to be told', () => {
    expect(whys([null, null], [0, 0], 'gape', HALF)).toEqual([null, { enables: [], tasks: [], putsBack: false }]);
    expect(whys([2, null], [0, 0], HALF)).toEqual([{ enables: [], tasks: [], putsBack: false }]);
  });

  test('puts back only what it leaves where it has to end', () => {
    const onwards = { line: 3, by: 'next-move', rule: '' };
    // To half for the look, by way of what is half at the end anyway.
    expect(whys([1, null], [0, 0], HALF, 'look', BACK, 'gape', HALF)).toEqual([
      { enables: [{ line: 2, by: 'condition', rule: 'tap half' }, onwards], tasks: ['look', 'gape'], putsBack: false },
      null,
      {
        enables: [
          { line: 4, by: 'condition', rule: 'tap shut' },
          { ...onwards, line: 5 },
        ],
        tasks: ['gape'],
        putsBack: false,
      },
      null,
      { enables: [], tasks: [], putsBack: true },
    ]);
  });

  test('on the way to the end puts back too, where no task hangs on it', () => {
    expect(whys([2, null], [0, 0], HALF, FULL)).toEqual([
      { enables: [{ line: 2, by: 'next-move', rule: '' }], tasks: [], putsBack: true },
      { enables: [], tasks: [], putsBack: true },
    ]);
  });

  test('that the same part goes on from is told as that, whatever rule a leap from before would break', () => {
    expect(whys([2, 1], [0, 0], HALF, LIFT, FULL)).toEqual([
      {
        enables: [
          { line: 2, by: 'never', rule: 'Lid open over a shut tap' },
          { line: 3, by: 'next-move', rule: '' },
        ],
        tasks: [],
        putsBack: true,
      },
      { enables: [], tasks: [], putsBack: true },
      { enables: [], tasks: [], putsBack: true },
    ]);
  });
});

describe('a part that comes down before somebody goes under it', () => {
  const pit = uncheckedGraph([
    'position arm low, high aloft, propped',
    'position lid shut, open',
    'position pin fitted, out',
    'at rest arm low, lid shut, pin fitted',
    'place pit "The pit" under arm',
    'step lower "Lower the arm" arm high to low takes 1 s',
    'step prop "Prop the arm" arm low to propped takes 1 s',
    'step open-lid "Open the lid" lid shut to open at pit',
    'step draw "Draw the pin" pin fitted to out while arm propped at pit',
    'task pins "Grease the pins" at pit',
    'task hoses "Look at the hoses" with lid shut at pit',
    'task seals "Look at the seals" with arm propped at pit',
    'task vent "Vent" with lid open',
    'task drain "Drain" with pin out',
  ]);
  const links = (task: string, step: string): readonly unknown[] =>
    walkRound(pit, [task], { stance: { arm: 'high' } }).lines.flatMap((line) =>
      line.kind === 'step' && line.step === step && !line.isBack ? line.why.enables.map(({ by, rule }) => [by, rule]) : [],
    );

  test('is told as the reason where nothing else is stated, or what is stated is met', () => {
    expect(links('pins', 'lower')).toEqual([['condition', 'arm not aloft']]);
    expect(links('hoses', 'lower')).toEqual([['condition', 'arm not aloft']]);
    expect(links('vent', 'lower')).toEqual([
      ['condition', 'arm not aloft'],
      ['condition', 'arm not aloft'],
    ]);
  });

  test('is told in the words of what is stated where that is not met', () => {
    expect(links('seals', 'prop')[0]).toEqual(['condition', 'with arm propped'.slice('with '.length)]);
    expect(links('drain', 'prop')[0]).toEqual(['condition', 'arm propped']);
  });

  test('reads as a sentence', () => {
    const walk = walkRound(pit, ['pins'], { stance: { arm: 'high' } });
    const [line] = walk.lines;
    if (line?.kind !== 'step') throw new Error('no step first');
    expect(whySentence(line, walk, pit)).toBe('Line 2, "Grease the pins", needs arm not aloft. For: Grease the pins.');
  });
});
