import { describe, expect, it } from 'vitest';
import { addDays } from '../../src/values/calendar.js';
import { dayNumber, formatDate } from '../../src/values/civil.js';
import { defect, done, event, gauge, outing, publishedRule, reading, service, stands, storage } from './published-rule.js';

const drive = { outing: { hours: 8 } };

describe('the MOT test, Great Britain: a year less a day, renewed up to a month less a day early', () => {
  const rule = publishedRule('uk-mot-test');

  // GOV.UK's own example: it runs out on 15 May, the earliest day that keeps the date is 16 April. The others are printed on pages
  // that explain it: out on 1 April, from 2 March; out on 1 November, from 2 October; out on 15 June, from 16 May.
  it.each([
    ['2025-05-16', '2026-05-15', '2026-04-16', '2026-04-15'],
    ['2025-04-02', '2026-04-01', '2026-03-02', '2026-03-01'],
    ['2025-11-02', '2026-11-01', '2026-10-02', '2026-10-01'],
    ['2025-06-16', '2026-06-15', '2026-05-16', '2026-05-15'],
  ])('passed %s: runs out %s, kept from %s on, not on %s', (passed, out, first, tooEarly) => {
    const renewed = (on: string): string => rule.says([done(passed, 'mot-test'), done(on, 'mot-test')], on, 'mot-test');
    expect(rule.says([done(passed, 'mot-test')], passed, 'mot-test')).toBe(`clear ${out}`);
    expect(renewed(first)).toBe(`clear ${out.replace('2026', '2027')}`);
    expect(renewed(tooEarly)).not.toBe(`clear ${out.replace('2026', '2027')}`);
  });

  // "Passed on 10 April for a car due on 15 May: out on 9 April next year"; "on 10 May, due 15 June: on 9 May".
  it.each([
    ['2025-05-16', '2026-04-10', '2027-04-09'],
    ['2025-06-16', '2026-05-10', '2027-05-09'],
  ])('passed %s and, too early, %s: out on %s', (before, on, out) => {
    expect(rule.says([done(before, 'mot-test'), done(on, 'mot-test')], on, 'mot-test')).toBe(`clear ${out}`);
  });

  it('is first due on the last day before the third anniversary is over', () => {
    expect(rule.says([service('2023-05-16')], '2026-05-15', 'mot-test')).toBe('due 2026-05-15');
    expect(rule.says([service('2023-05-16')], '2026-05-16', 'mot-test')).toBe('overdue 2026-05-15');
  });

  it('goes by the month that February ends', () => {
    expect(rule.says([done('2027-03-01', 'mot-test')], '2027-03-01', 'mot-test')).toBe('clear 2028-02-29');
  });
});

describe('49 CFR 192.731(c): at most 15 months, but at least once each calendar year', () => {
  const rule = publishedRule('49-cfr-192-731');

  it.each([
    [['2025-12-05'], '2026-12-31', 'due 2026-12-31'],
    [['2025-12-05'], '2027-01-01', 'overdue 2026-12-31'],
    [['2025-01-20', '2026-01-02'], '2027-04-02', 'due 2027-04-02'],
    [['2025-01-20', '2026-10-05'], '2027-12-31', 'due 2027-12-31'],
    [['2024-11-30', '2025-02-28'], '2026-05-28', 'due 2026-05-28'],
  ])('tested on %s, on %s: %s', (tested, now, state) => {
    expect(
      rule.says(
        tested.map((on) => done(on, 'shutdown-test')),
        now,
        'shutdown-test',
      ),
    ).toBe(state);
  });
});

