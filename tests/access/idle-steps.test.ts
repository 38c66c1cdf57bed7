/** Steps of no use: on no quickest way from anything that is wanted to anything else; and what the check goes through to say so. */
import { describe, expect, test } from 'vitest';
import { checkAccess } from '../../src/access/check-access.js';
import { idleSteps } from '../../src/access/idle-steps.js';
import { independentParts } from '../../src/access/independent-parts.js';
import { machineOf } from '../../src/access/machine.js';
import { machineSpace } from '../../src/access/machine-space.js';
import type { MovingParts } from '../../src/access/machine.js';
import type { Box } from '../../src/access/stance-set.js';
import { uncheckedGraph } from './unchecked-graph.js';

/** Idle steps with what is said of them, and nothing else wrong. */
function idle(...lines: readonly string[]): readonly string[] {
  const faults = checkAccess(uncheckedGraph(lines));
  expect(faults.map(({ kind }) => kind).filter((kind) => kind !== 'idle-step')).toEqual([]);
  return faults.map(({ message }) => message);
}

const useless = (step: string): string => `\`${step}\` is of no use: every task is reached and left as quickly without it.`;

describe('a step is of use', () => {
  const tap = ['position tap shut, half, open', 'at rest tap shut'];
  const byHalf = ['step half "Half" tap shut to half takes 2 s', 'step full "Full" tap half to open takes 2 s'];

  test('on the quickest way to a task or back, not on a slower one', () => {
    expect(idle(...tap, ...byHalf, 'step wide "Wide" tap shut to open takes 3 s', 'task look with tap open')).toEqual([
      useless('half'),
      useless('full'),
    ]);
    expect(idle(...tap, ...byHalf, 'step wide "Wide" tap shut to open takes 5 s', 'task look with tap open')).toEqual([useless('wide')]);
  });

  test('where it is as quick as another, if it does not take more steps', () => {
    expect(idle(...tap, ...byHalf, 'step wide "Wide" tap shut to open takes 4 s', 'task look with tap open')).toEqual([
      useless('half'),
      useless('full'),
    ]);
    expect(
      idle(...tap, 'step wide "Wide" tap shut to open takes 4 s', 'step pull "Pull" tap shut to open takes 4 s', 'task look with tap open'),
    ).toEqual([]);
  });

  test('where only the way back needs it', () => {
    expect(
      idle(
        ...tap,
        'step wide "Wide" tap shut to open takes 9 s',
        'step drop "Drop" tap open to shut takes 1 s one way',
        'task look with tap open',
      ),
    ).toEqual([]);
  });

  test('between two tasks, without going home in between', () => {
    expect(
      idle(
        ...tap,
        'step half "Half" tap shut to half takes 9 s',
        'step wide "Wide" tap shut to open takes 9 s',
        'step further "Further" tap half to open takes 1 s',
        'task a with tap half',
        'task b with tap open',
      ),
    ).toEqual([]);
    expect(
      idle(
        ...tap,
        'step half "Half" tap shut to half takes 9 s',
        'step wide "Wide" tap shut to open takes 9 s',
        'step further "Further" tap half to open takes 1 s',
        'task b with tap open',
      ),
    ).toEqual([useless('half'), useless('further')]);
  });

  test('on the way to what one task needs, though another needs much the same', () => {
    const knob = ['position knob a, b, c, d', 'position dial w, x, y, z', 'at rest knob a, dial w'];
    const steps = [
      'step to-b "To b" knob a to b takes 1 s',
      'step to-c "To c" knob a to c takes 5 s',
      'step to-d "To d" knob a to d takes 600 s',
      'step to-x "To x" dial w to x takes 60 s',
      'step to-y "To y" dial w to y takes 60 s',
      'step to-z "To z" dial w to z takes 60 s',
      // What links the two: neither moves by itself.
      'never "Both" knob d and dial x',
    ];
    const each = ['task d with knob d', 'task x with dial x', 'task y with dial y'];
    // As sets of positions (knob, dial): (8, 1) or (14, 8), against (8, 11) or (4, 8), which are the same digits.
    const one = 'task one with (knob d and dial w) or (not knob a and dial z)';
    const two = 'task two with (knob d and not dial y) or (knob c and dial z)';
    expect(idle(...knob, ...steps, ...each, one, two)).toEqual([]);
    expect(idle(...knob, ...steps, ...each, one)).toEqual([useless('to-c')]);
    expect(idle(...knob, ...steps, ...each, two)).toEqual([useless('to-b')]);
  });

  test('on the way to the stance at work', () => {
    expect(idle(...tap, 'at work tap half', ...byHalf, 'task look with tap open')).toEqual([]);
    expect(idle(...tap, 'at work tap half', ...byHalf)).toEqual([useless('full')]);
  });

  test('on the way to any of the alternatives that are nearest, not to one farther off', () => {
    const both = ['position left shut, open', 'position right shut, open', 'at rest left shut, right shut'];
    const steps = (seconds: number): readonly string[] => [
      'step l "L" left shut to open takes 4 s',
      `step r "R" right shut to open takes ${seconds} s`,
    ];
    expect(idle(...both, ...steps(4), 'task look with left open or right open')).toEqual([]);
    expect(idle(...both, ...steps(5), 'task look with left open or right open')).toEqual([useless('r')]);
  });

  test('never where it cannot be done at all, and that is said', () => {
    expect(idle(...tap, ...byHalf, 'step wide "Wide" tap shut to open while tap open', 'task look with tap open')).toEqual([
      '`wide` can never be done.',
    ]);
  });

  test('where every other part has a task of its own: each group is gone through by itself', () => {
    const lines = ['a', 'b', 'c'].flatMap((part) => [
      `position ${part} shut, open`,
      `step open-${part} "Open ${part}" ${part} shut to open`,
    ]);
    expect(idle(...lines, 'at rest a shut, b shut, c shut', 'task one with a open', 'task two with a open, c open')).toEqual([
      useless('open-b'),
    ]);
  });
});

