/** docs/meaning.md §5 and the worked line of the design: the screen at 10:30, 11:00, …; the oil change about 11:40, at 1300 h. */
import { describe, expect, test } from 'vitest';
import { duringOuting } from '../../src/outlook/during-outing.js';
import { formatTime } from '../../src/values/moment.js';
import { compileText } from '../support/compile-text.js';
import { done, history, meters, moment } from '../support/history.js';

const graph = compileText(`meter engine "Hour meter" counts h
duty tall "Growth above knee height"
task screen "Clean the screen"
  before each day's work
  every 30 min of work in tall
task oil "Change the oil"
  every 100 h of engine
task tidy "Put everything back"
  after work
task yearly "Yearly" every 1 year`);

const entries = history(['2026-05-01', done(['oil', 'yearly'], { engine: 1200 })], ['2026-05-10', meters({ engine: 1298.3 })]);

describe('an outing played through', () => {
  const outlook = duringOuting(graph, entries, moment('2026-05-11 09:00'), { start: 600, hours: 2, duties: ['tall'] });

  test('before it', () => expect(outlook.before.map((task) => task.task)).toEqual(['screen']));

  test('during it, by the clock', () => {
    expect(outlook.during.map((line) => `${line.task} ${formatTime(line.at?.minute ?? 0)}`)).toEqual([
      'screen 10:30',
      'screen 11:00',
      'screen 11:30',
      'oil 11:42',
      'screen 12:00',
    ]);
  });

  test('after it', () => expect(outlook.after.map((task) => task.task)).toEqual(['tidy']));

  test('the oil change falls due at 1300 h', () =>
    expect(outlook.during.find((line) => line.task === 'oil')?.due).toEqual({ on: 'meter', meter: 'engine', ticks: 1300 * 36000 }));
});

test('what comes due between now and the start stands before it', () => {
  const mine = compileText('task look "Look" within 3 h before each outing\ntask stroll "Stroll" before each outing');
  const asked = (now: string) => duringOuting(mine, [], moment(now), { start: 14 * 60, hours: 8 });
  expect(asked('2026-05-11 09:00').before.map(({ task, due }) => [task, due])).toEqual([
    ['look', { on: 'moment', at: moment('2026-05-11 11:00') }],
    ['stroll', { on: 'moment', at: moment('2026-05-11 09:00') }],
  ]);
  expect(asked('2026-05-11 12:00').before.map(({ task }) => task)).toEqual(['look', 'stroll']);
  expect(asked('2026-05-11 09:00').during).toEqual([]);
});

test('without a start, only how long into it is told', () => {
  const outlook = duringOuting(graph, entries, moment('2026-05-11'), { hours: 1, duties: ['tall'] });
  expect(outlook.during.map((line) => [line.task, line.afterMinutes, line.at])).toEqual([
    ['screen', 30, null],
    ['screen', 60, null],
  ]);
});

test('outside the duty nothing falls due in minutes', () => {
  expect(duringOuting(graph, entries, moment('2026-05-11'), { hours: 1 }).during).toEqual([]);
});

test('the list is cut at the most lines asked for, and says so', () => {
  const outlook = duringOuting(graph, entries, moment('2026-05-11'), { hours: 8, duties: ['tall'] }, { most: 3 });
  expect([outlook.during.length, outlook.cut]).toEqual([3, true]);
});

test('a meter that counts from outings goes on while working, from where it stood', () => {
  const mine = compileText('meter out "Hours out" counts h from outings\ntask pins "Grease the pins"\n  every 5 h of out');
  const before = history(['2026-05-09', done('pins')], ['2026-05-10 08:00', { kind: 'outing', until: '12:00' }]);
  const outlook = duringOuting(mine, before, moment('2026-05-11 07:00'), { start: 480, hours: 3 });
  expect(outlook.during.map((line) => `${line.task} ${formatTime(line.at?.minute ?? 0)}`)).toEqual(['pins 09:00']);
  expect(outlook.after).toEqual([]);
});