describe('49 CFR 180.407(c): cargo tanks', () => {
  const rule = publishedRule('49-cfr-180-407');
  const told = [done('2021-02-28', ['external-inspection', 'internal-inspection', 'pressure-test'])];

  it.each([
    ['external-inspection', '2022-02-28', 'due 2022-02-28'],
    ['leakage-test', '2022-02-28', 'due 2022-02-28'],
    ['pressure-test', '2026-02-28', 'due 2026-02-28'],
    ['internal-inspection', '2026-02-28', 'due 2026-02-28'],
  ])('%s on %s: %s', (task, now, state) => {
    expect(rule.says(told, now, task)).toBe(state);
  });

  it('looks into an insulated tank every year, and not into a plain one', () => {
    expect(rule.says([...told, stands('2021-03-01', { shell: 'insulated' })], '2022-02-28', 'internal-inspection')).toBe('due 2022-02-28');
    expect(rule.says(told, '2022-02-28', 'internal-inspection')).toBe('clear 2026-02-28');
  });

  it('may not be filled once it is overdue', () => {
    expect(rule.verdict(told, '2022-03-01')).toBe('held');
  });
});

describe('49 CFR 180.209, Table 1: 5, 10, 12 and 3 years', () => {
  const rule = publishedRule('49-cfr-180-209');

  it.each([
    ['dot-3aa', '2025-02-28'],
    ['dot-3aa-star', '2030-02-28'],
    ['extinguisher', '2032-02-29'],
    ['dot-3ht', '2023-02-28'],
  ])('%s: until %s', (kind, due) => {
    const told = [done('2020-02-29', 'requalification'), stands('2020-02-29', { cylinder: kind })];
    expect(rule.says(told, due, 'requalification')).toBe(`due ${due}`);
  });

  it('ends the life of a 3HT cylinder at 24 years or 4380 pressurizations', () => {
    const told = [service('2000-05-01'), stands('2000-05-01', { cylinder: 'dot-3ht' })];
    expect(rule.says([...told, reading('2010-01-01', { fillings: 4380 })], '2010-01-01', 'condemnation')).toBe('due 4380');
    expect(rule.says([...told, reading('2024-05-01', { fillings: 900 })], '2024-05-01', 'condemnation')).toBe('due 2024-05-01');
  });
});

describe('49 CFR 229.21, 229.23, 229.27: each day of use, 92 days, 368 days', () => {
  const rule = publishedRule('49-cfr-229-23');
  const told = [done('2026-01-01', ['periodic-inspection', 'annual-tests', 'air-brakes'])];

  // 2026-01-01 + 92 days = 2026-04-03; + 368 = 2027-01-04; + 1104 = 2029-01-09, counted by hand.
  it.each([
    ['periodic-inspection', '2026-04-03', 'due 2026-04-03'],
    ['periodic-inspection', '2026-04-04', 'overdue 2026-04-03'],
    ['annual-tests', '2027-01-04', 'due 2027-01-04'],
    ['air-brakes', '2029-01-09', 'due 2029-01-09'],
  ])('%s on %s: %s', (task, now, state) => {
    expect(rule.says(told, now, task)).toBe(state);
  });

  it('wants the daily inspection on the day itself', () => {
    expect(rule.says(told, '2026-01-01', 'daily-inspection', drive)).toBe('clear');
    expect(rule.says(told, '2026-01-03', 'daily-inspection', drive)).toBe('due 2026-01-03');
    expect(rule.says(told, '2026-01-03', 'daily-inspection')).toBe('clear');
  });
});

describe('49 CFR 396.11, 396.13: after the day, before the next', () => {
  const rule = publishedRule('49-cfr-396-11');
  const day = [done('2026-03-02 06:00', 'pre-trip'), outing('2026-03-02 06:30', '14:30')];

  it.each([
    ['post-trip', '2026-03-02 14:31', 'due 2026-03-02'],
    ['pre-trip', '2026-03-03 06:00', 'due 2026-03-03'],
  ])('%s on %s: %s', (task, now, state) => {
    expect(rule.says(day, now, task, task === 'pre-trip' ? drive : {})).toBe(state);
  });

  it('does not let a reported defect drive', () => {
    const found = [...day, defect('2026-03-02 15:00', 'safety-defect', 'reported')];
    expect(rule.verdict(found, '2026-03-03 06:00', drive)).toBe('held');
    expect(rule.verdict([...found, done('2026-03-02 17:00', ['certification', 'post-trip'])], '2026-03-02 17:05')).not.toBe('held');
  });
});

