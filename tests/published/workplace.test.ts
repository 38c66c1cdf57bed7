import { describe, expect, it } from 'vitest';
import { addDays } from '../../src/values/calendar.js';
import { dayNumber, formatDate } from '../../src/values/civil.js';
import { defect, done, event, gauge, outing, publishedRule, reading, service } from './published-rule.js';

const soon = { outing: { hours: 8 } };

describe('29 CFR 1910.178(q)(7): each day of use; round the clock, after each shift', () => {
  const rule = publishedRule('29-cfr-1910-178-q-7');

  it('asks on a day of use and not on another', () => {
    const told = [done('2026-03-02 07:00', 'daily-examination'), outing('2026-03-02 07:10', '15:00')];
    expect(rule.says(told, '2026-03-02 15:30', 'daily-examination')).toBe('clear');
    expect(rule.says(told, '2026-03-03 07:00', 'daily-examination')).toBe('clear');
    expect(rule.says(told, '2026-03-03 07:00', 'daily-examination', soon)).toBe('due 2026-03-03');
  });

  it('asks after each shift where it is used round the clock', () => {
    const night = [outing('2026-03-02 06:00', '14:00', 'round-the-clock')];
    expect(rule.says(night, '2026-03-02 14:10', 'shift-examination')).toBe('due 2026-03-02');
    expect(rule.says([...night, done('2026-03-02 14:20', 'shift-examination')], '2026-03-02 14:30', 'shift-examination')).toMatch(
      /^(clear|resting)$/,
    );
  });
});

describe('29 CFR 1910.179(j)(4): idle cranes', () => {
  const rule = publishedRule('29-cfr-1910-179-j');
  const told = [done('2026-01-05', 'complete-inspection'), outing('2026-01-09 08:00', '10:00')];

  // (j)(4)(i): one month or more, under six: frequent. (j)(4)(ii): over six months: complete.
  it.each([
    ['2026-02-08', 'resting', 'resting'],
    ['2026-02-09', 'due', 'resting'],
    ['2026-07-08', 'due', 'resting'],
    ['2026-07-09', 'due', 'due'],
  ])('on %s: frequent %s, complete %s', (now, frequent, complete) => {
    expect(rule.says(told, now, 'idle-inspection', soon).split(' ')[0]).toBe(frequent);
    expect(rule.says(told, now, 'long-idle-inspection', soon).split(' ')[0]).toBe(complete);
  });

  it('takes the complete inspection for the frequent one', () => {
    const seen = [...told, done('2026-08-01', 'long-idle-inspection')];
    expect(rule.says(seen, '2026-08-02', 'idle-inspection', soon)).toBe('clear');
    expect(rule.says(seen, '2026-08-02', 'frequent-inspection', soon)).toBe('clear 2026-09-01');
  });
});

describe('29 CFR 1926.1412 (from memory): shift, month, year, three months idle', () => {
  const rule = publishedRule('29-cfr-1926-1412');
  const told = [done('2026-01-31 06:00', 'annual-inspection'), outing('2026-01-31 07:00', '15:00')];

  it.each([
    ['monthly-inspection', '2026-02-27 12:00', 'coming-up 2026-02-28'],
    ['monthly-inspection', '2026-03-01 12:00', 'overdue 2026-02-28'],
    ['annual-inspection', '2027-01-31 12:00', 'due 2027-01-31'],
    ['shift-inspection', '2026-02-02 06:00', 'due 2026-02-02'],
    ['idle-inspection', '2026-04-29 06:00', 'resting'],
    ['idle-inspection', '2026-04-30 06:00', 'due 2026-04-30'],
  ])('%s on %s: %s', (task, now, state) => {
    expect(rule.says(told, now, task, soon)).toBe(state);
  });
});

