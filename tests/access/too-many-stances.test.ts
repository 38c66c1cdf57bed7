/** Which parts are named when a machine has more stances than are gone through: small machines, and smaller limits. */
import { describe, expect, test } from 'vitest';
import { machineOf } from '../../src/access/machine.js';
import { machineSpace } from '../../src/access/machine-space.js';
import { tooManyStances } from '../../src/access/too-many-stances.js';
import { uncheckedGraph } from './unchecked-graph.js';

/** A hood, and taps that each turn by themselves. */
function machineWith(taps: readonly string[]) {
  const parts = ['hood', ...taps];
  return machineOf(
    uncheckedGraph([
      ...parts.map((part) => `position ${part} shut, open`),
      `at rest ${parts.map((part) => `${part} shut`).join(', ')}`,
      ...parts.map((part) => `step open-${part} "Open ${part}" ${part} shut to open`),
    ]),
  );
}

/** Part, and words, where so many stances are gone through: once those are spent, a single one of each group. */
function told(taps: readonly string[], most: number): readonly string[] {
  const machine = machineWith(taps);
  const { at, message } = tooManyStances(machine, machineSpace(machine, [], most));
  return [at.text, message];
}

const of = (names: string): string =>
  `Of the moving parts, ${names} have more than 20,000 stances together: whether what needs them can be reached was not checked.`;

describe('parts with too many stances', () => {
  test('are named from the first on, in every group that was not gone through', () => {
    expect(told(['a', 'b', 'c'], 4)).toEqual(['position b shut, open', of('`b`, `c`')]);
    expect(told(['a', 'b', 'c'], 6)).toEqual(['position c shut, open', of('`c`')]);
  });

  test('are a fault of their own, which shows no way and says what to do', () => {
    const machine = machineWith(['a']);
    expect(tooManyStances(machine, machineSpace(machine, [], 2))).toMatchObject({
      kind: 'too-many-stances',
      way: [],
      help: 'Tie the parts together with `while` conditions, or leave out parts that no task asks about.',
    });
  });

  test('are named up to six; of more, five and how many more', () => {
    expect(told(['a', 'b', 'c', 'd', 'e', 'f'], 2)[1]).toBe(of('`a`, `b`, `c`, `d`, `e`, `f`'));
    expect(told(['a', 'b', 'c', 'd', 'e', 'f', 'g'], 2)[1]).toBe(of('`a`, `b`, `c`, `d`, `e` and 2 more'));
  });

  test('are not named where they are all of them', () => {
    expect(told(['a', 'b'], 1)).toEqual([
      'position hood shut, open',
      'The moving parts have more than 20,000 stances together: whether every task can be reached was not checked.',
    ]);
  });
});