describe('Regulation (EU) 2016/799, Annex I C, requirement 409: 24 months, and whenever something changed', () => {
  const rule = publishedRule('eu-165-2014-23');
  const told = [gauge('2024-02-29', { 'clock-error': 0 }), done('2024-02-29', 'tachograph-inspection')];

  it.each([
    ['2026-02-28', 'due 2026-02-28'],
    ['2026-03-01', 'overdue 2026-02-28'],
  ])('on %s: %s', (now, state) => {
    expect(rule.says(told, now, 'tachograph-inspection')).toBe(state);
  });

  it.each([
    [20, /^clear/],
    [-20, /^clear/],
    [21, /^due/],
    [-21, /^due/],
  ])('with the clock wrong by %d min', (minutes, state) => {
    expect(rule.says([...told, gauge('2024-05-01', { 'clock-error': minutes })], '2024-05-02', 'tachograph-inspection')).toMatch(state);
  });

  it.each(['repaired', 'recalibrated', 're-registered'])('after it was %s', (what) => {
    expect(rule.says([...told, event('2024-05-01', what)], '2024-05-02', 'tachograph-inspection')).toMatch(/^due/);
  });
});

describe('46 CFR 199.190 and SOLAS III/20: weekly, monthly, 30 months, 5 years, 12 and 17 months', () => {
  const rule = publishedRule('46-cfr-199-190');
  const told = [done('2020-08-31', ['renew-falls', 'service-liferaft', 'monthly-inspection'])];

  it.each([
    ['weekly-inspection', '2020-09-07', 'due 2020-09-07'],
    ['monthly-inspection', '2020-09-30', 'due 2020-09-30'],
    ['turn-falls', '2023-02-28', 'due 2023-02-28'],
    ['renew-falls', '2025-08-31', 'due 2025-08-31'],
    ['service-liferaft', '2021-08-31', 'due 2021-08-31'],
    ['service-liferaft', '2022-01-31', 'due 2021-08-31'],
    ['service-liferaft', '2022-02-01', 'overdue 2021-08-31'],
  ])('%s on %s: %s', (task, now, state) => {
    expect(rule.says(told, now, task)).toBe(state);
  });
});

describe('49 CFR 229.33, from memory: days out of use are added where there are 30 or more in a row', () => {
  const rule = publishedRule('49-cfr-229-23');
  const stored = (from: string, to: string) => [storage(from, 'begins'), storage(to, 'ends')];

  // 92 days from 1 January 2026 are 3 April.
  it.each([
    ['30 days', [...stored('2026-02-01', '2026-03-03')], '2026-05-03'],
    ['29 days', [...stored('2026-02-01', '2026-03-02')], '2026-04-03'],
    ['60 days, from before the inspection on', [...stored('2025-12-01', '2026-01-30')], '2026-05-02'],
    [
      'twice: the second begins while the first puts it off',
      [...stored('2026-02-01', '2026-03-03'), ...stored('2026-04-20', '2026-05-30')],
      '2026-06-12',
    ],
    ['from the day on which it is due', [...stored('2026-04-03', '2026-06-03')], '2026-04-03'],
  ])('out of use %s', (_, spells, due) => {
    expect(rule.says([done('2026-01-01', 'periodic-inspection'), ...spells], '2026-07-31', 'periodic-inspection')).toBe(`overdue ${due}`);
  });
});

describe('49 CFR 192.740(b): once every 3 calendar years, not exceeding 39 months', () => {
  const rule = publishedRule('49-cfr-192-740');

  // A test in the last nine months of a year is bound by the years, one in the first three by the months.
  it.each([
    ['2023-01-01', '2026-04-01'],
    ['2023-09-30', '2026-12-30'],
    ['2023-10-01', '2026-12-31'],
    ['2023-12-31', '2026-12-31'],
    ['2024-01-01', '2027-04-01'],
  ])('tested %s: due %s', (tested, out) => {
    expect(rule.says([done(tested, 'regulator-test')], tested, 'regulator-test')).toBe(`clear ${out}`);
    expect(rule.says([done(tested, 'regulator-test')], out, 'regulator-test')).toBe(`due ${out}`);
  });
});

