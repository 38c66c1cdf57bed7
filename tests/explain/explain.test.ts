import { describe, expect, test } from 'vitest';
import { assess } from '../../src/assess/assess.js';
import { applyChange, justShort } from '../../src/explain/apply-change.js';
import type { Change } from '../../src/explain/change.js';
import { explain } from '../../src/explain/explain.js';
import { compileText } from '../support/compile-text.js';
import { done, history, meters, moment, reads } from '../support/history.js';
import { objections } from '../support/objections.js';

const graph = compileText(`
meter engine "Hour meter" counts h
gauge coolant "Coolant gauge" reads °C  normal 75 to 90  high above 97
task oil "Change the oil"  every 100 h of engine or 12 months, whichever first  allow 10 h late
task screen "Clean the screen"  when coolant above 97 °C
task whole "The whole service"  every 500 h of engine  covers oil
`);
const entries = history(
  ['2026-03-02', done('oil', { engine: 1200 })],
  ['2026-04-01', meters({ engine: 1250 })],
  ['2026-05-13', meters({ engine: 1280 })],
  ['2026-05-13 10:00', reads({ coolant: 92 })],
);
const now = moment('2026-05-14');
const assessed = () => assess(graph, entries, now);

describe('explain', () => {
  const oil = () => explain(graph, assessed(), entries, 'oil');

  test('cites the entries that count, and no other', () => {
    expect(oil().entries.map(({ id }) => id)).toEqual(['e1', 'e3']);
  });

  test('tells the state, the governing rule with its place, and what the other part has left', () => {
    expect(oil()).toMatchObject({ state: 'clear', left: 20 * 36000, task: { place: { file: 'test.due', line: 8 }, countedBy: ['whole'] } });
    const [other] = oil().others;
    expect(oil().rule?.parts.find((part) => part.node.id === oil().governing)?.place.text).toBe('100 h of engine');
    expect(oil().rule?.parts.find((part) => part.node.id === other)?.limit?.left).toBe(moment('2027-03-02').day - now.day);
  });

  test('names the nearest change of each state on each axis', () => {
    const day = (text: string): number => moment(text).day;
    expect(oil().changes).toEqual<readonly Change[]>([
      { change: 'meter-reaches', meter: 'engine', ticks: 1290 * 36000, dialBehind: 0, becomes: 'coming-up' },
      { change: 'meter-reaches', meter: 'engine', ticks: 1300 * 36000, dialBehind: 0, becomes: 'due' },
      { change: 'meter-reaches', meter: 'engine', ticks: 1310 * 36000 + 1, dialBehind: 0, becomes: 'overdue' },
      { change: 'date-reaches', day: day('2027-02-16') as never, becomes: 'coming-up' },
      { change: 'date-reaches', day: day('2027-03-02') as never, becomes: 'due' },
      { change: 'date-reaches', day: day('2027-03-03') as never, becomes: 'overdue' },
    ]);
  });

  test('names the reading that would bring a task up', () => {
    expect(explain(graph, assessed(), entries, 'screen').changes).toEqual([
      { change: 'reads', instrument: 'coolant', beyond: 'above', value: 97, becomes: 'due' },
    ]);
  });

  test('forecasts which part decides, at the rates that were given', () => {
    const rates = new Map([['engine', 0.5 * 36000]]);
    const forecast = explain(graph, assess(graph, entries, now, { rates }), entries, 'oil', { rates }).forecast;
    expect(forecast?.decides).toBe(oil().governing);
    expect(forecast?.parts.map(({ about }) => about)).toEqual([moment('2026-06-23').day, moment('2027-03-02').day]);
  });

  test('is an error of the caller without a record, or for a task that is not there', () => {
    expect(() => explain(graph, assessed(), entries, 'nothing')).toThrow(RangeError);
    expect(() => explain(graph, assess(graph, entries, now, { withoutRecord: true }), entries, 'oil')).toThrow(RangeError);
  });

  test('is plain data of the published shape', () => {
    const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value)) as unknown;
    expect(objections('assessment', plain(assessed()))).toEqual([]);
    for (const { id } of graph.tasks) {
      const explanation = explain(graph, assessed(), entries, id);
      expect(plain(explanation)).toEqual(explanation);
      expect(objections('explanation', plain(explanation))).toEqual([]);
      expect(objections('explanation', plain({ ...explanation, state: 'fine' }))).not.toEqual([]);
    }
  });
});

describe('trying a change', () => {
  test('leaves the history as it was, and invents no id that is taken', () => {
    const taken = [...entries, { ...entries[0], id: 'what-if' } as (typeof entries)[number]];
    const { history: after } = applyChange({ change: 'do-it', task: 'oil', becomes: 'clear' }, taken, now);
    expect(taken).toHaveLength(5);
    expect(after.map(({ id }) => id)).toContain('what-if-2');
  });

  test('does not let what is yet to come happen when a day comes', () => {
    const later = [...entries, ...history(['2026-06-01', done('oil')])];
    expect(applyChange({ change: 'date-reaches', day: moment('2027-03-02').day, becomes: 'due' }, later, now).history).toHaveLength(4);
  });

  test('stops a tick, a day or a hair before it', () => {
    const short = (change: Change): unknown => justShort(change, [], now);
    expect(short({ change: 'date-reaches', day: moment('2026-05-20').day, becomes: 'due' })).toEqual({
      history: [],
      now: moment('2026-05-19'),
    });
    expect(short({ change: 'reads', instrument: 'coolant', beyond: 'above', value: 97, becomes: 'due' })).toMatchObject({
      history: [{ readings: { coolant: 97 } }],
    });
    expect(short({ change: 'reads', instrument: 'coolant', beyond: 'at-least', value: 97, becomes: 'due' })).toMatchObject({
      history: [{ readings: { coolant: 96.999 } }],
    });
    expect(short({ change: 'meter-reaches', meter: 'engine', ticks: 36000, dialBehind: 0, becomes: 'due' })).toMatchObject({
      history: [{ meters: { engine: 35999 / 36000 } }, { kind: 'confirm' }],
    });
  });
});
