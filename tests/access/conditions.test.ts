/** What a schedule says of positions, as sets of stances: every stance, one by one, against what the words say. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { NOWHERE } from '../../src/access/fault-words.js';
import { machineOf, namedStance, partIndex, placeIndex, stanceFrom, type Machine } from '../../src/access/machine.js';
import { holds } from '../../src/access/stance-set.js';
import type { Node, RuleGraph } from '../../src/graph/rule-graph.js';
import { uncheckedGraph } from './unchecked-graph.js';

const sizes = [2, 3, 2];
const stances = [0, 1].flatMap((a) => [0, 1, 2].flatMap((b) => [0, 1].map((c) => [a, b, c])));
const PARTS = ['position a p0, p1', 'position b p0, p1, p2', 'position c p0, p1', 'at rest a p0, b p0, c p0', 'at work b p2'];

/** A condition in words, and what it says. */
interface Saying {
  readonly words: string;
  readonly holds: (stance: readonly number[]) => boolean;
}

const { saying } = fc.letrec<{ saying: Saying }>((tie) => ({
  saying: fc.oneof(
    { maxDepth: 3, depthSize: 'small' },
    fc.tuple(fc.nat(2), fc.nat(2)).map(([part, position]): Saying => {
      const there = position % (sizes[part] ?? 1);
      return { words: `${'abc'.charAt(part)} p${there}`, holds: (stance) => stance[part] === there };
    }),
    tie('saying').map((one): Saying => ({ words: `not (${one.words})`, holds: (stance) => !one.holds(stance) })),
    fc.tuple(tie('saying'), tie('saying')).map(([one, other]): Saying => ({
      words: `(${one.words} and ${other.words})`,
      holds: (stance) => one.holds(stance) && other.holds(stance),
    })),
    fc.tuple(tie('saying'), tie('saying')).map(([one, other]): Saying => ({
      words: `(${one.words} or ${other.words})`,
      holds: (stance) => one.holds(stance) || other.holds(stance),
    })),
  ),
}));

function conditionOf(graph: RuleGraph): ReturnType<Machine['condition']> {
  return machineOf(graph).condition(graph.tasks[0]?.stance ?? -1);
}

describe('a condition on positions', () => {
  test('holds in the stances that its words say', () => {
    fc.assert(
      fc.property(saying, (said) => {
        const set = conditionOf(uncheckedGraph([...PARTS, `task look with ${said.words}`]));
        expect(stances.map((stance) => holds(set ?? [], stance))).toEqual(stances.map(said.holds));
      }),
      { numRuns: 60 },
    );
  });

  const graph = uncheckedGraph([...PARTS, 'task look with not (a p0 and (b p0 or not c p1))']);
  const hours = graph.nodes[graph.tasks[0]?.trigger ?? -1];

  /** The graph with some of its nodes made into others. */
  const withNodes = (change: (node: Node) => Node | undefined): RuleGraph => ({
    ...graph,
    nodes: graph.nodes.map((node) => change(node) ?? node),
  });

  test.each(['a', 'b', 'c'])('cannot be worked with where a part of it speaks of anything else, instead of %s', (part) => {
    expect(conditionOf(graph)).not.toBeNull();
    expect(conditionOf(withNodes((node) => (node.kind === 'position-is' && node.part === part ? hours : undefined)))).toBeNull();
  });

  test('holds nowhere where it names a position that there is not, and its opposite everywhere', () => {
    const lost = withNodes((node) => (node.kind === 'position-is' && node.part === 'a' ? { ...node, position: 'p9' } : undefined));
    const set = conditionOf(lost);
    expect(stances.every((stance) => holds(set ?? [], stance))).toBe(true);
  });

  test('of a node that there is not cannot be worked with', () => {
    expect(machineOf(graph).condition(999)).toBeNull();
  });

  test('is too tangled past so many boxes, whatever is added; its opposite need not be', () => {
    const pairs = Array.from({ length: 11 }, (_, index) => [`l${index}`, `r${index}`] as const);
    const parts = pairs.flat();
    const lines = [
      ...parts.map((part) => `position ${part} shut, open`),
      'position z shut, open',
      `at rest z shut, ${parts.map((part) => `${part} shut`).join(', ')}`,
    ];
    const tangle = pairs.map(([left, right]) => `(${left} open or ${right} open)`).join(' and ');
    const graph = uncheckedGraph([...lines, `task look with ${tangle}`, 'task turn with z open']);
    const [tangled = -1, simple = -1] = graph.tasks.map(({ stance }) => stance);
    const first = graph.nodes.length;
    const both = (at: number, kind: 'and' | 'or', ...parts: number[]): Node => ({ id: first + at, kind, parts, origin: NOWHERE });
    const more: readonly Node[] = [
      both(0, 'and', tangled, simple),
      both(1, 'and', simple, tangled),
      both(2, 'or', tangled, simple),
      both(3, 'or', simple, tangled),
      { id: first + 4, kind: 'not', part: tangled, origin: NOWHERE },
      both(5, 'and', first + 4, simple),
    ];
    const { condition } = machineOf({ ...graph, nodes: [...graph.nodes, ...more] });
    expect([tangled, first, first + 1, first + 2, first + 3].map(condition)).toEqual([null, null, null, null, null]);
    // Not so: neither of some pair.
    expect([first + 4, first + 5].map((each) => condition(each)?.length)).toEqual([11, 11]);
  });
});

