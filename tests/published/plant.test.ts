import { describe, expect, it } from 'vitest';
import { defect, done, event, gauge, outing, publishedRule, reading, service, stands } from './published-rule.js';

describe('Regulation (EU) No 517/2014, Article 4(3): leak checks by the charge', () => {
  const rule = publishedRule('eu-517-2014-4');

  // The table of the Isle of Man's government and of a maker's guide: 12, 6, 3 months; 24, 12, 6 with leakage detection.
  it.each([
    ['from-5', 'missing', '2027-01-31'],
    ['from-5', 'fitted', '2028-01-31'],
    ['from-50', 'missing', '2026-07-31'],
    ['from-50', 'fitted', '2027-01-31'],
    ['from-500', 'missing', '2026-04-30'],
    ['from-500', 'fitted', '2026-07-31'],
  ])('%s tonnes, detection %s: until %s', (charge, detection, due) => {
    const told = [stands('2026-01-31', { charge, detection }), done('2026-01-31', 'leak-check')];
    expect(rule.says(told, '2026-02-01', 'leak-check')).toBe(`clear ${due}`);
  });

  it('asks for nothing below five tonnes', () => {
    expect(rule.says([stands('2026-01-31', { charge: 'below-5' })], '2026-02-01', 'leak-check')).toMatch(/^resting/);
  });

  it('has the repair checked within a month', () => {
    const told = [defect('2026-03-20', 'leak', 'found'), done('2026-03-31', 'repair-leak')];
    expect(rule.says(told, '2026-04-30', 'check-after-repair')).toBe('due 2026-04-30');
    expect(rule.says(told, '2026-05-01', 'check-after-repair')).toBe('overdue 2026-04-30');
  });
});

describe('Gas Safety (Installation and Use) Regulations 1998, regulation 36A', () => {
  const rule = publishedRule('uk-gas-safety-36');

  // A letting agent's page, of regulation 36A: checked on 10 February 2018, and then on 5 January 2019: due on 10 February 2020.
  // Another's, of the bill: due on 15 May, done on 29 April: due on 15 May. Two months before are the earliest.
  it.each([
    ['2018-02-10', '2019-01-05', '2020-02-10'],
    ['2018-05-15', '2019-04-29', '2020-05-15'],
    ['2018-02-10', '2018-12-10', '2020-02-10'],
    ['2018-02-10', '2018-12-09', '2019-12-09'],
  ])('checked on %s and %s: due on %s', (before, on, due) => {
    expect(rule.says([done(before, 'safety-check'), done(on, 'safety-check')], on, 'safety-check')).toBe(`clear ${due}`);
  });
});

describe('BetrSichV, section 14(5) (from memory): the month counts', () => {
  const rule = publishedRule('de-betrsichv-14');
  const inspected = (task: string, ...on: readonly string[]): string =>
    rule.says(
      on.map((each) => done(each, task)),
      on.at(-1) ?? '',
      task,
    );

  it.each([
    [['2024-06-12'], '2026-06-30'],
    [['2024-06-12', '2026-05-20'], '2028-05-31'],
    [['2024-06-12', '2026-08-31'], '2028-06-30'],
  ])('a lift inspected on %j: %s', (on, due) => {
    expect(inspected('lift-main-inspection', ...on)).toBe(`clear ${due}`);
  });

  it.each([
    [['2021-09-08', '2026-07-01'], '2031-09-30'],
    [['2021-09-08', '2026-06-30'], '2031-06-30'],
    [['2021-09-08', '2026-11-30'], '2031-09-30'],
  ])('a vessel inspected on %j: %s', (on, due) => {
    expect(inspected('vessel-internal-inspection', ...on)).toBe(`clear ${due}`);
  });
});

describe('9 CFR 201.72(a): a test in each half of the year, 120 days apart', () => {
  const rule = publishedRule('9-cfr-201-72');
  const tested = (...on: readonly string[]) => [service('2026-01-01'), ...on.map((each) => done(each, 'scale-test'))];

  // 15 May is the agency's own example; 120 days after it are 12 September (its page says 13 August, which are 90).
  it.each([
    [['2026-05-15', '2026-09-12'], '2027-06-30'],
    [['2026-05-15', '2026-09-11'], '2026-12-31'],
    [['2026-05-15', '2026-08-13'], '2026-12-31'],
    [['2026-01-10', '2026-06-20'], '2026-12-31'],
  ])('tested on %j: the next by %s', (on, due) => {
    expect(rule.says(tested(...on), '2026-10-01', 'scale-test')).toBe(`clear ${due}`);
  });
});

