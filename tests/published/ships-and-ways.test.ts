import { describe, expect, it } from 'vitest';
import { done, gauge, outing, publishedRule, reading, service, stands } from './published-rule.js';

describe('the harmonized system of survey: windows about the anniversary', () => {
  const rule = publishedRule('solas-survey-windows');
  const built = done('2025-05-15', 'renewal-survey');

  // Three months either side, in a summary of the system; renewal within three months before the expiry keeps the date.
  it.each([
    ['2026-02-14', 'clear 2026-05-15', 'work-due-first'],
    ['2026-02-15', 'coming-up 2026-05-15', 'work-due-first'],
    ['2026-08-15', 'due 2026-05-15', 'work-due-first'],
    ['2026-08-16', 'overdue 2026-05-15', 'held'],
  ])('the annual survey on %s: %s', (now, state, verdict) => {
    expect(rule.says([built], now, 'annual-survey')).toBe(state);
    expect(rule.verdict([built], now)).toBe(verdict);
  });

  it.each([
    ['annual-survey', '2026-02-15', '2027-05-15'],
    ['annual-survey', '2026-08-15', '2027-05-15'],
    ['annual-survey', '2026-02-14', '2027-02-14'],
    ['renewal-survey', '2030-02-15', '2035-05-15'],
    ['renewal-survey', '2030-02-14', '2035-02-14'],
    ['renewal-survey', '2030-06-20', '2035-05-15'],
  ])('%s done on %s: the next on %s', (task, on, due) => {
    expect(rule.says([built, done(on, task)], on, task)).toBe(`clear ${due}`);
  });

  it('is held from the day after the certificate has expired, though a late survey keeps its date', () => {
    const years = ['2026-05-15', '2027-05-15', '2028-05-15', '2029-05-15'].map((on) => done(on, ['annual-survey', 'intermediate-survey']));
    const told = [built, ...years, done('2028-05-15', 'bottom-inspection')];
    expect(rule.verdict(told, '2030-05-15')).toBe('work-due-first');
    expect(rule.verdict(told, '2030-05-16')).toBe('held');
  });

  it.each([
    ['2027-02-15', 'clear'],
    ['2028-08-15', 'clear'],
  ])('an intermediate survey on %s, at the second or the third anniversary: then %s', (on, state) => {
    expect(rule.says([built, done(on, 'intermediate-survey')], '2028-08-15', 'intermediate-survey')).toBe(state);
  });
});

describe('33 CFR 164.25: within 12 hours, and a drill within 48 or every three months', () => {
  const rule = publishedRule('33-cfr-164-25');
  const voyage = { outing: { start: 18 * 60, hours: 12 } };

  it.each([
    ['steering-gear-test', '2026-03-02 06:00', '2026-03-02 17:00', 'clear'],
    ['steering-gear-test', '2026-03-02 05:59', '2026-03-02 17:00', 'due 2026-03-02'],
    ['steering-drill', '2026-03-02 06:00', '2026-06-02 17:00', 'resting'],
    ['steering-drill', '2026-03-02 06:00', '2026-06-03 17:00', 'due 2026-06-01'],
    ['steering-drill', '2025-06-01 06:00', '2026-06-03 17:00', 'due 2026-06-01'],
  ])('%s at %s, asked at %s: %s', (task, on, now, state) => {
    expect(rule.says([done(on, task)], now, task, voyage)).toBe(state);
  });

  it('counts the test of the last departure for no other', () => {
    const told = [done('2026-03-02 05:00', 'steering-gear-test'), outing('2026-03-02 06:00', '20:00')];
    expect(rule.says(told, '2026-03-03 17:00', 'steering-gear-test', voyage)).toBe('due 2026-03-03');
  });
});

