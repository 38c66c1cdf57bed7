/** docs/meaning.md §5: what falls due because of work, and what a day without work asks for (nothing). */
import { describe, expect, test } from 'vitest';
import { assess } from '../../src/assess/assess.js';
import type { AssessOptions } from '../../src/assess/assessment.js';
import type { Entry } from '../../src/history/entry.js';
import { compileText } from '../support/compile-text.js';
import { done, entry, history, meters, moment } from '../support/history.js';

const machine = `meter engine "Hour meter" counts h
duty tall "Tall growth"
attachment mower "Mower"
event refit "A wheel was refitted"
`;
const work: AssessOptions = { intent: { outing: { hours: 2 } } };

function state(task: string, entries: readonly Entry[], now: string, options: AssessOptions = {}): string | undefined {
  return assess(compileText(`${machine}task t "Task"\n${task}`), entries, moment(now), options).tasks[0]?.state;
}

describe("before each day's work (29 CFR 1910.178(q)(7): at least daily; an unused day asks for nothing)", () => {
  const task = "before each day's work";
  const yesterday = history(['2026-05-10', done('t')], ['2026-05-10', { kind: 'outing', hours: 3 }]);

  test.each([
    ['nothing is intended', {}, 'clear'],
    ['work is intended', work, 'due'],
  ] as const)('when %s', (_, options, expected) => expect(state(task, yesterday, '2026-05-11', options)).toBe(expected));

  test('a check on the same day as an earlier outing belongs to that outing', () => {
    expect(state(task, [...yesterday, entry({ id: 'x', on: '2026-05-11', kind: 'done', tasks: ['t'] })], '2026-05-11', work)).toBe('clear');
  });

  test('a second outing on the same day does not ask again', () => {
    const entries = history(['2026-05-11 07:50', done('t')], ['2026-05-11 08:00', { kind: 'outing', until: '10:00' }]);
    expect(state(task, entries, '2026-05-11 13:00', work)).toBe('clear');
    expect(state('before each outing', entries, '2026-05-11 13:00', work)).toBe('due');
  });

  test('work that has begun without the check leaves it due', () => {
    expect(state(task, history(['2026-05-11 08:00', { kind: 'outing' }]), '2026-05-11 09:00')).toBe('due');
  });
});

describe('each shift', () => {
  const shifts = history(['2026-05-11 05:50', done('t')], ['2026-05-11 06:00', { kind: 'outing', until: '09:00', shift: 'early' }]);

  test('outings with one shift name on a day are one', () => {
    expect(state('before each shift', shifts, '2026-05-11 10:00', { intent: { outing: { shift: 'early' } } })).toBe('clear');
    expect(state('before each shift', shifts, '2026-05-11 14:00', { intent: { outing: { shift: 'late' } } })).toBe('due');
  });

  test('after each shift: due once it is over, until done', () => {
    expect(state('after each shift', shifts, '2026-05-11 10:00')).toBe('due');
    expect(state('after each shift', shifts, '2026-05-11 10:00', { intent: { outing: { shift: 'early' } } })).toBe('clear');
    expect(
      state(
        'after each shift',
        [...shifts, entry({ id: 'x', on: '2026-05-11', at: '10:05', kind: 'done', tasks: ['t'] })],
        '2026-05-11 11:00',
      ),
    ).toBe('clear');
  });
});

describe('after work and storage', () => {
  const out = history(['2026-05-11 08:00', { kind: 'outing', until: '10:00' }]);

  test('after work: due from the end of the outing, until done since', () => {
    expect(state('after work', out, '2026-05-11 09:00')).toBe('clear');
    expect(state('after work', out, '2026-05-11 10:00')).toBe('due');
    expect(state('after work', [...out, entry({ id: 'x', on: '2026-05-11', kind: 'done', tasks: ['t'] })], '2026-05-12')).toBe('clear');
  });

  test('before and after storage', () => {
    const stored = [...out, entry({ id: 's', on: '2026-11-01', kind: 'storage', phase: 'begins' })];
    expect(state('before storage', out, '2026-10-30')).toBe('clear');
    expect(state('before storage', out, '2026-10-30', { intent: { storage: true } })).toBe('due');
    expect(state('before storage', stored, '2026-11-02')).toBe('due');
    expect(state('after storage', stored, '2026-11-02')).toBe('clear');
    expect(state('after storage', [...stored, entry({ id: 'u', on: '2027-03-01', kind: 'storage', phase: 'ends' })], '2027-03-01')).toBe(
      'due',
    );
  });
});

describe('happenings', () => {
  test('on refuelling, after attaching, on an event: due until done since', () => {
    const entries = history(
      ['2026-05-01', { kind: 'refuelled' }],
      ['2026-05-02', { kind: 'attached', attachment: 'mower' }],
      ['2026-05-03', { kind: 'event', event: 'refit' }],
    );
    for (const task of ['on refuelling', 'after attaching mower', 'on refit']) {
      expect(state(task, entries, '2026-05-04')).toBe('due');
      expect(state(task, [...entries, entry({ id: 'x', on: '2026-05-04', kind: 'done', tasks: ['t'] })], '2026-05-04')).toBe('clear');
      expect(state(task, [], '2026-05-04')).toBe('clear');
    }
  });

  test('within 10 h after an event', () => {
    const after = (value: number): readonly Entry[] =>
      history(['2026-05-03', { kind: 'event', event: 'refit', meters: { engine: 100 } }], ['2026-05-09', meters({ engine: value })]);
    expect(state('within 10 h of engine after refit', after(108), '2026-05-09')).toBe('clear');
    expect(state('within 10 h of engine after refit', after(110), '2026-05-09')).toBe('due');
    expect(state('within 10 h of engine after refit', after(111), '2026-05-09')).toBe('overdue');
  });
});

describe('time at work', () => {
  const task = 'every 30 min of work in tall';
  const outing = (until: string): Entry => ({ id: 'o', kind: 'outing', on: '2026-05-11', at: '08:00', until, duties: [{ duty: 'tall' }] });

  test('adds up over outings in the duty since it was last done', () => {
    expect(state(task, [...history(['2026-05-11 08:00', done('t')]), outing('08:29')], '2026-05-11 09:00')).toBe('coming-up');
    expect(state(task, [...history(['2026-05-11 08:00', done('t')]), outing('08:30')], '2026-05-11 09:00')).toBe('due');
    expect(state(task, [...history(['2026-05-11 08:20', done('t')]), outing('08:45')], '2026-05-11 09:00')).toBe('clear');
  });
});
