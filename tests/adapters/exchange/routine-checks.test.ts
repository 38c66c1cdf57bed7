import { describe, expect, it } from 'vitest';
import { foldRoutine } from '../../../src/adapters/exchange/routine-checks.js';
import { serviceRecordPage } from '../../../src/adapters/exchange/service-record-page.js';
import { serviceRecord } from '../../../src/adapters/exchange/service-record.js';
import type { Entry } from '../../../src/history/entry.js';
import { compileText } from '../../support/compile-text.js';
import { done, history, moment } from '../../support/history.js';

const graph = compileText(`meter engine "Hours" counts h
task look "Look it over"
  before each day's work
task oil "Change the engine oil"
  every 12 months
task store "Put it away"
  before storage`);

const entries: readonly Entry[] = [
  ...history(
    ['2026-03-01', done('look')],
    ['2026-03-02', done('look')],
    ['2026-03-02', done('oil')],
    ['2026-03-04', done('look')],
    ['2026-10-01', done('store')],
  ),
  { kind: 'done', id: 'noted', on: '2026-03-05', tasks: ['look', 'oil'], note: 'A drop under the pump.' },
];
const record = serviceRecord([{ from: null, graph }], entries, moment('2026-12-31'));

describe('checks that go with the work', () => {
  const { lines, checks } = foldRoutine(record);

  it('are summed up, unless there is something to say of one', () => {
    expect(checks).toEqual([
      {
        task: 'look',
        title: 'Look it over',
        times: 3,
        days: 3,
        first: { day: moment('2026-03-01').day, minute: null },
        last: { day: moment('2026-03-04').day, minute: null },
      },
    ]);
    expect(lines.map(({ task }) => task)).toEqual(['oil', 'look', 'oil', 'store']);
  });

  it('lose nothing: lines and sums add up to the work on record', () => {
    expect(lines.length + checks.reduce((sum, { times }) => sum + times, 0)).toBe(record.work.length);
  });

  it('stand below the work on the page, which says the note of an entry once', () => {
    const page = serviceRecordPage(record);
    expect(page.indexOf('summed up')).toBeGreaterThan(page.indexOf('Put it away'));
    expect(page.split('A drop under the pump.')).toHaveLength(2);
  });
});
