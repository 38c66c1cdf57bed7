import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { walkRound } from '../../src/access/plan-walk-round.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';
import { rawWalkRound } from './oracle/raw-walk-round.js';
import { rounds } from './rounds.js';
import { scheduleGraph } from './schedule-graph.js';

const tractor = (): RuleGraph => scheduleGraph('orchard-tractor.due');

describe('walk-rounds of real schedules cost what brute force over the rule graph says', () => {
  test.each(['orchard-tractor.due', 'wood-chipper.due'])('%s', { timeout: 120_000 }, (name) => {
    const graph = scheduleGraph(name);
    const plain = graph.tasks
      .filter((task) => task.covers.length === 0 && task.metBy.length === 0 && task.follows.length === 0)
      .map((task) => task.id);
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.constantFrom(...plain), { maxLength: 4 }),
        fc.constantFrom<'rest' | 'work'>('rest', 'work'),
        (tasks, end) => {
          const walk = walkRound(graph, tasks, { end });
          const raw = rawWalkRound(graph, tasks, graph.access.rest, end === 'rest' ? graph.access.rest : (graph.access.work ?? {}), null);
          expect(walk.totals.seconds).toBe(raw);
        },
      ),
      { numRuns: 12 },
    );
  });
});

test('the order in which tasks are named does not matter, and the answer is plain data', () => {
  const [daily] = rounds;
  if (daily === undefined) throw new Error('no rounds');
  const one = walkRound(tractor(), daily.tasks, daily.options);
  expect(walkRound(tractor(), [...daily.tasks].reverse(), daily.options)).toEqual(one);
  expect(JSON.parse(JSON.stringify(one))).toEqual(one);
});

test('whoever stops after any line can go on from there at no more than what was left', () => {
  const [daily] = rounds;
  if (daily === undefined) throw new Error('no rounds');
  const whole = walkRound(tractor(), daily.tasks, daily.options);
  for (const line of whole.lines) {
    const left = daily.tasks.filter(
      (task) => !whole.lines.some((each) => each.number <= line.number && each.kind === 'task' && each.task === task),
    );
    const rest = walkRound(tractor(), left, {
      ...daily.options,
      stance: line.stance,
      ...(line.place === null ? {} : { place: line.place }),
    });
    expect(rest.totals.seconds).toBe(whole.totals.seconds - line.total);
  }
});

test('a task that covers another does it too, and one that must come first comes along', () => {
  const walk = walkRound(tractor(), ['engine-oil-level', 'change-engine-oil']);
  const line = walk.lines.find((each) => each.kind === 'task' && each.task === 'change-engine-oil');
  expect(line).toMatchObject({ covers: ['engine-oil-level'] });
  expect(walk.lines.some((each) => each.kind === 'task' && each.task === 'engine-oil-level')).toBe(false);
});

test('a task that nobody knows is told, and the rest is planned', () => {
  const walk = walkRound(tractor(), ['engine-oil-level', 'polish-the-badge']);
  expect(walk.leftOut).toEqual([{ task: 'polish-the-badge', because: 'unknown-task', way: [], rule: null }]);
  expect(walk.outcome).toBe('found');
});

test('a cap is told with what was found, the lower bound and the gap', () => {
  const walk = walkRound(tractor(), rounds[1]?.tasks ?? [], { caps: { expanded: 3, held: 1000 } });
  const exact = walkRound(tractor(), rounds[1]?.tasks ?? []);
  if (walk.outcome === 'undecided') return;
  expect(walk.proof?.kind).toBe('bounded');
  if (walk.proof?.kind !== 'bounded') return;
  expect(walk.proof.atLeast).toBeLessThanOrEqual(exact.totals.seconds);
  expect(walk.totals.seconds - walk.proof.gap).toBe(walk.proof.atLeast);
});

test('a task that cannot be reached from here is left out with what blocks it, and the rest is planned', () => {
  // Without the loader step nothing behind the guard can be reached.
  const { access } = tractor();
  const graph = { ...tractor(), access: { ...access, steps: access.steps.filter((step) => step.id !== 'block-loader') } };
  const walk = walkRound(graph, ['coolant-level', 'walk-round']);
  expect(walk.leftOut).toMatchObject([{ task: 'coolant-level', because: 'out-of-reach' }]);
  expect(walk.lines.map((line) => (line.kind === 'task' ? line.task : line.kind))).toEqual(['walk-round']);
});

test('a raised part comes down as soon as that costs nothing, not at the end of the round', () => {
  const walk = walkRound(tractor(), ['flail-mower.flail-look', 'walk-round', 'engine-oil-level', 'brakes'], { end: 'work' });
  const hangs = walk.lines.filter((line) => line.stance['flail-mower.mower'] === 'raised');
  const props = walk.lines.filter((line) => line.kind === 'step' && line.step === 'flail-mower.prop-mower');
  expect(props).toHaveLength(2);
  // It hangs between being raised and propped, and between losing its stands and coming down: nothing else is done meanwhile.
  const meanwhile = hangs.filter((line) => line.kind === 'task');
  expect(meanwhile).toEqual([]);
});

test('whoever walks to a place to move a part first does there what can be done as the machine stands', () => {
  const walk = walkRound(tractor(), ['start-lock', 'brakes', 'coolant-level', 'walk-round'], { place: 'wheels', end: 'work' });
  const startLock = walk.lines.find((line) => line.kind === 'task' && line.task === 'start-lock');
  expect(startLock?.stance).toMatchObject({ engine: 'stopped', loader: 'lowered' });
});
