/** The worked values of docs/meaning.md §4 on intervals, counting, first services, marks and duty. */
import { describe, expect, test } from 'vitest';
import { assess } from '../../src/assess/assess.js';
import type { Entry } from '../../src/history/entry.js';
import { formatDate } from '../../src/values/civil.js';
import { compileText } from '../support/compile-text.js';
import { done, history, meters, moment } from '../support/history.js';

const engine = 'meter engine "Hour meter" counts h\n';

/** State and due point of task `t`, as a short text. */
function look(task: string, entries: readonly Entry[], now: string, more = ''): string {
  const graph = compileText(`${engine}${more}\ntask t "Task"\n${task}`);
  const found = assess(graph, entries, moment(now)).tasks.find((each) => each.task === 't');
  const due = found?.due;
  const point =
    due == null ? '' : due.on === 'meter' ? ` ${due.ticks / 36000} h` : due.on === 'calendar' ? ` ${formatDate(due.day)}` : ` ${due.on}`;
  return `${found?.state}${point}`;
}

describe('a meter limit', () => {
  const entries = (value: number): readonly Entry[] =>
    history(['2026-03-02', done('t', { engine: 1200 })], ['2026-05-11', meters({ engine: value })]);

  test.each([
    [1289.9, 'clear 1300 h'],
    [1290, 'coming-up 1300 h'],
    [1299.9, 'coming-up 1300 h'],
    [1300, 'due 1300 h'],
    [1300.1, 'overdue 1300 h'],
  ])('with nothing allowed, at %f h: %s', (value, expected) => {
    expect(look('every 100 h of engine', entries(value), '2026-05-12')).toBe(expected);
  });

  test.each([
    [1300, 'due 1300 h'],
    [1310, 'due 1300 h'],
    [1310.1, 'overdue 1300 h'],
  ])('with 10 h allowed late, at %f h: %s', (value, expected) => {
    expect(look('every 100 h of engine allow 10 h late', entries(value), '2026-05-12')).toBe(expected);
  });

  test('`more than` is reached only beyond the due point (14 CFR 91.207(c), from memory)', () => {
    const now = (value: number): string =>
      look(
        'every more than 1 h of engine',
        history(['2026-01-01', done('t', { engine: 0 })], ['2026-01-02', meters({ engine: value })]),
        '2026-01-03',
      );
    expect(now(1)).toBe('coming-up 1 h');
    expect(now(1.1)).toBe('overdue 1 h');
  });
});

describe('a calendar limit', () => {
  // TC39 Temporal PlainDate.add, overflow "constrain"
  test.each([
    ['2025-01-31', '1 month', '2025-02-28'],
    ['2024-01-31', '1 month', '2024-02-29'],
    ['2025-01-31', '2 months', '2025-03-31'],
    ['2024-02-29', '1 year', '2025-02-28'],
    ['2024-02-29', '4 years', '2028-02-29'],
    // FAA use of "calendar month", 14 CFR 91.409(a) and 91.411
    ['2007-06-06', '12 calendar months', '2008-06-30'],
    ['2020-07-22', '24 calendar months', '2022-07-31'],
    // LOLER regulation 9
    ['2025-08-31', '6 months', '2026-02-28'],
  ])('done %s, every %s: due %s, overdue on the day after', (on, span, due) => {
    const entries = history([on, done('t')]);
    const dueDay = moment(due);
    expect(look(`every ${span}`, entries, due)).toBe(`due ${due}`);
    expect(look(`every ${span}`, entries, formatDate((dueDay.day + 1) as typeof dueDay.day))).toBe(`overdue ${due}`);
    expect(look(`every ${span}`, entries, formatDate((dueDay.day - 1) as typeof dueDay.day))).toBe(`coming-up ${due}`);
  });

  test('semiannual ± 10 % is ± 18 days: due 2006-04-17, window 03-30 to 05-05 (US Army DA PAM 750-8)', () => {
    const task = 'every 180 days allow 10 % early, 10 % late count from due within the allowance';
    const dueOn = history(['2005-10-19', done('t')]);
    expect(look(task, dueOn, '2006-05-05')).toBe('due 2006-04-17');
    expect(look(task, dueOn, '2006-05-06')).toBe('overdue 2006-04-17');
    const next = (on: string): string =>
      look(task, [...dueOn, ...history(['2005-01-01', meters({ engine: 1 })], [on, done('t')]).slice(1)], '2006-05-20');
    expect(next('2006-03-30')).toBe('clear 2006-10-14');
    expect(next('2006-05-05')).toBe('clear 2006-10-14');
    expect(next('2006-03-29')).toBe('clear 2006-09-25');
    expect(next('2006-05-06')).toBe('clear 2006-11-02');
  });
});