describe('29 CFR 1910.157(e): month, year, six years that a recharge starts again', () => {
  const rule = publishedRule('29-cfr-1910-157-e');
  const told = [done('2020-03-31', ['six-year-maintenance', 'hydrostatic-test'])];

  it.each([
    ['six-year-maintenance', '2026-03-31', 'due 2026-03-31'],
    ['hydrostatic-test', '2032-03-31', 'due 2032-03-31'],
    ['annual-check', '2021-03-31', 'due 2021-03-31'],
    ['monthly-look', '2020-04-30', 'due 2020-04-30'],
  ])('%s on %s: %s', (task, now, state) => {
    expect(rule.says(told, now, task)).toBe(state);
  });

  it('counts the six years from the recharge', () => {
    const recharged = [...told, done('2023-05-11', 'recharge')];
    expect(rule.says(recharged, '2026-03-31', 'six-year-maintenance')).toBe('clear 2029-05-11');
  });
});

describe('29 CFR 1910.184 (from memory): at most twelve months', () => {
  const rule = publishedRule('29-cfr-1910-184');
  it('from a leap day to the last of February', () => {
    expect(rule.says([done('2024-02-29', 'periodic-inspection')], '2025-03-01', 'periodic-inspection')).toBe('overdue 2025-02-28');
  });
});

describe('LOLER 1998, regulation 9(3)(a)', () => {
  const rule = publishedRule('loler-regulation-9');
  const told = [done('2025-08-31', ['examination-persons', 'examination-accessories', 'examination-other'])];
  const persons = { outing: { duties: ['persons'] } };

  // 2025-08-31 + 6 months = 2026-02-28 (TC39 Temporal PlainDate.add, overflow "constrain").
  it.each([
    ['examination-accessories', '2026-02-28', 'due 2026-02-28'],
    ['examination-accessories', '2026-03-01', 'overdue 2026-02-28'],
    ['examination-persons', '2026-03-01', 'overdue 2026-02-28'],
    ['examination-other', '2026-08-31', 'due 2026-08-31'],
  ])('%s on %s: %s', (task, now, state) => {
    expect(rule.says(told, now, task, persons)).toBe(state);
  });

  it('asks again after exceptional circumstances', () => {
    const hit = [...told, event('2025-10-01', 'exceptional')];
    expect(rule.says(hit, '2025-10-02', 'examination-other')).toMatch(/^due/);
  });
});

describe('49 CFR 396.17(c): at least once during the preceding 12 months', () => {
  const rule = publishedRule('49-cfr-396-17');
  const told = [done('2025-03-10', 'periodic-inspection')];
  it.each([
    ['2026-03-10', 'due 2026-03-10', 'work-due-first'],
    ['2026-03-11', 'overdue 2026-03-10', 'held'],
  ])('on %s: %s, machine %s', (now, state, verdict) => {
    expect(rule.says(told, now, 'periodic-inspection')).toBe(state);
    expect(rule.verdict(told, now)).toBe(verdict);
  });
});

describe('30 CFR 56.14100 and 75.1914: mines', () => {
  it('56.14100: a hazardous defect takes it out of service until corrected', () => {
    const rule = publishedRule('30-cfr-56-14100');
    const found = [done('2026-03-02 06:00', 'shift-inspection'), defect('2026-03-02 07:00', 'safety-defect', 'hazardous')];
    expect(rule.verdict([...found], '2026-03-02 08:00')).toBe('held');
    expect(rule.verdict([...found, done('2026-03-02 12:00', 'correct-defect')], '2026-03-02 13:00')).toBe('ready');
  });

  it('75.1914(d): the intake filter by its indicator alone', () => {
    const rule = publishedRule('30-cfr-75-1914');
    const drop = (value: number) => [gauge('2026-03-02', { 'intake-drop': value })];
    expect(rule.says(drop(6.2), '2026-03-03', 'intake-filter')).toBe('clear');
    expect(rule.says(drop(6.25), '2026-03-03', 'intake-filter')).toBe('due 2026-03-02');
    expect(rule.says([], '2026-03-03', 'intake-filter')).toBe('unknown');
  });

  it('75.1914(f), (g): weekly', () => {
    const rule = publishedRule('30-cfr-75-1914');
    expect(rule.says([done('2026-03-02', ['weekly-test', 'emissions-test'])], '2026-03-09', 'weekly-test')).toBe('due 2026-03-09');
    expect(rule.says([done('2026-03-02', ['weekly-test', 'emissions-test'])], '2026-03-10', 'emissions-test')).toBe('overdue 2026-03-09');
  });
});