describe('49 CFR 192.705(b): at most 7½ (4½) months, but at least twice (four times) each calendar year', () => {
  const rule = publishedRule('49-cfr-192-705');
  const patrolled = (task: string, days: readonly string[]) => days.map((on) => done(on, task));

  it.each([
    [['2025-03-01', '2025-10-10'], '2026-05-25', 'due 2026-05-25'],
    [['2025-06-30', '2025-12-31'], '2026-08-15', 'due 2026-08-15'],
    // Twice in the year before; once so far in this one, on 1 June: the year ends before 7½ months are over.
    [['2025-06-01', '2025-12-01', '2026-06-01'], '2026-12-31', 'due 2026-12-31'],
    [['2025-06-01', '2025-12-01', '2026-06-01'], '2027-01-01', 'overdue 2026-12-31'],
    [['2025-06-01', '2025-12-01', '2026-06-01', '2026-12-30'], '2027-01-01', 'clear 2027-08-14'],
  ])('crossings patrolled on %s, on %s: %s', (days, now, state) => {
    expect(rule.says(patrolled('patrol-crossings', days), now, 'patrol-crossings')).toBe(state);
  });

  it.each([
    [['2026-01-10', '2026-04-10', '2026-07-10'], '2026-11-25', 'due 2026-11-25'],
    [['2026-01-10', '2026-04-10', '2026-07-10', '2026-10-10'], '2026-12-31', 'clear 2027-02-25'],
    [['2026-04-30', '2026-09-10', '2026-12-20'], '2026-12-31', 'due 2026-12-31'],
  ])('crossings in town patrolled on %s, on %s: %s', (days, now, state) => {
    const before = patrolled('patrol-town-crossings', ['2025-02-01', '2025-05-01', '2025-09-01', '2025-12-20']);
    expect(rule.says([...before, ...patrolled('patrol-town-crossings', days)], now, 'patrol-town-crossings')).toBe(state);
  });
});

describe('49 CFR 192.465(b), from memory: six times each calendar year, at most 2½ months apart', () => {
  const rule = publishedRule('49-cfr-192-465');

  it.each([
    [['2026-01-31'], '2026-04-15', 'due 2026-04-15'],
    [['2026-02-01', '2026-04-01', '2026-06-01', '2026-08-01', '2026-10-01', '2026-12-16'], '2027-03-03', 'due 2027-03-03'],
  ])('inspected on %s, on %s: %s', (days, now, state) => {
    expect(
      rule.says(
        days.map((on) => done(on, 'rectifier')),
        now,
        'rectifier',
      ),
    ).toBe(state);
  });
});

describe('49 CFR 195.412(a), from memory: at most 3 weeks apart, but at least 26 times each calendar year', () => {
  const rule = publishedRule('49-cfr-195-412');
  const every = (days: number, times: number) =>
    Array.from({ length: times }, (_, n) =>
      done(formatDate(addDays(dayNumber({ year: 2026, month: 1, day: 5 }), n * days)), 'right-of-way'),
    );

  it('is met by every second week, and not by every third', () => {
    expect(rule.says(every(14, 26), '2026-12-31', 'right-of-way')).toBe('clear 2027-01-11');
    expect(rule.says(every(21, 18), '2026-12-31', 'right-of-way')).toBe('due 2026-12-31');
    expect(rule.says(every(14, 25), '2026-12-28', 'right-of-way')).toBe('due 2026-12-28');
  });
});

describe('10 CFR 34.27(c), from memory: six months, but not in storage', () => {
  const rule = publishedRule('10-cfr-34-31');

  it.each([
    ['2025-08-31', [], '2026-02-28'],
    ['2026-01-10', [storage('2026-05-01', 'begins'), storage('2026-09-01', 'ends')], '2026-11-10'],
  ])('tested %s: due %s', (tested, spells, out) => {
    expect(rule.says([done(tested, 'leak-test'), ...spells], out, 'leak-test')).toBe(`due ${out}`);
  });
});

