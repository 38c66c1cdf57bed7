/** Events of a day that the schedule names (docs/meaning.md §3): to every machine on that day, to one that enters service later on the day of its start. */
import { describe, expect, test } from 'vitest';
import { ask } from '../support/ask.js';
import { done, type Happenings, history, meters, moment } from '../support/history.js';

const look = (timing: string, now: string, ...happened: Happenings) =>
  ask(`meter engine "Hours" counts h\nevent rule "The rule comes in" on 2026-03-20\ntask t "Task"\n  ${timing}`, history(...happened), now);
const stands = (timing: string, now: string, ...happened: Happenings): string => look(timing, now, ...happened).stands();
const entered = (day: string) => [day, { kind: 'machine', inService: day }] as const;

describe('at once', () => {
  test('nothing is asked before the day, and the record names it', () => {
    const { stands: stood, seen } = look('on rule', '2026-03-19');
    expect(stood()).toBe('clear');
    expect(seen('event')).toMatchObject({ entries: [], note: { is: 'not-happened', on: moment('2026-03-20').day } });
    // Nobody has said when attachments go on, or when it will be refuelled.
    expect(look('on refuelling', '2026-03-19').seen('refuelling').note).toEqual({ is: 'not-happened' });
  });

  test('due from the day on, which no entry tells; on the day of its start where the machine entered service later, which one does', () => {
    const told = (...happened: Happenings) => {
      const { stands: stood, seen } = look('on rule', '2026-05-04', ...happened);
      return [stood(), seen('event').entries];
    };
    expect(told()).toEqual(['due 2026-03-20', []]);
    expect(told(entered('2026-01-01'))).toEqual(['due 2026-03-20', []]);
    expect(told(entered('2026-03-20'))).toEqual(['due 2026-03-20', []]);
    expect(told(entered('2026-03-21'))).toEqual(['due 2026-03-21', ['e1']]);
  });

  test('not yet of a machine that is to enter service later: the entry that says so puts it off, and the record names the day of its start', () => {
    const later = ['2026-03-01', { kind: 'machine', inService: '2026-03-25' }] as const;
    const note = { is: 'not-happened', on: moment('2026-03-25').day };
    const asked = look('on rule', '2026-03-24', later);
    expect(asked.stands()).toBe('clear');
    expect(asked.seen('event')).toMatchObject({ entries: ['e1'], note });
    expect(look('first at 5 days after rule', '2026-03-24', later).seen('stages')).toMatchObject({ entries: ['e1'], note });
    expect(look('when rule ever happened', '2026-03-24', later).seen('recent')).toMatchObject({ truth: 'false', entries: ['e1'], note });
    expect(stands('on rule', '2026-03-25', later)).toBe('due 2026-03-25');
  });
});

test('within so many hours: from what the meter showed on the day, or on that of its start', () => {
  const within = (...happened: Happenings): string => stands('within 50 h of engine after rule', '2026-05-04', ...happened);
  expect(within(['2026-03-01', meters({ engine: 100 })], ['2026-05-01', meters({ engine: 120 })])).toBe('clear 150 h');
  expect(within(['2026-05-01', meters({ engine: 120 })])).toBe('unknown');
  expect(within(['2026-04-01', { kind: 'machine', inService: '2026-04-01', meters: { engine: 5 } }])).toBe('clear 55 h');
  // Where nobody noted what it showed at its start, that was 0.
  expect(within(entered('2026-04-01'), ['2026-05-01', meters({ engine: 20 })])).toBe('clear 50 h');
});

describe('as a condition', () => {
  test('it happened so long ago, once', () => {
    const lately = (now: string, ...happened: Happenings): string => stands('when rule happened within 14 days', now, ...happened);
    expect(lately('2026-03-19')).toBe('clear');
    expect(lately('2026-03-20')).toBe('due 2026-03-20');
    expect(lately('2026-04-03')).toBe('due 2026-03-20');
    expect(lately('2026-04-04')).toBe('clear');
    expect(lately('2026-04-04', entered('2026-04-01'))).toBe('due 2026-04-01');
    expect(lately('2026-04-03', ['2026-03-20', done('t')])).toBe('clear');
    expect(stands('when rule happened 2 times within 14 days', '2026-03-25')).toBe('clear');
  });

  test('ever', () => {
    const gated = 'every 5 days\n  only if rule ever happened';
    expect(stands(gated, '2026-03-19', entered('2026-01-01'))).toBe('resting');
    expect(stands(gated, '2026-03-20', entered('2026-03-18'))).toBe('clear 2026-03-23');
  });
});
