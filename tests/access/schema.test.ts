import { expect, test } from 'vitest';
import { walkRound } from '../../src/access/plan-walk-round.js';
import { objections } from '../support/objections.js';
import { rounds } from './rounds.js';
import { scheduleGraph } from './schedule-graph.js';

test.each(rounds.map((round) => [round.name, round] as const))('%s has the published shape', (_name, { schedule, tasks, options }) => {
  const graph = scheduleGraph(schedule);
  for (const walk of [
    walkRound(graph, tasks, options),
    walkRound(graph, [...tasks, 'no-such-task'], { caps: { expanded: 2, held: 100 } }),
  ]) {
    expect(objections('walk-round', walk)).toEqual([]);
  }
});

test('another shape is refused', () => {
  expect(objections('walk-round', { format: 'duewright-walk-round', version: 1 })).not.toEqual([]);
});