describe('40 CFR 61.242-7: monthly, quarterly, and monthly again after a leak', () => {
  const rule = publishedRule('40-cfr-61-242-7');
  const monitored = (ppm: number, ...on: readonly string[]) =>
    on.flatMap((each) => [done(each, 'monitor'), gauge(each, { concentration: ppm / 10000 })]);

  it.each([
    [9999, 'clear'],
    [10000, 'clear 2026-04-23'],
  ])('%d ppm: repair %s', (ppm, state) => {
    expect(rule.says(monitored(ppm, '2026-04-08'), '2026-04-08', 'repair')).toBe(state);
  });

  it.each([
    ['2026-05-31', ['2026-04-08'], 'due 2026-05-31'],
    ['2026-06-30', ['2026-04-08', '2026-05-20'], 'due 2026-06-30'],
    ['2026-07-01', ['2026-04-08', '2026-05-20', '2026-06-20'], 'due 2026-07-01'],
    ['2026-08-01', ['2026-04-08', '2026-05-20', '2026-06-20', '2026-07-20'], 'clear 2026-10-01'],
  ])('a leak on 8 April: on %s, monitored on %j, %s', (now, on, state) => {
    expect(rule.says([...monitored(100, ...on), event('2026-04-08', 'leak-found')], now, 'monitor')).toBe(state);
  });
});

describe('10 CFR 35.632, 35.642: a year, a calendar month, five percent', () => {
  const rule = publishedRule('10-cfr-35-642');
  const told = [done('2026-01-30', ['full-calibration', 'output-spot-check', 'safety-spot-check'])];

  it.each([
    ['full-calibration', '2027-01-30', 'due 2027-01-30'],
    ['output-spot-check', '2026-02-28', 'due 2026-02-28'],
    ['safety-spot-check', '2026-03-01', 'overdue 2026-02-28'],
    ['review', '2026-02-14', 'due 2026-02-14'],
  ])('%s on %s: %s', (task, now, state) => {
    expect(rule.says(told, now, task)).toBe(state);
  });

  it.each([
    [5, 'ready'],
    [5.1, 'held'],
  ])('off by %d %%: %s', (off, verdict) => {
    expect(rule.verdict([...told, gauge('2026-01-30', { 'output-difference': off })], '2026-01-31')).toBe(verdict);
  });
});

describe('10 CFR 34.27(c): six months, none in storage, and before use after it', () => {
  const rule = publishedRule('10-cfr-34-27');
  const tested = [done('2025-08-31', 'leak-test')];
  const stored = [...tested, stands('2025-10-01', { device: 'in-store' })];
  const back = (on: string) => [...stored, stands(on, { device: 'in-use' })];

  it.each([
    [tested, '2026-02-28', 'due 2026-02-28', 'work-due-first'],
    [tested, '2026-03-01', 'overdue 2026-02-28', 'held'],
    [back('2026-05-02'), '2026-05-02', 'overdue 2026-02-28', 'held'],
    [back('2025-12-01'), '2025-12-01', 'clear 2026-02-28', 'ready'],
  ])('case %#', (told, now, state, verdict) => {
    expect(rule.says(told, now, 'leak-test')).toBe(state);
    expect(rule.verdict(told, now)).toBe(verdict);
  });

  it('rests in storage', () => {
    expect(rule.says(stored, '2026-05-01', 'leak-test')).toMatch(/^resting/);
    expect(rule.verdict(stored, '2026-05-01')).toBe('ready');
  });
});

describe('29 CFR 1910.137, Table I-5, and the letter of 2020-08-19', () => {
  const rule = publishedRule('29-cfr-1910-137');
  const letter = [done('2016-01-01', 'test-before-issue'), event('2016-10-01', 'first-issued')];

  // "Gloves tested on January 1, 2016 but not issued until October 1, 2016 must be removed from service by January 1, 2017": yes.
  it('removes by 1 January 2017 what was tested a year before and issued three months before', () => {
    expect(rule.verdict(letter, '2016-10-01')).toBe('ready');
    expect(rule.says(letter, '2017-01-01', 'test-before-issue')).toBe('due 2017-01-01');
    expect(rule.verdict(letter, '2017-01-02')).toBe('held');
  });

  // The letter of 2019-01-25: once issued, every six months, and not twelve.
  it('tests every six months once they are issued', () => {
    const again = [...letter, done('2016-12-20', 'electrical-test')];
    expect(rule.says(again, '2016-12-21', 'electrical-test')).toBe('clear 2017-06-20');
    expect(rule.verdict(again, '2017-06-21')).toBe('held');
  });

  it('does not issue what was tested more than twelve months before', () => {
    expect(rule.verdict([done('2016-01-01', 'test-before-issue')], '2017-01-02')).toBe('held');
  });
});

describe('40 CFR 1065.303: within 370, 185 and 35 days before testing', () => {
  const rule = publishedRule('40-cfr-1065-303');
  const test = { outing: { start: 8 * 60, hours: 8 } };

  it.each([
    ['torque-linearity', '2027-01-15 08:00', 'clear'],
    ['torque-linearity', '2027-01-16 08:00', 'due 2026-01-11'],
    ['exhaust-flow-linearity', '2026-07-14 08:00', 'clear'],
    ['exhaust-flow-linearity', '2026-07-15 08:00', 'due 2026-01-11'],
    ['analyzer-linearity', '2026-02-14 08:00', 'clear'],
    ['analyzer-linearity', '2026-02-15 08:00', 'due 2026-01-11'],
  ])('%s of 10 January 2026, a test at %s: %s', (task, now, state) => {
    expect(rule.says([done('2026-01-10 08:00', task)], now, task, test)).toBe(state);
  });

  it('asks for nothing where nothing is tested, and again after major maintenance', () => {
    const told = [done('2026-01-10 08:00', 'torque-linearity')];
    expect(rule.says(told, '2028-01-10', 'torque-linearity')).toBe('clear');
    expect(rule.says([...told, event('2026-01-12', 'major-maintenance')], '2026-01-12', 'torque-linearity')).toBe('due 2026-01-12');
  });
});