describe('30 CFR 75.360(a)(1), 57.22228(a): within 3 hours preceding the beginning of the shift', () => {
  const rule = publishedRule('30-cfr-75-360');
  const afternoon = { outing: { start: 14 * 60, hours: 8, shift: 'afternoon' } };

  it.each([
    ['2026-03-02 10:59', '2026-03-02 11:30', 'due 2026-03-02'],
    ['2026-03-02 11:00', '2026-03-02 11:30', 'clear'],
    ['2026-03-02 13:59', '2026-03-02 14:00', 'clear'],
    ['2026-03-02 10:00', '2026-03-02 10:30', 'coming-up 2026-03-02'],
  ])('examined at %s, asked at %s before the shift from 14:00 to 22:00: %s', (examined, now, state) => {
    expect(rule.says([done(examined, 'preshift-examination')], now, 'preshift-examination', afternoon)).toBe(state);
  });

  it('each shift wants its own, made while the one before may still be at work', () => {
    const day = [done('2026-03-02 04:00', 'preshift-examination'), outing('2026-03-02 06:00', '14:00')];
    const next = [...day, outing('2026-03-02 14:00', '22:00')];
    expect(rule.says(day, '2026-03-02 07:00', 'preshift-examination')).toBe('clear');
    expect(rule.says(next, '2026-03-02 15:00', 'preshift-examination')).toBe('due 2026-03-02');
    expect(rule.says([...next, done('2026-03-02 12:00', 'preshift-examination')], '2026-03-02 15:00', 'preshift-examination')).toBe(
      'clear',
    );
  });
});

describe('30 CFR 77.1433: every fourteen days, every six months', () => {
  const rule = publishedRule('30-cfr-77-1433');
  const told = [done('2026-03-02', ['examination', 'measurement'])];
  const persons = { outing: { hours: 1, duties: ['persons'] } };

  it.each([
    ['examination', '2026-03-16', 'due 2026-03-16'],
    ['examination', '2026-03-17', 'overdue 2026-03-16'],
    ['before-persons', '2026-03-16', 'resting'],
    ['before-persons', '2026-03-17', 'due 2026-03-17'],
    ['measurement', '2026-09-02', 'due 2026-09-02'],
    ['measurement', '2026-09-03', 'overdue 2026-09-02'],
  ])('%s on %s: %s', (task, now, state) => {
    expect(rule.says(told, now, task, persons)).toBe(state);
  });
});

describe('US Army DA PAM 750-8: ten percent before and after', () => {
  const rule = publishedRule('da-pam-750-8');
  const base = (on: string) => [done(on, 'biennial-service', { odometer: 10000 })];
  const second = (on: string, miles = 11000) => done(on, 'semiannual-service', { odometer: miles });

  // Semiannual = 180 d, so 18 d: due 2006-04-17, window 2006-03-30 to 2006-05-05 (from memory).
  it.each([
    ['2006-03-29', '2006-09-29'],
    ['2006-03-30', '2006-10-17'],
    ['2006-04-17', '2006-10-17'],
    ['2006-05-05', '2006-10-17'],
    ['2006-05-06', '2006-11-06'],
  ])('done on %s, due again on %s', (on, due) => {
    expect(rule.limits([...base('2005-10-17'), second(on)], on, 'semiannual-service')).toContain(due);
  });

  // The same paragraph for miles: 6000, so 600 before and after 16000.
  it.each([
    [15399, '21399'],
    [15400, '22000'],
    [16600, '22000'],
    [16601, '22601'],
  ])('done at %d mi, due again at %s', (miles, due) => {
    expect(rule.limits([...base('2005-10-17'), second('2006-04-17', miles)], '2006-04-17', 'semiannual-service')).toContain(due);
  });

  // PS Magazine 569 (April 2000), p. 32: annual = 360 d, so 36 d; due 2000-05-15, "as late as 20 Jun". (Its "as early as
  // 10 Apr" is a day short of 36: 15 May less 36 days is 9 April.)
  it.each([
    ['2000-06-20', 'due 2000-05-15'],
    ['2000-06-21', 'overdue 2000-05-15'],
  ])('annual, on %s: %s', (now, state) => {
    expect(rule.says([...base('1999-05-15'), second('1999-11-15')], now, 'annual-service')).toBe(state);
  });

  it('holds beyond the variance ("administratively NMC", PS Magazine, December 2019)', () => {
    expect(rule.verdict(base('2005-10-17'), '2006-05-05')).toBe('work-due-first');
    expect(rule.verdict(base('2005-10-17'), '2006-05-06')).toBe('held');
  });

  it('judges the miles by their own window: 6000 mi, so 600', () => {
    const driven = (miles: number) => [...base('2005-10-17'), reading('2006-01-02', { odometer: miles })];
    expect(rule.says(driven(16000), '2006-01-02', 'semiannual-service')).toBe('due 16000');
    expect(rule.says(driven(16600), '2006-01-02', 'semiannual-service')).toBe('due 16000');
    expect(rule.says(driven(16601), '2006-01-02', 'semiannual-service')).toBe('overdue 16000');
  });
});

