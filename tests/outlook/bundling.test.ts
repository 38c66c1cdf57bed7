import fc from 'fast-check';
import highsLoader from 'highs';
import { beforeAll, describe, expect, test } from 'vitest';
import { bundle } from '../../src/outlook/bundling.js';
import type { BundledTask } from '../../src/outlook/bundling.js';

// The package is CommonJS with types written as if it were not.
const loadSolver = highsLoader as unknown as typeof highsLoader.default;
type Solver = Awaited<ReturnType<typeof loadSolver>>;
let highs: Solver;
beforeAll(async () => {
  highs = await loadSolver();
});

const windows = (...pairs: [number, number][]): BundledTask[] =>
  pairs.map(([from, to], index) => ({ id: `t${index}`, from, to, opens: [] }));

describe('bundling', () => {
  test('fewest visits, each as late as it can be', () => {
    const found = bundle(windows([40, 60], [45, 55], [58, 70], [66, 80], [90, 110]));
    expect(found.visits.map(({ at, tasks }) => [at, tasks])).toEqual([
      [55, ['t0', 't1']],
      [70, ['t2', 't3']],
      [110, ['t4']],
    ]);
    expect(found).toMatchObject({ thrownAway: 15, opening: 0, proved: true });
  });
  test('what needs the same opening up goes together, though it costs some life', () => {
    const tasks: BundledTask[] = [
      { id: 'a', from: 0, to: 50, opens: ['panel'] },
      { id: 'b', from: 40, to: 100, opens: ['panel'] },
      { id: 'c', from: 90, to: 100, opens: [] },
    ];
    expect(bundle(tasks, new Map([['panel', 8]])).visits.map(({ at, tasks: done }) => [at, done])).toEqual([
      [50, ['a', 'b']],
      [100, ['c']],
    ]);
    expect(bundle(tasks).visits.map(({ tasks: done }) => done)).toEqual([['a'], ['b', 'c']]);
  });
  test('nothing to do is no visit', () => {
    expect(bundle([])).toMatchObject({ visits: [], proved: true });
  });
  test('a search cut short says so and still has a plan', () => {
    const many = Array.from({ length: 30 }, (_, index): BundledTask => ({
      id: `t${index}`,
      from: index,
      to: index + 25,
      opens: [`p${index % 5}`],
    }));
    const found = bundle(many, new Map([0, 1, 2, 3, 4].map((part) => [`p${part}`, part + 1])), 10);
    expect(found.proved).toBe(false);
    expect(found.visits.flatMap(({ tasks }) => tasks)).toHaveLength(30);
  });
  test('thirty tasks of a year, quickly and proved', () => {
    const many = Array.from({ length: 30 }, (_, index): BundledTask => ({
      id: `t${index}`,
      from: (index * 37) % 300,
      to: ((index * 37) % 300) + 20 + ((index * 13) % 40),
      opens: index % 3 === 0 ? [`p${index % 4}`] : [],
    }));
    const found = bundle(many, new Map([0, 1, 2, 3].map((part) => [`p${part}`, 3 + part])));
    expect(found.proved).toBe(true);
  });
  test('agrees with an integer program', () => {
    const parts = fc.subarray(['p', 'q', 'r']);
    const task = fc.record({ from: fc.integer({ min: 0, max: 25 }), length: fc.integer({ min: 0, max: 15 }), opens: parts });
    const costs = fc.record({ p: fc.integer({ min: 0, max: 9 }), q: fc.integer({ min: 0, max: 9 }), r: fc.integer({ min: 0, max: 9 }) });
    fc.assert(
      fc.property(fc.array(task, { minLength: 1, maxLength: 7 }), costs, (raw, cost) => {
        const tasks = raw.map(({ from, length, opens }, index): BundledTask => ({ id: `t${index}`, from, to: from + length, opens }));
        const ours = bundle(tasks, new Map(Object.entries(cost)));
        expect(ours.proved).toBe(true);
        expect([ours.visits.length, ours.opening, ours.thrownAway]).toEqual(byIntegerProgram(tasks, cost));
      }),
      { numRuns: 60 },
    );
  });
});

/** Visits, opening and life thrown away at the optimum, by HiGHS; one weight tells the three goals apart. */
function byIntegerProgram(tasks: readonly BundledTask[], cost: Readonly<Record<string, number>>): readonly number[] {
  const times = [...new Set(tasks.map(({ to }) => to))];
  const [visit, open] = [1e6, 1e3];
  const parts = Object.keys(cost);
  const placed = tasks.flatMap((task, i) =>
    times.flatMap((at, v) => (at >= task.from && at <= task.to ? [{ task, at, name: `x_${i}_${v}`, i, v }] : [])),
  );
  const goal = [
    ...times.map((_, v) => `${visit} y_${v}`),
    ...times.flatMap((_, v) => parts.map((part) => `${open * (cost[part] ?? 0)} o_${v}_${part}`)),
    ...placed.map(({ task, at, name }) => `${task.to - at} ${name}`),
  ];
  const rows = [
    ...tasks.map(
      (_, i) =>
        `${placed
          .filter((each) => each.i === i)
          .map(({ name }) => name)
          .join(' + ')} = 1`,
    ),
    ...placed.map(({ name, v }) => `${name} - y_${v} <= 0`),
    ...placed.flatMap(({ task, name, v }) => task.opens.map((part) => `${name} - o_${v}_${part} <= 0`)),
  ];
  const variables = [...times.flatMap((_, v) => [`y_${v}`, ...parts.map((part) => `o_${v}_${part}`)]), ...placed.map(({ name }) => name)];
  const solved = highs.solve(
    `Minimize\n obj: ${goal.join(' + ')}\nSubject To\n${rows.map((row, i) => ` c${i}: ${row}`).join('\n')}\nBinary\n ${variables.join(' ')}\nEnd`,
    { mip_rel_gap: 0, mip_abs_gap: 0 },
  );
  const value = (name: string): number => Math.round((solved.Columns[name] as { Primal: number } | undefined)?.Primal ?? 0);
  return [
    times.reduce((sum, _, v) => sum + value(`y_${v}`), 0),
    times.reduce((sum, _, v) => sum + parts.reduce((all, part) => all + value(`o_${v}_${part}`) * (cost[part] ?? 0), 0), 0),
    placed.reduce((sum, { task, at, name }) => sum + value(name) * (task.to - at), 0),
  ];
}