describe('COSHH 2002, regulation 9 and Schedule 4: 14 months, a month, six', () => {
  const rule = publishedRule('uk-coshh-9');

  it.each([
    ['other', '2027-02-28'],
    ['blasting', '2026-01-31'],
    ['jute', '2026-01-31'],
    ['metal-grinding', '2026-06-30'],
    ['non-ferrous-casting', '2026-06-30'],
  ])('%s: until %s', (process, due) => {
    const told = [done('2025-12-31', 'thorough-examination'), stands('2025-12-31', { process })];
    expect(rule.says(told, due, 'thorough-examination')).toBe(`due ${due}`);
  });
});

describe('API 510, 6.5: one half of the remaining life or ten years, whichever is less', () => {
  const rule = publishedRule('api-510-6-5');
  const measured = (...walls: readonly (readonly [string, number, number])[]) =>
    walls.map(([on, hours, wall]) => [gauge(on, { wall: wall / 8 }), done(on, 'internal-inspection', { service: hours })]).flat();

  // By hand: (7 - 0) / (1 mm / 40000 h) = 280000 h, half of it 140000; (2 - 0) / (6 mm / 90000 h) = 30000 h, half 15000.
  it.each([
    [measured(['2015-01-01', 0, 8], ['2020-01-01', 40000, 7]), ['2030-01-01', '180000']],
    [measured(['2005-01-01', 0, 8], ['2020-01-01', 90000, 2]), ['2030-01-01', '105000']],
  ])('case %#: the first of %j', (told, limits) => {
    expect(rule.limits(told, '2020-01-02', 'internal-inspection')).toEqual(expect.arrayContaining([...limits]));
  });

  it('is due at the sooner', () => {
    const told = [...measured(['2005-01-01', 0, 8], ['2020-01-01', 90000, 2]), reading('2022-04-02', { service: 105000 })];
    expect(rule.says(told, '2022-04-02', 'internal-inspection')).toBe('due 105000');
  });
});

describe('NFPA 25, edition of 2014, 5.3.1.1: by the age of the sprinklers', () => {
  const rule = publishedRule('nfpa-25-sprinklers');
  const old = [service('1950-06-01')];

  it.each([
    ['standard-sprinklers', '2000-06-01'],
    ['fast-response-sprinklers', '1970-06-01'],
    ['dry-sprinklers', '1960-06-01'],
    ['harsh-sprinklers', '1955-06-01'],
  ])('%s: first on %s', (task, due) => {
    expect(rule.says(old, due, task)).toBe(`due ${due}`);
  });

  it.each([
    ['2010-06-01', '2020-06-01', 'due 2020-06-01'],
    ['2020-06-01', '2025-06-01', 'clear 2030-06-01'],
    ['2020-06-01', '2025-06-02', 'overdue 2025-06-01'],
    ['2026-03-01', '2031-03-01', 'due 2031-03-01'],
  ])('tested on %s, on %s: %s', (tested, now, state) => {
    expect(rule.says([...old, done(tested, 'standard-sprinklers')], now, 'standard-sprinklers')).toBe(state);
  });
});

describe('30 CFR 75.312: each day on which people go underground, or weekly', () => {
  const rule = publishedRule('30-cfr-75-312');
  const shift = { outing: { hours: 8 } };
  const fitted = stands('2026-03-02', { monitoring: 'fitted' });

  it.each([
    [[done('2026-03-02', 'daily-examination')], 'daily-examination', /^due/],
    [[fitted, done('2026-03-02', 'weekly-examination')], 'daily-examination', /^resting/],
    [[fitted, defect('2026-03-03 04:00', 'monitoring-fault', 'of')], 'daily-examination', /^due/],
    [[fitted, done('2026-03-02', 'weekly-examination')], 'weekly-examination', /^clear 2026-03-09/],
    [[done('2026-03-02', 'signal-test')], 'signal-test', /^clear 2026-04-02/],
  ])('case %#', (told, task, state) => {
    expect(rule.says(told, '2026-03-03 05:00', task, shift)).toMatch(state);
  });

  it('asks for nothing on a day on which nobody goes', () => {
    const told = [done('2026-03-02', 'daily-examination'), outing('2026-03-02 06:00', '14:00')];
    expect(rule.says(told, '2026-03-03 05:00', 'daily-examination')).toMatch(/^clear/);
  });
});