describe('US Army operator manuals: leak classes and intervals', () => {
  const rule = publishedRule('army-pmcs');
  const told = [
    done('2026-03-02 06:00', ['before-checks', 'oil-level', 'weekly-checks'], { engine: 100 }),
    gauge('2026-03-02 06:00', { crankcase: 0.7 }),
  ];
  const leak = (name: string) => [...told, defect('2026-03-02 07:00', 'leak', name)];

  // TM 5-4310-382-13, 2-3c: operation is allowable with Class I or II; TM 5-3895-360-13, Table 3-1: not ready if any Class III.
  it.each([
    ['class-i', 'ready'],
    ['class-ii', 'ready'],
    ['class-iii', 'held'],
  ])('%s: %s', (name, verdict) => {
    expect(rule.verdict(leak(name), '2026-03-02 08:00')).toBe(verdict);
  });

  it('weekly, and again when it has stood for a week', () => {
    expect(rule.says(told, '2026-03-08', 'weekly-checks')).toMatch(/^(clear|coming-up) 2026-03-09$/);
    expect(rule.says(told, '2026-03-09', 'weekly-checks')).toBe('due 2026-03-09');
  });
});

describe('29 CFR 1910.66(g): twelve months, thirty days, each day of use', () => {
  const rule = publishedRule('29-cfr-1910-66-g');
  const told = [done('2026-01-05 06:00', ['yearly-test', 'hoist-test']), outing('2026-01-05 07:00', '13:00')];

  // OSHA's letter of 1975-08-25: nothing while it is stored between cycles, but before the start of the next.
  it.each([
    ['maintenance-inspection', '2026-02-04 06:00', soon, /^resting/],
    ['maintenance-inspection', '2026-02-05 06:00', soon, /^due/],
    ['maintenance-inspection', '2026-05-04 06:00', {}, /^clear/],
    ['hoist-test', '2026-02-04 06:00', soon, /^due/],
    ['yearly-test', '2027-01-05 06:00', {}, /^due 2027-01-05/],
  ])('%s on %s', (task, now, intent, state) => {
    expect(rule.says(told, now, task, intent)).toMatch(state);
  });
});

describe('29 CFR 1910.67(c)(2)(i) (from memory): each day prior to use', () => {
  const rule = publishedRule('29-cfr-1910-67');
  it('does not take the evening before for the day', () => {
    const told = [outing('2026-03-02 07:10', '11:10'), done('2026-03-02 17:00', 'control-test')];
    expect(rule.says(told, '2026-03-03 07:00', 'control-test', soon)).toBe('due 2026-03-03');
    expect(rule.says([...told, done('2026-03-03 06:50', 'control-test')], '2026-03-03 07:00', 'control-test', soon)).toBe('clear');
  });
});

describe('WAC 296-869-40010: 3 months or 150 h, 13 months', () => {
  const rule = publishedRule('wac-296-869-40010');
  const told = [done('2026-01-31', 'annual-inspection', { hours: 400 })];
  it.each([
    ['frequent-inspection', 550, '2026-03-20', 'due 550'],
    ['frequent-inspection', 410, '2026-04-30', 'due 2026-04-30'],
    ['annual-inspection', 500, '2027-02-28', 'due 2027-02-28'],
    ['annual-inspection', 500, '2027-03-01', 'overdue 2027-02-28'],
  ])('%s at %d h on %s: %s', (task, hours, now, state) => {
    expect(rule.says([...told, reading(now, { hours })], now, task)).toBe(state);
  });
});