describe('no step is called idle', () => {
  const graph = uncheckedGraph([
    'position hood shut, open',
    'position tap p0, p1, p2, p3',
    'at rest hood shut, tap p0',
    'step open-hood "Open the hood" hood shut to open',
    ...['p1', 'p2', 'p3'].map((to, from) => `step to-${to} "Turn to ${to}" tap p${from} to ${to}`),
    'step jam "Jam" tap p0 to p3 while tap p1',
    'task look with hood open',
  ]);
  const called = (stances: number, most?: number): readonly string[] => {
    const machine = machineOf(graph);
    return idleSteps(machine, machineSpace(machine, [], stances), most).map(({ message }) => message.split('`')[1] ?? '');
  };

  test('of parts that were not gone through to the end', () => {
    expect(called(100)).toEqual(['to-p1', 'to-p2', 'to-p3', 'jam']);
    expect(called(3)).toEqual([]);
  });

  test('past so many looks, but for those that can never be done', () => {
    // Two sets are wanted of the tap, rest and whatever it is: of four stances each. From both its six ways are gone along.
    expect(called(100, 2 * 4 - 1)).toEqual(['jam']);
    expect(called(100, 2 * 6 - 1)).toEqual(['jam']);
    expect(called(100, 2 * 6)).toEqual(['to-p1', 'to-p2', 'to-p3', 'jam']);
  });

  test('past so many stances asked whether they are wanted, however few ways there are', () => {
    // Three ways, one way each: fewer than the four stances that each of the two sets asks about.
    const turns = ['p1', 'p2', 'p3'].map((to, from) => `step to-${to} "Turn to ${to}" tap p${from} to ${to} one way`);
    const machine = machineOf(uncheckedGraph(['position tap p0, p1, p2, p3', 'at rest tap p0', 'task look with tap p0', ...turns]));
    const found = (most: number): number => idleSteps(machine, machineSpace(machine, [], 100), most).length;
    // At rest and the task ask the same.
    expect([found(3), found(4)]).toEqual([0, 3]);
  });

  test('of one group for want of looks, while those of another are', () => {
    const two = uncheckedGraph([
      'position hood shut, open',
      'position tap p0, p1, p2, p3',
      'at rest hood shut, tap p0',
      'step open-hood "Open the hood" hood shut to open',
      ...['p1', 'p2', 'p3'].map((to, from) => `step to-${to} "Turn to ${to}" tap p${from} to ${to}`),
    ]);
    const machine = machineOf(two);
    // The hood has two stances and two ways, the tap four and six; of each rest alone is wanted.
    const names = (most: number) => idleSteps(machine, machineSpace(machine, [], 100), most).map(({ at }) => at.text.split(' ')[1]);
    expect(names(2)).toEqual(['open-hood']);
    expect(names(5)).toEqual(['open-hood']);
    expect(names(6)).toEqual(['open-hood', 'to-p1', 'to-p2', 'to-p3']);
  });
});

describe('a step that can never be done', () => {
  /** What to do, step by step that is called idle. */
  const helps = (...lines: readonly string[]): readonly string[] =>
    checkAccess(uncheckedGraph(['position engine stopped, running', 'position tap shut, half, open', ...lines])).map(({ help }) => help);
  const rest = 'at rest engine stopped, tap shut';
  const open = 'step open "Open" tap shut to open';
  const look = 'task look with tap open';
  const brings = (part: string, position: string): string =>
    `No step brings \`${part}\` to \`${position}\`: declare one, change what this one needs, or leave it out.`;

  test('for want of another part where it needs it names that part, the first position that would do', () => {
    expect(helps(rest, open, 'step wide "Wide" tap shut to open while engine running', look)).toEqual([brings('engine', 'running')]);
    expect(helps('at rest engine running, tap shut', open, 'step wide "Wide" tap shut to open while engine stopped', look)).toEqual([
      brings('engine', 'stopped'),
    ]);
  });

  test('for want of its own part where it begins names that', () => {
    expect(helps(rest, open, 'step wide "Wide" tap half to open one way', look)).toEqual([brings('tap', 'half')]);
  });

  test('though all it needs can be had, only not at a time, says no more than that', () => {
    const other = 'Change what it needs, or leave it out.';
    const start = 'step start "Start" engine stopped to running';
    const both = 'step wide "Wide" tap shut to open while engine running and engine stopped';
    expect(helps(rest, open, start, both, 'task look with tap open', 'task run with engine running')).toEqual([other]);
    const apart = 'never "Not both" tap shut and engine running';
    const late = 'step wide "Wide" tap shut to half while engine running';
    const further = 'step further "Further" tap open to half';
    expect(helps(rest, open, start, late, further, apart, 'task look with tap half', 'task run with engine running')).toEqual([other]);
  });
});

