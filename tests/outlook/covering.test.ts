import { describe, expect, test } from 'vitest';
import { coveringTasks, uncovered, withoutCovered } from '../../src/outlook/covering.js';
import { compileText } from '../support/compile-text.js';

const graph = compileText(`
  task look "Look it over" every 1 month
  task small "Small service" every 3 months covers look
  task full "Full service" every 12 months covers small
  task wash "Wash" every 2 months
`);
const covering = coveringTasks(graph);

describe('what another task covers', () => {
  test('is covered through others as well', () => {
    expect(covering.get('look')).toEqual(new Set(['small', 'full']));
    expect(covering.get('small')).toEqual(new Set(['full']));
    expect(covering.get('full')).toBeUndefined();
  });
  test('is not done again on the same visit', () => {
    expect(uncovered(['look', 'wash', 'full'], covering)).toEqual(['wash', 'full']);
    expect(uncovered(['look', 'wash'], covering)).toEqual(['look', 'wash']);
  });
  test('takes nothing of its own as often as the other is done: twelve months are 8 looks, 3 small services and 1 full one', () => {
    const work = [
      { task: 'look', times: 12 },
      { task: 'small', times: 4 },
      { task: 'full', times: 1 },
      { task: 'wash', times: 6 },
    ];
    expect(withoutCovered(work, covering)).toEqual([
      { task: 'look', times: 8 },
      { task: 'small', times: 3 },
      { task: 'full', times: 1 },
      { task: 'wash', times: 6 },
    ]);
    expect(withoutCovered([{ task: 'look', times: 1 }, ...work.slice(1)], covering).map(({ task }) => task)).toEqual([
      'small',
      'full',
      'wash',
    ]);
  });
});
