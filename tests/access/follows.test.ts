import { expect, test } from 'vitest';
import { walkRound } from '../../src/access/plan-walk-round.js';
import { uncheckedGraph } from './unchecked-graph.js';

test('a task that follows another stands after it, though it is written before it and could be done at once', () => {
  const graph = uncheckedGraph(['position lid shut, open', 'at rest lid shut', 'task filter follows drain', 'task drain', 'task look']);
  const walk = walkRound(graph, ['filter', 'drain', 'look']);
  const order = walk.lines.flatMap((line) => (line.kind === 'task' ? [line.task] : []));
  expect(order.indexOf('drain')).toBeLessThan(order.indexOf('filter'));
  expect(order).toHaveLength(3);
  expect([walk.format, walk.version, walk.schedule.name]).toEqual(['duewright-walk-round', 1, 'test-machine']);
});