describe('parts have to do with each other', () => {
  const any = 3;
  const about = (...named: readonly number[]): Box => [0, 1, 2, 3].map((part) => (named.includes(part) ? 2 : any));
  const machine = (more: Partial<MovingParts> = {}): MovingParts => ({
    sizes: [2, 2, 2, 2],
    moves: [],
    nevers: [],
    rest: [0, 0, 0, 0],
    ...more,
  });
  const move = (part: number, ...named: readonly number[]) => ({
    part,
    from: 0,
    to: 1,
    during: [about(...named)],
    place: null,
    seconds: 1,
  });

  test('by what a move asks, by a never-rule, by alternatives that are asked for', () => {
    expect(independentParts(machine(), [])).toEqual([[0], [1], [2], [3]]);
    expect(independentParts(machine({ moves: [move(0, 2), move(3)] }), [])).toEqual([[0, 2], [1], [3]]);
    expect(independentParts(machine({ moves: [move(0, 2), move(2, 3)] }), [])).toEqual([[0, 2, 3], [1]]);
    expect(independentParts(machine({ nevers: [[about(1, 2)]] }), [])).toEqual([[0], [1, 2], [3]]);
    expect(independentParts(machine({ nevers: [[about(0, 1)], [about(2, 3)], [about(3, 0)]] }), [])).toEqual([[0, 1, 2, 3]]);
    expect(independentParts(machine(), [[about(0), about(3)]])).toEqual([[0, 3], [1], [2]]);
  });

  test('not by being asked for together: each is then reached by itself', () => {
    expect(independentParts(machine(), [[about(0, 3)], [], [about(1), about(1)]])).toEqual([[0], [1], [2], [3]]);
    // Of both alternatives the first part is asked the same.
    expect(independentParts(machine(), [[about(0, 1), about(0, 2)]])).toEqual([[0], [1, 2], [3]]);
  });

  test('all of them, where a rule is broken as the machine stands', () => {
    const broken: Box = [1, any, any, any];
    expect(independentParts(machine({ nevers: [[broken]] }), [])).toEqual([[0, 1, 2, 3]]);
    expect(independentParts(machine({ nevers: [[about(1)], [broken]] }), [])).toEqual([[0, 1, 2, 3]]);
    expect(independentParts(machine({ nevers: [[about(1)]] }), [])).toEqual([[0], [1], [2], [3]]);
  });
});

describe('a machine gone through group by group', () => {
  const graph = uncheckedGraph([
    'position a shut, open',
    'position b shut, half, open',
    'at rest a shut, b shut',
    'step open-a "Open a" a shut to open',
    'step half-b "Half b" b shut to half',
    'step open-b "Open b" b half to open',
    'task one with a open, b open',
    'task two with b open',
    'task none with a open and (b half and b open)',
  ]);
  const set = (task: string) => machineOf(graph).condition(graph.tasks.find(({ id }) => id === task)?.stance ?? -1) ?? [];

  test('is reached in all its groups, one way after the other', () => {
    const machine = machineOf(graph);
    const space = machineSpace(machine, [set('one')], 100);
    expect(space.groups.map(({ parts }) => [...parts])).toEqual([[0], [1]]);
    expect(space.wayInto(set('one'))?.map((each) => machine.origins[each]?.step.id)).toEqual(['open-a', 'half-b', 'open-b']);
    expect(space.wayInto(set('two'))?.map((each) => machine.origins[each]?.step.id)).toEqual(['half-b', 'open-b']);
    expect(space.wayInto(set('none'))).toBeNull();
    expect(space.unreachableIn(set('one'))).toBeNull();
    expect(space.unreachableIn(set('none'))).toBe(space.groups[0]);
    expect(space.wayInto([[3, 7]])).toEqual([]);
  });

  test('takes what is left of the stances that may be looked at, group after group', () => {
    const machine = machineOf(graph);
    expect(machineSpace(machine, [], 5).isWhole).toBe(true);
    const few = machineSpace(machine, [], 4);
    expect(few.groups.map(({ space }) => space.isWhole)).toEqual([true, false]);
    expect(few.isWhole).toBe(false);
    // What was not gone through is not called unreachable.
    expect(few.unreachableIn([[3, 4]])).toBeNull();
  });
});
