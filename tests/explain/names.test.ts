/** The titles and units of what an explanation mentions, as they grow by what a history mentions besides. */
import { describe, expect, test } from 'vitest';
import { GrowingNames, type Named, namesById, namesIn, namesOf } from '../../src/explain/names.js';
import { Seen } from '../../src/explain/seen.js';
import type { Observation } from '../../src/assess/assessment.js';
import { compileText } from '../support/compile-text.js';

const tasks = Array.from({ length: 24 }, (_, index) => `task t${index} "Task ${index}" every 5 h of engine\n`);
const graph = compileText(`meter engine "Hours" counts h\nmeter t0 "Trips" counts km\n${tasks.join('')}`);
const known = namesById(graph);
const named = (id: string): readonly Named[] => known.get(id) ?? [];
const none = (): GrowingNames => new GrowingNames(namesIn(graph, new Set()), []);

describe('names', () => {
  test('grow by everything that goes by an id, and are the very same where nothing is new', () => {
    const grown = none().with(named('t0'));
    expect(grown.names).toEqual(namesIn(graph, new Set(['t0'])));
    expect(Object.keys(grown.names.meters)).toEqual(['t0']);
    expect(grown.with(named('t0'))).toBe(grown);
    expect(grown.with([])).toBe(grown);
  });

  test('leave what they grew from as it was, and grow in the same way once', () => {
    const start = none();
    const one = start.with(named('t1'));
    expect(start.names.tasks).toEqual({});
    expect(start.with(named('t1'))).toBe(one);
    expect(one.with(named('t2')).names.tasks).toEqual({ t1: 'Task 1', t2: 'Task 2' });
    expect(start.with(named('t2')).names.tasks).toEqual({ t2: 'Task 2' });
  });

  test('come out alike when more ways of growing were met than are kept', () => {
    const start = none();
    const all = Object.keys(namesOf(graph).tasks).flatMap((id) => [...named(id)]);
    for (const first of all) for (const second of all) start.with([first]).with([second]);
    const last = start.with(all.toReversed());
    expect(last.names).toEqual(none().with(all.toReversed()).names);
    expect(last.names).toEqual(namesIn(graph, new Set(all.map(({ id }) => id))));
    expect(last.with(all)).toBe(last);
  });
});

test.each([1, 8, 9, 30])('of %d observations each is found by its node, and of two of one node the last', (count) => {
  const seen = (node: number, state: 'due' | 'clear'): Observation => ({ node, state, entries: [] });
  const all = [...Array.from({ length: count - 1 }, (_, node) => seen(node + 1, 'clear')), seen(0, 'clear'), seen(0, 'due')].slice(-count);
  const found = new Seen(all);
  expect(found.get(0)?.state).toBe('due');
  for (const each of all.filter(({ node }) => node !== 0)) expect(found.get(each.node)).toBe(each);
  expect(found.get(1000)).toBeUndefined();
});
