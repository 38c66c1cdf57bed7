import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { assess } from '../../src/assess/assess.js';
import type { Entry } from '../../src/history/entry.js';
import { readTimeline } from '../../src/history/read-timeline.js';
import { ticksOf, unitsOf } from '../../src/values/ticks.js';
import type { Day, Moment } from '../../src/values/moment.js';
import { nextChange } from '../../src/watch/next-change.js';
import { nextMeters, withReading } from '../../src/watch/next-meters.js';
import { nextMoment } from '../../src/watch/next-moment.js';
import { turnBetween } from '../../src/watch/turning.js';
import { anyCase } from '../properties/situation.js';
import { compileText } from '../support/compile-text.js';
import { done, history, meters, moment, reads } from '../support/history.js';

const HORIZON = 60;

function minuteOf({ day, minute }: Moment): number {
  return day * 1440 + (minute ?? 0);
}

/** A moment at a share of the way, and the last one before the end. */
function between(from: Moment, to: number, shares: readonly number[]): readonly Moment[] {
  const step = from.minute === null ? 1440 : 1;
  const start = minuteOf(from);
  const steps = Math.round((to - start) / step);
  const counts = [1, steps - 1, ...shares.map((share) => Math.floor(share * steps))].filter((count) => count > 0 && count < steps);
  return counts.map((count) => {
    const at = start + count * step;
    return { day: Math.floor(at / 1440) as Day, minute: from.minute === null ? null : at % 1440 };
  });
}

const shares = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 12, maxLength: 12 });

test('the day of an event that the schedule names is a day on which something turns', () => {
  const graph = compileText(
    'event recall "Recall" on 2026-03-02 task tell "Tell the dealer" on recall task ever "Ever" every 5 days only if recall ever happened',
  );
  const next = nextMoment(graph, history(['2026-01-10', done('ever')]), moment('2026-02-25'));
  expect(next).toMatchObject({ at: moment('2026-03-02'), turn: expect.anything() as object });
});

describe('hours before a start', () => {
  const graph = compileText('task look "Look" within 3 h before each shift');
  const next = (entries: readonly Entry[], now: string, start?: number) =>
    nextMoment(graph, entries, moment(now), {
      intent: { outing: { hours: 8, ...(start === undefined ? {} : { start }) } },
      horizon: 3,
      looks: 200,
    })?.at;

  test('turn when they open', () => {
    expect(next([], '2026-05-01 08:00', 14 * 60)).toEqual(moment('2026-05-01 11:00'));
  });

  test('turn when a doing is too old for work that may begin at any time', () => {
    expect(next(history(['2026-05-01 08:00', done('look')]), '2026-05-01 08:30')).toEqual(moment('2026-05-01 11:01'));
  });

  test('turn again on the next day, when the same is intended anew', () => {
    expect(next(history(['2026-05-01 12:00', done('look')]), '2026-05-01 13:00', 14 * 60)).toEqual(moment('2026-05-02 00:00'));
  });
});

describe('the next moment', () => {
  test('is the first at which anything changes', () => {
    let found = 0;
    fc.assert(
      fc.property(anyCase, shares, ({ graph, entries, now, options }, at) => {
        const look = (when: Moment) => assess(graph, entries, when, options);
        const before = look(now);
        const next = nextMoment(graph, entries, now, { ...options, horizon: HORIZON, looks: 200 });
        if (next !== null) {
          if (next.turn !== null) expect(turnBetween(before, look(next.at))).toEqual(next.turn);
          found += next.turn === null ? 0 : 1;
        }
        const end = next === null ? (now.day + HORIZON) * 1440 : minuteOf(next.at);
        for (const when of between(now, end, at)) expect({ when, turn: turnBetween(before, look(when)) }).toEqual({ when, turn: null });
      }),
      { numRuns: 50 },
    );
    expect(found).toBeGreaterThan(15);
  });

  const graph = compileText(`meter engine "Hour meter" counts h
gauge tyre "Tyre gauge" reads kPa fresh for 30 days
task wash "Wash" every 7 days allow 2 days late
task tyres "Tyres" when tyre below 200 kPa
task roof "Roof" every 1 months only if date from 1 November to 15 February
`);

  test.each([
    ['2026-05-02', '2026-05-08', 'wash', 'due'],
    ['2026-05-08', '2026-05-11', 'wash', 'overdue'],
  ])('after %s is %s, when %s is %s', (now, at, task, state) => {
    const entries = history(['2026-05-01', done('wash')], ['2026-05-01', reads({ tyre: 250 })]);
    const next = nextMoment(graph, entries, moment(now));
    expect(next?.at).toEqual(moment(at));
    expect(next?.turn?.tasks.map((each) => [each.task, each.after.state])).toEqual([[task, state]]);
  });

  test('is when a reading grows too old, to the minute that the day begins', () => {
    const entries = history(['2026-05-29', done('wash')], ['2026-05-01', reads({ tyre: 250 })], ['2026-05-20', done('roof')]);
    const next = nextMoment(graph, entries, moment('2026-05-31 08:00'));
    expect(next?.at).toEqual(moment('2026-06-01 00:00'));
    expect(next?.turn?.tasks.map((each) => [each.task, each.after.state])).toEqual([['tyres', 'unknown']]);
  });

  test('is nothing, where nothing can change', () => {
    expect(nextMoment(compileText('meter engine "H" counts h\ntask oil "Oil" every 100 h of engine'), [], moment('2026-05-01'))).toBeNull();
  });
});