describe('30 CFR 77.800-1(a): at least once each month', () => {
  const rule = publishedRule('30-cfr-77-800-1');
  it.each([
    [['2026-01-31'], '2026-02-28', 'due 2026-02-28'],
    [['2026-01-31'], '2026-03-01', 'overdue 2026-02-28'],
    [['2026-01-31', '2026-02-01'], '2026-03-01', 'clear 2026-03-31'],
  ])('tested on %s, on %s: %s', (tested, now, state) => {
    expect(
      rule.says(
        tested.map((on) => done(on, 'breaker-test')),
        now,
        'breaker-test',
      ),
    ).toBe(state);
  });
});

describe('PUWER 1998, regulation 32(4): six months, twelve with fixed guards only', () => {
  const rule = publishedRule('puwer-regulation-32');
  it.each([
    ['examination', '2025-08-31', '2026-02-28', 'due 2026-02-28'],
    ['examination', '2025-08-31', '2026-03-01', 'overdue 2026-02-28'],
    ['yearly-examination', '2025-08-31', '2026-02-28', 'resting'],
  ])('%s of %s, on %s: %s', (task, on, now, state) => {
    expect(rule.says([done(on, task)], now, task)).toBe(state);
  });
});

describe('30 CFR 56.19132, 56.19133: within 24 hours, within seven days, and not used', () => {
  const rule = publishedRule('30-cfr-56-19132');
  const told = [done('2026-03-02 06:00', ['shaft-inspection', 'catches-test', 'catches-inspection'])];
  it.each([
    ['catches-inspection', '2026-03-03 06:00', 'clear'],
    ['catches-inspection', '2026-03-03 06:01', 'due 2026-03-03'],
    ['catches-test', '2026-03-09 06:00', 'clear'],
    ['catches-test', '2026-03-09 06:01', 'due 2026-03-09'],
  ])('%s at %s: %s', (task, now, state) => {
    expect(rule.says(told, now, task, soon)).toBe(state);
  });
  it('holds the hoist when the shaft was not inspected within the past seven days', () => {
    expect([rule.verdict(told, '2026-03-09 06:00'), rule.verdict(told, '2026-03-10 06:00')]).toEqual(['work-due-first', 'held']);
  });
});

describe('WAC 296-307-61015, Table 9: before and after each use, and monthly', () => {
  const rule = publishedRule('wac-296-307-61015');
  const told = [done('2026-01-31 07:00', ['emergency', 'everyday']), outing('2026-01-31 08:00', '09:00')];
  it.each([
    ['emergency', '2026-01-31 10:00', {}, /^due/],
    ['everyday', '2026-01-31 10:00', {}, /^clear/],
    ['everyday', '2026-02-01 07:00', soon, /^due/],
  ])('%s at %s', (task, now, intent, state) => {
    expect(rule.says(told, now, task, intent)).toMatch(state);
  });
  it('and where it was not used, monthly', () => {
    expect(rule.says([done('2026-01-31', 'emergency')], '2026-02-28', 'emergency')).toBe('due 2026-02-28');
  });
});

describe('a hospital’s generator, from memory: twelve times a year, 20 to 40 days apart', () => {
  const rule = publishedRule('hospital-generator-test');
  const tests = (days: number, times: number) =>
    Array.from({ length: times }, (_, n) => done(formatDate(addDays(dayNumber({ year: 2026, month: 1, day: 2 }), n * days)), 'load-test'));
  it.each([
    [30, 12, '2026-12-31', /^(clear|coming-up) 2027-01-07/],
    [30, 11, '2026-12-08', /^due 2026-12-08/],
    [19, 19, '2026-12-31', /^due/],
    [33, 11, '2026-12-31', /^due 2026-12-31/],
  ])('every %d days, %d times: on %s', (days, times, now, state) => {
    expect(rule.says([service('2026-01-01'), ...tests(days, times)], now, 'load-test')).toMatch(state);
  });
});