describe('a stance by name', () => {
  const graph = uncheckedGraph([
    ...PARTS.slice(0, 3),
    'at rest a p1, b p2, c p0',
    'at work b p0',
    'place seat "Seat"',
    'place rear "Rear"',
    'step go "Go" b p0 to p1',
    'task look at rear',
  ]);

  test('is as at rest in what it does not name, and where it names a position that there is not', () => {
    expect(stanceFrom(graph, {})).toEqual([1, 2, 0]);
    expect(stanceFrom(graph, { a: 'p0', c: 'p1' })).toEqual([0, 2, 1]);
    expect(stanceFrom(graph, { a: 'p7', b: 'p1', moon: 'p0' })).toEqual([1, 1, 0]);
    // A graph from elsewhere may say nothing of rest.
    expect(stanceFrom({ ...graph, access: { ...graph.access, rest: {} } }, {})).toEqual([0, 0, 0]);
    expect(namedStance(graph, [0, 1, 1])).toEqual({ a: 'p0', b: 'p1', c: 'p1' });
  });

  test('at work is as at rest in what is not said of work', () => {
    const { rest, work } = machineOf(graph);
    expect([rest, work]).toEqual([
      [1, 2, 0],
      [1, 0, 0],
    ]);
  });

  test('has its parts and places by index', () => {
    expect([partIndex(graph, 'c'), partIndex(graph, 'moon')]).toEqual([2, -1]);
    expect([placeIndex(graph, 'seat'), placeIndex(graph, 'rear'), placeIndex(graph, 'moon'), placeIndex(graph, undefined)]).toEqual([
      0,
      1,
      null,
      null,
    ]);
  });
});

describe('a step as moves', () => {
  const moves = (...lines: readonly string[]) => {
    const machine = machineOf(uncheckedGraph([...PARTS, ...lines]));
    return machine.moves.map(({ part, from, to, during, seconds, place }, index) => ({
      move: [part, from, to, machine.origins[index]?.isBack],
      where: stances.filter((stance) => holds(during, stance)).map((stance) => stance.join('')),
      seconds,
      place,
    }));
  };

  test('goes there and back under the same condition; of its own part only where the step begins counts', () => {
    expect(moves('step turn "Turn" b p0 to p2 while a p1 and b p0 takes 3 s')).toEqual(
      [
        [1, 0, 2, false],
        [1, 2, 0, true],
      ].map((move) => ({ move, where: ['100', '101', '110', '111', '120', '121'], seconds: 3, place: null })),
    );
    expect(moves('step turn "Turn" b p0 to p2 while a p1 or b p2 one way')).toEqual([
      { move: [1, 0, 2, false], where: ['100', '101', '110', '111', '120', '121'], seconds: 0, place: null },
    ]);
  });

  test('that asks for its own part elsewhere can never be made', () => {
    expect(moves('step turn "Turn" b p0 to p2 while b p1 one way')).toMatchObject([{ where: [] }]);
  });
});