describe('23 CFR 650.311 (from memory): 24 months and three, 12 months and two', () => {
  const rule = publishedRule('23-cfr-650-311');
  const rated = (rating: number) => [gauge('2024-04-17', { rating }), done('2024-04-17', 'routine-inspection')];

  it.each([
    [4, 'routine-inspection', '2026-04-30', 'due 2026-04-30'],
    [4, 'routine-inspection', '2026-07-31', 'due 2026-04-30'],
    [4, 'routine-inspection', '2026-08-01', 'overdue 2026-04-30'],
    [3, 'routine-inspection-serious', '2025-04-30', 'due 2025-04-30'],
    [3, 'routine-inspection-serious', '2025-06-30', 'due 2025-04-30'],
    [3, 'routine-inspection-serious', '2025-07-01', 'overdue 2025-04-30'],
  ])('rated %d, %s on %s: %s', (rating, task, now, state) => {
    expect(rule.says(rated(rating), now, task)).toBe(state);
  });

  it('cannot tell where nobody noted the rating', () => {
    expect(rule.says([done('2024-04-17', 'routine-inspection')], '2026-07-31', 'routine-inspection')).toMatch(/^unknown/);
  });
});

describe('49 CFR 234.267 (from memory): ten years, or one below 500,000 ohms', () => {
  const rule = publishedRule('49-cfr-234-267');
  const measured = (kiloohms: number) => [gauge('2020-02-29', { insulation: kiloohms }), done('2020-02-29', 'insulation-test')];

  it.each([
    [500, 'clear 2030-02-28'],
    [499.9, 'clear 2021-02-28'],
  ])('%d kΩ: %s', (kiloohms, state) => {
    expect(rule.says(measured(kiloohms), '2020-03-01', 'insulation-test')).toBe(state);
  });

  it.each([
    [200, 'work-due-first'],
    [199.9, 'held'],
  ])('%d kΩ: the crossing is %s', (kiloohms, verdict) => {
    expect(
      rule.verdict([...measured(kiloohms), done('2020-02-29', ['system-test', 'joints', 'warning-time', 'relays'])], '2020-02-29'),
    ).toBe(verdict);
  });
});

describe('Directive 2014/45/EU, Article 5: four years, then two; one for taxis; 160 000 km', () => {
  const rule = publishedRule('eu-2014-45');
  const registered = [service('2022-02-28')];

  it.each([
    [registered, '2026-02-28', 'car-test', 'due 2026-02-28'],
    [[...registered, done('2026-02-20', 'car-test')], '2026-02-20', 'car-test', 'clear 2028-02-20'],
    [[...registered, stands('2022-02-28', { category: 'taxi' })], '2023-02-28', 'taxi-test', 'due 2023-02-28'],
    [[...registered, reading('2024-06-01', { distance: 159999 })], '2024-06-01', 'car-test', 'clear 2026-02-28'],
    [[...registered, reading('2024-06-02', { distance: 160000 })], '2024-06-02', 'car-test', 'due 2024-06-02'],
  ])('case %#', (told, now, task, state) => {
    expect(rule.says(told, now, task)).toBe(state);
  });
});

describe('AMC to ML.A.302(d): a year or 100 h, a tolerance of a month or 10 h', () => {
  const rule = publishedRule('easa-ml-a-302');
  const told = [done('2025-03-10', ['inspection', 'inspection-of-2015'], { flight: 1200 })];
  const late = [...told, done('2025-09-10', ['inspection', 'inspection-of-2015'], { flight: 1306 })];

  it.each([
    ['2026-03-10', 'due 2026-03-10'],
    ['2026-04-10', 'due 2026-03-10'],
    ['2026-04-11', 'overdue 2026-03-10'],
  ])('on %s: %s', (now, state) => {
    expect(rule.says(told, now, 'inspection')).toBe(state);
  });

  // "The next interval shall be calculated from the time the inspection takes place"; in 2015: "from the hours originally scheduled".
  it.each([
    ['inspection', ['1406', '2026-09-10']],
    ['inspection-of-2015', ['1400', '2026-09-10']],
  ])('%s at 1306 h instead of 1300: %j', (task, limits) => {
    expect(rule.limits(late, '2025-09-10', task)).toEqual(expect.arrayContaining([...limits]));
  });
});