describe('counting', () => {
  const late = history(
    ['2026-01-01', done('t', { engine: 100 })],
    ['2026-02-01', done('t', { engine: 207 })],
    ['2026-02-02', meters({ engine: 207 })],
  );
  const early = history(
    ['2026-01-01', done('t', { engine: 100 })],
    ['2026-02-01', done('t', { engine: 190 })],
    ['2026-02-02', meters({ engine: 190 })],
  );

  test('from due if late: what is overrun is taken from the next interval, early work re-anchors (14 CFR 91.409(b))', () => {
    const task = 'every 100 h of engine allow 10 h late count from due if late';
    expect(look(task, late, '2026-02-03')).toBe('clear 300 h');
    expect(look(task, early, '2026-02-03')).toBe('clear 290 h');
  });

  test('from due if late, of work time: with the first doing on record it begins anew', () => {
    const work = history(
      ['2026-01-01', { kind: 'outing', hours: 4 }],
      ['2026-01-02', done('t')],
      ['2026-01-03', { kind: 'outing', hours: 3 }],
    );
    const found = assess(compileText('task t "Task" every 10 h of work count from due if late'), work, moment('2026-01-04'));
    expect(found.tasks[0]).toMatchObject({ state: 'clear', left: 7 * 36_000 });
  });

  test('from doing', () => {
    expect(look('every 100 h of engine', late, '2026-02-03')).toBe('clear 307 h');
  });

  test('calendar bases stay anchored at the day of the month', () => {
    const task = 'every 1 month allow 5 days early, 5 days late count from due within the allowance';
    const entries = history(['2025-01-31', done('t')], ['2025-02-27', done('t')], ['2025-04-02', done('t')]);
    expect(look(task, entries, '2025-04-03')).toBe('clear 2025-04-30');
  });
});

describe('whichever', () => {
  const base = history(['2026-03-02', done('t', { engine: 1200 })], ['2026-05-12', meters({ engine: 1300 })]);

  test('first: reached when any is; last: when all are', () => {
    expect(look('every 100 h of engine or 12 months, whichever first', base, '2026-05-12')).toBe('due 1300 h');
    expect(look('every 100 h of engine or 12 months, whichever last', base, '2026-05-12')).toBe('clear 2027-03-02');
  });

  test('of several reached, the one reached earliest governs', () => {
    const task = 'every 100 h of engine or 2 months, whichever first allow 50 h late, 30 days late';
    expect(look(task, base, '2026-05-12')).toBe('due 2026-05-02');
  });

  test('of several not reached, the one forecast to be reached earliest governs, where a rate is known', () => {
    const graph = compileText(`${engine}task t "Task" every 100 h of engine or 12 months, whichever first`);
    const entries = history(['2026-03-02', done('t', { engine: 1200 })], ['2026-03-12', meters({ engine: 1201 })]);
    const slow = assess(graph, entries, moment('2026-09-30'), { rates: new Map([['engine', 36000]]) });
    expect(slow.tasks[0]?.due?.on).toBe('meter');
    const without = assess(graph, entries, moment('2026-09-30'));
    expect(without.tasks[0]?.due?.on).toBe('calendar');
  });
});

describe('first and staged', () => {
  const born = ['2026-01-01', { kind: 'machine', inService: '2026-01-01' }] as const;

  test('first replaces the interval until done once', () => {
    const task = 'first at 50 h of engine every 100 h of engine';
    expect(look(task, history([...born], ['2026-02-01', meters({ engine: 49 })]), '2026-02-01')).toBe('coming-up 50 h');
    expect(look(task, history([...born], ['2026-02-01', meters({ engine: 50 })]), '2026-02-01')).toBe('due 50 h');
    expect(look(task, history([...born], ['2026-02-01', done('t', { engine: 53 })]), '2026-02-01')).toBe('clear 153 h');
  });

  test('a machine taken over with no record is not clear', () => {
    expect(look('first at 50 h of engine every 100 h of engine', history(['2026-02-01', meters({ engine: 900 })]), '2026-02-01')).toBe(
      'unrecorded',
    );
    expect(look('every 100 h of engine', history(['2026-02-01', meters({ engine: 900 })]), '2026-02-01')).toBe('unrecorded');
  });

  test('a statement counts as a doing at what it states', () => {
    const stated = ['2026-02-01', { kind: 'stated', task: 't', doneBy: '2025-01-01', doneAt: { engine: 1200 } }] as const;
    expect(
      look(
        'every 100 h of engine or 12 months, whichever first',
        history([...stated], ['2026-02-01', meters({ engine: 1250 })]),
        '2026-02-01',
      ),
    ).toBe('overdue 2026-01-01');
  });

  test('a series after an event; missed stages do not pile up', () => {
    const task = 'at 1 h, 10 h, 50 h of engine after refit every 250 h of engine';
    const refit = (value: number, ...doings: number[]): readonly Entry[] =>
      history(
        [...born],
        ['2026-01-02', done('t', { engine: 0 })],
        ['2026-02-01', { kind: 'event', event: 'refit', meters: { engine: 100 } }],
        ...doings.map((at, i) => [`2026-02-0${i + 2}`, done('t', { engine: at })] as const),
        ['2026-02-09', meters({ engine: value })],
      );
    const event = 'event refit "A wheel was refitted"';
    expect(look(task, refit(100.5), '2026-02-10', event)).toBe('clear 101 h');
    expect(look(task, refit(101), '2026-02-10', event)).toBe('due 101 h');
    expect(look(task, refit(112, 101), '2026-02-10', event)).toBe('overdue 110 h');
    expect(look(task, refit(160), '2026-02-10', event)).toBe('overdue 150 h');
  });
});

