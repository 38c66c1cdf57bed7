/** docs/meaning.md §6 and §7: conditions, readings and what follows from them, defects, unknowns, the verdict. */
import { describe, expect, test } from 'vitest';
import { assess } from '../../src/assess/assess.js';
import type { AssessOptions, Assessment } from '../../src/assess/assessment.js';
import type { Entry } from '../../src/history/entry.js';
import { compileText } from '../support/compile-text.js';
import { done, entry, history, meters, moment, reads } from '../support/history.js';

const machine = `meter engine "Hour meter" counts h
gauge coolant "Coolant temperature gauge" reads °C
  normal 75 to 90
  high above 97
dipstick oil "Engine oil dipstick" low to full is 1.2 L
dipstick hydraulic "Hydraulic oil dipstick" low to full is 3 L
attachment mower "Mower"
defect seep "Seep at a fitting"
  classes wetness, drops-form, drops-fall
  drops-fall hold "Do not work the machine: drops are falling."
position panel fitted, off
at rest panel fitted
`;

function run(declarations: string, entries: readonly Entry[], now: string, options: AssessOptions = {}): Assessment {
  return assess(compileText(machine + declarations), entries, moment(now), options);
}

function stateOf(assessment: Assessment, task = 't'): string | undefined {
  return assessment.tasks.find((each) => each.task === task)?.state;
}

const when = (condition: string): string => `task t "Task"\nwhen ${condition}`;

describe('readings', () => {
  test('never read is unknown, and says which reading would settle it', () => {
    const found = run(when('coolant above normal'), [], '2026-05-11');
    expect(stateOf(found)).toBe('unknown');
    expect(found.tasks[0]?.missing).toEqual([{ what: 'reading', instrument: 'coolant', because: 'never-read' }]);
  });

  test('above the band: due; within it: clear; answered by doing it', () => {
    const hot = history(['2026-05-11', reads({ coolant: 91 })]);
    expect(stateOf(run(when('coolant above normal'), hot, '2026-05-11'))).toBe('due');
    expect(stateOf(run(when('coolant above normal'), history(['2026-05-11', reads({ coolant: 90 })]), '2026-05-11'))).toBe('clear');
    expect(
      stateOf(run(when('coolant above normal'), [...hot, entry({ id: 'x', on: '2026-05-11', kind: 'done', tasks: ['t'] })], '2026-05-12')),
    ).toBe('clear');
  });

  test('unknown or true is true; unknown and false is false; not unknown is unknown (Kleene)', () => {
    const open = history(['2026-05-11', { kind: 'defect-opened', defect: 'seep', class: 'wetness' }]);
    expect(stateOf(run(when('coolant above normal or seep is open'), open, '2026-05-11'))).toBe('due');
    expect(stateOf(run(when('coolant above normal and seep is open'), [], '2026-05-11'))).toBe('clear');
    expect(stateOf(run(when('coolant above normal and seep is open'), open, '2026-05-11'))).toBe('unknown');
    expect(stateOf(run(when('not coolant above normal'), [], '2026-05-11'))).toBe('unknown');
  });

  test('a trend looks at the window up to the latest reading', () => {
    const climb = (last: number, at: string): readonly Entry[] =>
      history(['2026-05-11 09:00', reads({ coolant: 84 })], [`2026-05-11 ${at}`, reads({ coolant: last })]);
    expect(stateOf(run(when('coolant climbs 6 °C within 20 min'), climb(90, '09:20'), '2026-05-11 10:00'))).toBe('due');
    expect(stateOf(run(when('coolant climbs 6 °C within 20 min'), climb(89.9, '09:20'), '2026-05-11 10:00'))).toBe('clear');
    expect(stateOf(run(when('coolant climbs 6 °C within 20 min'), climb(90, '09:21'), '2026-05-11 10:00'))).toBe('clear');
    const working = [...climb(90, '09:21'), entry({ id: 'o', on: '2026-05-11', at: '08:00', kind: 'outing' })];
    expect(stateOf(run(when('coolant climbs 6 °C within 20 min'), working, '2026-05-11 10:00'))).toBe('unknown');
  });

  test('too old is unknown', () => {
    const gauge = 'gauge belt "Belt tension" reads kPa fresh for 7 days\n';
    const read = history(['2026-05-01', reads({ belt: 10 })]);
    expect(stateOf(run(gauge + when('belt below 20 kPa'), read, '2026-05-08'))).toBe('due');
    expect(stateOf(run(gauge + when('belt below 20 kPa'), read, '2026-05-09'))).toBe('unknown');
  });
});

describe('what follows from a reading', () => {
  const tasks = `task level "Check the oil level"
  before each day's work
  reads oil
    below low    hold "Do not start the engine until the level is above low." then top-up now
    low to full  fine
    above full   caution "Overfilled." then draw-off within 1 day
task top-up "Top up"
task draw-off "Draw off"`;

  test('below low holds the machine until a newer reading lifts it, and asks for the top-up', () => {
    const low = history(['2026-05-11 07:00', reads({ oil: 'below-low' })]);
    const found = run(tasks, low, '2026-05-11 08:00');
    expect([found.verdict, stateOf(found, 'top-up')]).toEqual(['held', 'due']);
    const topped = [...low, entry({ id: 'x', on: '2026-05-11', at: '07:10', kind: 'done', tasks: ['top-up'] })];
    expect([run(tasks, topped, '2026-05-11 08:00').verdict, stateOf(run(tasks, topped, '2026-05-11 08:00'), 'top-up')]).toEqual([
      'held',
      'clear',
    ]);
    const again = [...topped, entry({ id: 'y', on: '2026-05-11', at: '07:20', kind: 'reading', readings: { oil: 0.9 } })];
    expect(run(tasks, again, '2026-05-11 08:00').verdict).toBe('ready');
  });

  test('at the low mark: fine (every reading falls in exactly one band)', () => {
    expect(run(tasks, history(['2026-05-11', reads({ oil: 'low' })]), '2026-05-11').verdict).toBe('ready');
  });

  test('overfilled: a caution, and a day to draw it off', () => {
    const over = history(['2026-05-11', reads({ oil: 'above-full' })]);
    expect(run(tasks, over, '2026-05-11').notices.map((notice) => notice.text)).toEqual(['Overfilled.']);
    expect(stateOf(run(tasks, over, '2026-05-12'), 'draw-off')).toBe('due');
    expect(stateOf(run(tasks, over, '2026-05-13'), 'draw-off')).toBe('overdue');
  });

  test('never read: cannot tell, unless the check is due anyway', () => {
    expect(run(tasks, [], '2026-05-11').verdict).toBe('cannot-tell');
    expect(run(tasks, [], '2026-05-11', { intent: { outing: {} } }).verdict).toBe('work-due-first');
  });
});

