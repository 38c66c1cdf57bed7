import { describe, expect, test } from 'vitest';
import { assess } from '../../src/assess/assess.js';
import { BudgetError } from '../../src/assess/world.js';
import { compileText } from '../support/compile-text.js';
import { done, history, moment, reads } from '../support/history.js';

const graph = compileText(`
meter engine "Hour meter" counts h
gauge coolant "Coolant" reads °C
stop hot "Too hot" when coolant above 105
task oil "Oil" every 100 h of engine
task filter "Filter" every 100 h of engine when coolant above 97
`);
const entries = history(['2026-05-01', done(['oil', 'filter'], { engine: 100 })], ['2026-05-01', reads({ coolant: 98 })]);
const now = moment('2026-05-02');

/** What assessing within a budget ends with. */
function within(budget: number): unknown {
  try {
    return assess(graph, entries, now, { budget }).steps;
  } catch (error) {
    return error;
  }
}

/** What assessing takes. */
function stepsTaken(): number {
  return assess(graph, entries, now).steps;
}

describe('the budget of steps', () => {
  test('is kept to the step', () => {
    const steps = stepsTaken();
    expect(steps).toBeGreaterThan(10);
    expect(within(steps)).toBe(steps);
    expect(within(steps - 1)).toBeInstanceOf(BudgetError);
  });

  test('says where it ended, and in which task', () => {
    expect(within(0)).toMatchObject({ name: 'BudgetError', message: 'assessing took more than 0 steps', budget: 0, task: null });
    const inOil = Array.from({ length: stepsTaken() }, (_, budget) => within(budget)).find(
      (error): error is BudgetError => error instanceof BudgetError && error.task === 'oil',
    );
    expect(inOil?.message).toBe(`assessing took more than ${inOil?.budget ?? 0} steps, the last of them in task \`oil\``);
  });

  test('is not spent otherwise where nothing is recorded', () => {
    const bare = assess(graph, entries, now, { withoutRecord: true });
    expect(bare.steps).toBe(stepsTaken());
    expect(bare.record).toEqual({});
    expect(bare.stopRecord).toEqual([]);
    expect(assess(graph, entries, now).stopRecord).toHaveLength(1);
  });
});

test('a graph that names a node which is not there is a fault of whoever made it', () => {
  const [task] = graph.tasks;
  if (task === undefined) throw new Error('no task');
  expect(() => assess({ ...graph, tasks: [{ ...task, trigger: 99 }] }, entries, now)).toThrow('rule graph has no node 99');
});