describe('on marks', () => {
  test('every multiple of 250 h; early work inside the window meets the mark; missed marks do not pile up', () => {
    const task = 'every multiple of 250 h of engine allow 10 h early, 10 h late';
    const at = (doing: number, now: number): string =>
      look(task, history(['2026-01-01', done('t', { engine: doing })], ['2026-06-01', meters({ engine: now })]), '2026-06-01');
    expect(at(239, 250)).toBe('due 250 h');
    expect(at(240, 250)).toBe('clear 500 h');
    expect(at(240, 500)).toBe('due 500 h');
    expect(at(240, 755)).toBe('due 750 h');
  });

  test('each year on 1 November, and within April', () => {
    expect(look('every year on 1 November', history(['2025-11-03', done('t')]), '2026-10-31')).toBe('coming-up 2026-11-01');
    expect(look('every year on 1 November', history(['2025-11-03', done('t')]), '2026-11-01')).toBe('due 2026-11-01');
    expect(look('every year in April', history(['2025-04-30', done('t')]), '2026-04-30')).toBe('due 2026-04-01');
    expect(look('every year in April', history(['2025-04-30', done('t')]), '2026-05-01')).toBe('overdue 2026-04-01');
    expect(look('every year in April', history(['2026-04-02', done('t')]), '2026-05-01')).toBe('clear 2027-04-01');
  });
});

describe('duty', () => {
  const schedule = 'every 100 h of engine in dusty every 50 h of engine';
  const dusty = 'duty dusty "Dry, dusty ground"';
  const entries = (value: number): readonly Entry[] =>
    history(
      ['2026-01-01', done('t', { engine: 0 })],
      ['2026-02-01', { kind: 'outing', hours: 20, duties: [{ duty: 'dusty' }] }],
      ['2026-02-02', { kind: 'outing', hours: 10, duties: [{ duty: 'dusty' }] }],
      ['2026-06-01', meters({ engine: value })],
    );

  test('40 h ordinary at 100 h and 30 h dusty at 50 h: 0.4 + 0.6 = 1, due (Palmgren–Miner)', () => {
    expect(look(schedule, entries(70), '2026-06-02', dusty)).toBe('due 70 h');
    expect(look(schedule, entries(69.9), '2026-06-02', dusty)).toBe('coming-up 70 h');
    expect(look(schedule, entries(70.1), '2026-06-02', dusty)).toBe('overdue 70 h');
  });
});

test('counting from due if late, what is done on the very due day sets a new beat', () => {
  const monthly = (second: string): string =>
    look('every 1 month\n  count from due if late', history(['2026-01-31', done('t')], [second, done('t')]), '2026-03-10');
  expect(monthly('2026-02-28')).toBe('clear 2026-03-28');
  expect(monthly('2026-03-01')).toBe('clear 2026-03-31');
});

test('hours in two duties at once count in the strictest, and only those after the doing that cuts the outing in two', () => {
  const duties = 'duty dusty "Dusty"\nduty steep "Steep"';
  const task = 'every 40 h of engine\n  in dusty every 10 h of engine\n  in steep every 20 h of engine';
  const both = [{ duty: 'dusty' }, { duty: 'steep' }];
  const entries = history(
    ['2026-05-01 08:00', { kind: 'outing', until: '10:00', duties: both }],
    ['2026-05-01 09:00', done('t', { engine: 100 })],
    ['2026-05-02', meters({ engine: 102 })],
  );
  // An hour at a tenth and an hour at a fortieth: seven eighths are left, of 40 h.
  expect(look(task, entries, '2026-05-03', duties)).toBe('clear 137 h');
});
