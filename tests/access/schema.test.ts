import { readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import { expect, test } from 'vitest';
import { walkRound } from '../../src/access/plan-walk-round.js';
import { rounds } from './rounds.js';
import { scheduleGraph } from './schedule-graph.js';

const schema = JSON.parse(readFileSync(new URL('../../grammar/walk-round.schema.json', import.meta.url), 'utf8')) as object;
const validate = new Ajv({ strict: false, allErrors: true }).compile(schema);

test.each(rounds.map((round) => [round.name, round] as const))('%s has the published shape', (_name, { schedule, tasks, options }) => {
  const graph = scheduleGraph(schedule);
  for (const walk of [
    walkRound(graph, tasks, options),
    walkRound(graph, [...tasks, 'no-such-task'], { caps: { expanded: 2, held: 100 } }),
  ]) {
    expect(validate(walk), JSON.stringify(validate.errors?.slice(0, 3))).toBe(true);
  }
});

test('another shape is refused', () => {
  expect(validate({ format: 'duewright-walk-round', version: 1 })).toBe(false);
});