describe('46 CFR 71.50-3(b)(1): two drydock examinations within any five years, no more than three years apart', () => {
  const rule = publishedRule('46-cfr-71-50-3');

  it.each([
    [['2021-06-01', '2024-05-20'], '2026-06-01', 'due 2026-06-01'],
    [['2021-06-01', '2024-05-20'], '2026-06-02', 'overdue 2026-06-01'],
    [['2021-06-01', '2021-12-01'], '2024-12-01', 'due 2024-12-01'],
    [['2020-02-29', '2023-02-28'], '2025-02-28', 'due 2025-02-28'],
    [['2021-06-01', '2023-06-01', '2025-12-01'], '2026-06-01', 'clear 2028-06-01'],
    [['2021-06-01'], '2021-06-02', 'unrecorded'],
  ])('examined on %s: on %s %s', (examined, now, state) => {
    expect(
      rule.says(
        examined.map((on) => done(on, 'drydock')),
        now,
        'drydock',
      ),
    ).toBe(state);
  });
});

describe('49 CFR 213.339(a): twice annually, not less than 120 days between', () => {
  const rule = publishedRule('49-cfr-213-339');
  const told = (days: number) => [
    service('2025-01-10'),
    done('2025-03-01', 'high-speed'),
    done(formatDate(addDays(dayNumber({ year: 2025, month: 3, day: 1 }), days)), 'high-speed'),
  ];

  it.each([
    [119, '2025-12-31', 'due 2025-12-31'],
    [120, '2025-12-31', 'clear 2026-12-31'],
  ])('%d days later, on %s: %s', (days, now, state) => {
    expect(rule.says(told(days), now, 'high-speed')).toBe(state);
  });
});

describe('49 CFR 213.237(a): 40 million tons or a year, the shorter; 30 million or a year, the longer', () => {
  const rule = publishedRule('49-cfr-213-339');
  const searched = done('2025-03-01', ['main-track', 'freight-track'], { traffic: 0 });

  it.each([
    ['main-track', 39_999_999, '2025-11-01', /^coming-up/],
    ['main-track', 40_000_000, '2025-11-01', /^due 40000000/],
    ['main-track', 10_000_000, '2026-03-01', /^due 2026-03-01/],
    ['freight-track', 60_000_000, '2026-02-01', /^clear 2026-03-01/],
    ['freight-track', 60_000_000, '2026-03-01', /^due 2026-03-01/],
    ['freight-track', 29_000_000, '2027-03-01', /^coming-up 30000000/],
  ])('%s at %d tons on %s', (task, traffic, now, state) => {
    expect(rule.says([searched, reading(now, { traffic })], now, task)).toMatch(state);
  });
});

describe('49 CFR 213.233(c), from memory: twice weekly with at least one calendar day between', () => {
  const rule = publishedRule('49-cfr-213-233');

  it.each([
    [['2026-04-27', '2026-04-28'], 'due 2026-05-03'],
    [['2026-04-27', '2026-04-29'], 'clear 2026-05-10'],
    [['2026-05-01', '2026-05-03'], 'clear 2026-05-10'],
    [['2026-05-02', '2026-05-03'], 'due 2026-05-03'],
  ])('inspected on %s, on the Sunday: %s', (inspected, state) => {
    const told = [service('2026-04-26'), ...inspected.map((on) => done(on, 'passenger-track'))];
    expect(rule.says(told, '2026-05-03', 'passenger-track')).toBe(state);
  });
});

describe('49 CFR 230.14: after 31 service days, days in service counted', () => {
  const rule = publishedRule('49-cfr-230-14');
  const days = (times: number, apart: number) =>
    Array.from({ length: times }, (_, n) =>
      outing(`${formatDate(addDays(dayNumber({ year: 2026, month: 5, day: 2 }), n * apart))} 08:00`, '15:00'),
    );
  const told = [service('2026-05-01'), done('2026-05-01 06:00', 'inspection-1472')];

  it.each([
    [30, 1, '2026-06-30', 'coming-up 31'],
    [31, 1, '2026-06-30', 'due 31'],
    [31, 7, '2026-11-30', 'due 31'],
    [32, 7, '2026-12-31', 'overdue 31'],
  ])('%d days in service, %d days apart, on %s: %s', (times, apart, now, state) => {
    expect(rule.says([...told, ...days(times, apart)], now, 'inspection-31')).toBe(state);
  });
});