describe('while an outing is under way', () => {
  const under = history(
    ['2026-05-01', done('pins', { engine: 100 })],
    ['2026-05-11 08:00', { kind: 'outing', duties: [{ duty: 'dusty' }] }],
  );
  const next = (text: string) => nextMoment(compileText(`${text}\n  lead 10 min`), under, moment('2026-05-11 08:30'))?.at;

  test('a meter that counts from outings comes to a limit by the clock', () => {
    const out = 'meter engine "H" counts h\nduty dusty "Dusty"\nmeter out "Out" counts h from outings\n';
    expect(next(`${out}task pins "Pins" every 2 h of out`)).toEqual(moment('2026-05-11 09:50'));
    expect(next(`${out}task pins "Pins" when out above 1 h\n  every 9 h of out`)).toEqual(moment('2026-05-11 09:01'));
  });

  test('and so does a mix of duties, though no reading covers it', () => {
    const mix = 'meter engine "H" counts h\nduty dusty "Dusty"\ntask pins "Pins" every 100 h of engine\n  in dusty every 2 h of engine';
    expect(next(mix)).toEqual(moment('2026-05-11 10:00'));
  });
});

describe('the next value of a meter', () => {
  test('is the first at which anything changes', () => {
    let found = 0;
    fc.assert(
      fc.property(anyCase, shares, ({ graph, entries, now, options }, at) => {
        for (const next of nextMeters(graph, entries, now, { ...options, looks: 200 })) {
          const last = readTimeline(entries, graph, now).meters.get(next.meter)?.points.at(-1);
          if (last === undefined) throw new Error('a meter that was never read');
          const offset = last.total - ticksOf(last.shown);
          const read = (ticks: number) => assess(graph, withReading(entries, now, next.meter, unitsOf(ticks - offset)), now, options);
          const before = read(last.total);
          expect(turnBetween(before, read(next.ticks))).toEqual(next.turn);
          found += 1;
          const values = [next.ticks - 1, ...at.map((share) => Math.floor(last.total + share * (next.ticks - 1 - last.total)))];
          for (const ticks of values.filter((each) => each > last.total))
            expect({ ticks, turn: turnBetween(before, read(ticks)) }).toEqual({ ticks, turn: null });
        }
      }),
      { numRuns: 30 },
    );
    expect(found).toBeGreaterThan(5);
  });

  test('is the exact due point of the limit that comes first, on the dial that is in place', () => {
    const graph = compileText('meter engine "Hour meter" counts h\ntask oil "Oil" every 100 h of engine lead 5 h allow 10 h late');
    const entries: readonly Entry[] = history(
      ['2026-01-01', done('oil', { engine: 1200 })],
      ['2026-02-01', { kind: 'meter-replaced', meter: 'engine', final: 1250, initial: 0 }],
      ['2026-03-01', meters({ engine: 46.5 })],
    );
    expect(nextChange(graph, entries, moment('2026-03-02')).meters.map(({ shown, ticks }) => [shown, ticks])).toEqual([[50, 46_800_000]]);
  });
});
