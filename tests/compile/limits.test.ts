import { describe, expect, test } from 'vitest';
import { graphOfText, triggerOf } from './compile-files.js';

const meters = 'meter engine "Hour meter" counts h\n';
const h = 36000;

function trigger(clauses: string, more = ''): unknown {
  return triggerOf(graphOfText(`${meters}${more}\ntask t "T"\n${clauses}`), 't');
}

const none = { early: { size: 0 }, late: { size: 0 } };

describe('limits', () => {
  test('hours are ticks of 1/36000, and the default lead is the lesser of 10 % and 10 h (docs/meaning.md §4)', () => {
    expect(trigger('every 50 h of engine')).toEqual({
      kind: 'interval',
      amount: { on: 'meter', meter: 'engine', ticks: 50 * h },
      count: 'doing',
      ...none,
      lead: { size: 5 * h },
      strict: false,
    });
    expect(trigger('every 250 h of engine')).toMatchObject({ lead: { size: 10 * h } });
    expect(trigger('every 30 min of engine')).toMatchObject({ amount: { ticks: 18000 } });
    expect(trigger('every 100 h')).toMatchObject({ amount: { on: 'meter', meter: 'engine', ticks: 100 * h } });
  });

  test('weeks are 7 days, years 12 months; the default lead is the lesser of 10 % and 14 days, a month counted as 30', () => {
    expect(trigger('every 6 weeks')).toMatchObject({ amount: { on: 'calendar', unit: 'days', count: 42 }, lead: { size: 4 } });
    expect(trigger('every 2 years')).toMatchObject({ amount: { on: 'calendar', unit: 'months', count: 24 }, lead: { size: 14 } });
    expect(trigger('every 12 calendar months')).toMatchObject({ amount: { unit: 'calendar-months', count: 12 } });
    expect(trigger('every 1 month')).toMatchObject({ lead: { size: 3 } });
  });

  test('10 % of 6 months is 18 days (DA PAM 750-8, 10 % variance of a semiannual service)', () => {
    expect(trigger('every 6 months allow 10 % early, 10 % late')).toMatchObject({ early: { size: 18 }, late: { size: 18 } });
  });

  test('each side of a dual limit takes the margins of its own axis', () => {
    const both = trigger(
      'every 100 h of engine or 12 months, whichever first\nallow 10 h late, 14 days late\nlead 5 h, 1 month\nhold 20 h late "Stop."',
    );
    expect(both).toMatchObject({
      kind: 'whichever',
      mode: 'first',
      parts: [
        { late: { size: 10 * h }, lead: { size: 5 * h }, hold: { after: { size: 20 * h }, text: 'Stop.' } },
        { late: { size: 14 }, lead: { size: 30 } },
      ],
    });
    expect((both as { parts: object[] }).parts[1]).not.toHaveProperty('hold');
  });

  test('the lesser of a share and a span', () => {
    expect(trigger('every 250 h of engine allow lesser of 10 % and 10 h late')).toMatchObject({ late: { size: 10 * h } });
    expect(trigger('every 50 h of engine allow lesser of 10 % and 10 h late')).toMatchObject({ late: { size: 5 * h } });
  });

  test('hold when overdue begins where the allowance ends', () => {
    expect(trigger('every 100 h of engine allow 10 h late hold when overdue "Stop."')).toMatchObject({
      hold: { after: { size: 10 * h }, text: 'Stop.' },
    });
  });

  test('first at stands before every; stages after an event stand beside it', () => {
    expect(trigger('first at 50 h of engine every 100 h of engine')).toMatchObject({
      kind: 'first',
      first: { kind: 'stages', from: { is: 'start' }, amounts: [{ ticks: 50 * h }] },
      then: { kind: 'interval', amount: { ticks: 100 * h } },
    });
    expect(trigger('at 1 h, 10 h, 50 h of engine after refit every 250 h of engine', 'event refit "Refitted"')).toMatchObject({
      kind: 'any',
      parts: [
        { kind: 'stages', from: { is: 'event', event: 'refit' }, amounts: [{ ticks: h }, { ticks: 10 * h }, { ticks: 50 * h }] },
        { kind: 'interval' },
      ],
    });
  });

  test('first at whichever first of two spans is two stages', () => {
    expect(trigger('first at 50 h of engine or 3 months, whichever first')).toMatchObject({
      kind: 'first',
      first: {
        kind: 'whichever',
        parts: [
          { kind: 'stages', amounts: [{ on: 'meter' }] },
          { kind: 'stages', amounts: [{ on: 'calendar', count: 3 }] },
        ],
      },
    });
  });

  test('a duty makes a mix of the one hour limit, and leaves the calendar alone', () => {
    expect(
      trigger('every 100 h of engine or 12 months, whichever first in dusty every 50 h of engine', 'duty dusty "Dusty"'),
    ).toMatchObject({
      parts: [{ kind: 'duty-mix', meter: 'engine', ticks: 100 * h, duties: [{ duty: 'dusty', ticks: 50 * h }] }, { kind: 'interval' }],
    });
  });

  test('look: I = PF/n, n = ln(Pacc)/ln(1 − θ) (NAVAIR 00-25-403): PF 100 h, θ 0.9, Pacc 0.001 → n 3, 33.3 h; θ 0.8, Pacc 0.01 → n 2.86135', () => {
    const three = trigger('every look in 100 h of engine from sign to failure finding 90 % missing 0.1 %');
    expect(three).toMatchObject({ kind: 'interval', amount: { ticks: Math.floor((100 * h) / 3) } });
    const other = trigger('every look in 100 h of engine from sign to failure finding 80 % missing 1 %') as { amount: { ticks: number } };
    expect((100 * h) / other.amount.ticks).toBeCloseTo(2.86135, 4);
  });

  test('marks, windows, more than', () => {
    expect(trigger('every multiple of 250 h of engine')).toMatchObject({ kind: 'marks', amount: { meter: 'engine', ticks: 250 * h } });
    expect(trigger('every month on day 15, day 30')).toMatchObject({
      kind: 'calendar-marks',
      months: 1,
      days: [{ day: 15 }, { day: 30 }],
      skip: false,
    });
    expect(trigger('every 2 years on 1 November')).toMatchObject({ kind: 'calendar-marks', months: 24, days: [{ day: 1, month: 11 }] });
    expect(trigger('every year in April')).toMatchObject({ kind: 'calendar-window', months: 12, month: 4 });
    expect(trigger('every more than 1 h of engine')).toMatchObject({ strict: true });
  });

  test('work time, in a duty', () => {
    expect(trigger('every 30 min of work in dusty', 'duty dusty "Dusty"')).toMatchObject({
      amount: { on: 'work', duty: 'dusty', ticks: 18000 },
    });
  });
});