describe('defects', () => {
  const tasks = `task level "Check the level" while seep is open every 4 h of engine
task mend "Mend the fitting" mends seep when seep is open`;
  const open = (name: string, hours: number): readonly Entry[] =>
    history(
      ['2026-05-10', done('level', { engine: 100 })],
      ['2026-05-10', { kind: 'defect-opened', defect: 'seep', class: name }],
      ['2026-05-11', meters({ engine: hours })],
    );

  test('tighten while open, loosen when mended, hold by class', () => {
    expect(stateOf(run(tasks, open('wetness', 104), '2026-05-11'), 'level')).toBe('due');
    expect(stateOf(run(tasks, open('wetness', 103), '2026-05-11'), 'level')).toBe('clear');
    const mended = [...open('wetness', 104), entry({ id: 'x', on: '2026-05-11', kind: 'done', tasks: ['mend'] })];
    expect(stateOf(run(tasks, mended, '2026-05-11'), 'level')).toBe('clear');
    expect(run(tasks, open('drops-fall', 101), '2026-05-11').verdict).toBe('held');
    expect(run(tasks, open('drops-form', 101), '2026-05-11').verdict).not.toBe('held');
  });
});

describe('gates, attachments, age and idleness', () => {
  test('a gate that is false rests the task; one that is unknown leaves a reached task unknown', () => {
    const gated = 'task t "Task" when seep is open only if coolant above normal';
    const open = history(['2026-05-11', { kind: 'defect-opened', defect: 'seep' }]);
    expect(stateOf(run(gated, open, '2026-05-11'))).toBe('unknown');
    expect(
      stateOf(run(gated, [...open, entry({ id: 'x', on: '2026-05-11', kind: 'reading', readings: { coolant: 80 } })], '2026-05-11')),
    ).toBe('resting');
    expect(
      stateOf(run(gated, [...open, entry({ id: 'x', on: '2026-05-11', kind: 'reading', readings: { coolant: 99 } })], '2026-05-11')),
    ).toBe('due');
  });

  test('idle 1 month: 29 CFR 1910.179(j)(4) (from memory)', () => {
    const out = history(['2026-01-31', { kind: 'outing', hours: 1 }]);
    expect(stateOf(run(when('machine idle for 1 month'), out, '2026-02-27'))).toBe('clear');
    expect(stateOf(run(when('machine idle for 1 month'), out, '2026-02-28'))).toBe('due');
  });

  test('older than 5 years: from the day after the birthday', () => {
    const born = history(['2020-02-29', { kind: 'machine', inService: '2020-02-29' }]);
    expect(stateOf(run(when('machine older than 5 years'), born, '2025-02-28'))).toBe('clear');
    expect(stateOf(run(when('machine older than 5 years'), born, '2025-03-01'))).toBe('due');
    expect(stateOf(run(when('machine older than 5 years'), [], '2025-03-01'))).toBe('unknown');
  });

  test('a hard stop holds the machine once the limit is more than so late', () => {
    const task = 'task t "Task" every 100 h of engine allow 10 h late hold 20 h late "Do not run it on: the service is long overdue."';
    const at = (hours: number): string =>
      run(task, history(['2026-01-01', done('t', { engine: 0 })], ['2026-02-01', meters({ engine: hours })]), '2026-02-02').verdict;
    expect([at(99), at(110), at(120), at(120.1)]).toEqual(['ready', 'work-due-first', 'work-due-first', 'held']);
    expect(run(task, [], '2026-02-02').verdict).toBe('cannot-tell');
  });
});

describe('dependence', () => {
  const tasks = `task full "Full service" every 400 h of engine covers half-a met by half-a, half-b
task half-a "First half" every 200 h of engine
task half-b "Second half" every 200 h of engine restarts wash
task wash "Wash" every 50 h of engine`;

  test('doing the whole covers its part; the parts together meet the whole; restarting moves the clock', () => {
    const whole = run(
      'task full "Full" every 400 h of engine covers half-a\ntask half-a "Half" every 200 h of engine',
      history(['2026-01-01', done('full', { engine: 100 })], ['2026-02-01', meters({ engine: 150 })]),
      '2026-02-02',
    );
    expect(whole.tasks.map((task) => task.left)).toEqual([350 * 36000, 150 * 36000]);
    const split = tasks.replace('covers half-a ', '');
    const parts = run(
      split,
      history(
        ['2026-01-01', done('half-a', { engine: 100 })],
        ['2026-01-09', done('half-b', { engine: 120 })],
        ['2026-02-01', meters({ engine: 150 })],
      ),
      '2026-02-02',
    );
    expect(parts.tasks.map((task) => task.left)).toEqual([370 * 36000, 150 * 36000, 170 * 36000, 20 * 36000]);
  });
});
