/**
 * Following a task along a simulated course of use says the same days as asking the whole assessment every day along it, with the meter read and the
 * work written down: random rules, random courses.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { assessTimeline } from '../../src/assess/assess.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';
import type { Entry } from '../../src/history/entry.js';
import { readTimeline } from '../../src/history/read-timeline.js';
import { totalOn } from '../../src/outlook/course-days.js';
import { rangeOfDays } from '../../src/outlook/forecast.js';
import type { UseFutures } from '../../src/outlook/use-futures.js';
import { tasksAhead } from '../../src/outlook/year-ahead.js';
import { addDays } from '../../src/values/calendar.js';
import { formatDate } from '../../src/values/civil.js';
import type { Day } from '../../src/values/moment.js';
import { compileText } from '../support/compile-text.js';
import { moment } from '../support/history.js';

const RUNS = Number(process.env['DUEWRIGHT_RUNS'] ?? 8);
const WEEKS = 26;

const hours = fc.integer({ min: 1, max: 60 }).map((h) => `${h} h of engine`);
const months = fc.integer({ min: 1, max: 4 });
const calendar = fc.oneof(
  months.map((n) => `${n} month${n > 1 ? 's' : ''}`),
  months.map((n) => `${n} calendar months`),
  months.map((n) => `${n} months less 2 days`),
  fc.integer({ min: 1, max: 9 }).map((n) => `${n} week${n > 1 ? 's' : ''}`),
);
const more = (span: fc.Arbitrary<string>): fc.Arbitrary<string> =>
  fc.tuple(fc.boolean(), span).map(([strictly, text]) => (strictly ? `more than ${text}` : text));
const limit = more(fc.oneof(hours, calendar));
const plan = fc.oneof(
  limit.map((one) => `every ${one}`),
  fc.tuple(limit, limit, fc.constantFrom('first', 'last')).map(([a, b, which]) => `every ${a} or ${b}, whichever ${which}`),
  fc.tuple(limit, limit, limit).map(([a, b, c]) => `every ${a} or (${b} or ${c}, whichever first), whichever last`),
);
const count = fc.constantFrom('', ' count from due if late', ' count from due within the allowance allow 20 % early, 25 % late');
const rule = fc.oneof(
  { weight: 4, arbitrary: fc.tuple(plan, count).map((parts) => parts.join('')) },
  fc
    .tuple(fc.integer({ min: 3, max: 40 }), fc.constantFrom('', ' allow 2 h early'))
    .map(([h, early]) => `every multiple of ${h} h of engine${early}`),
  fc.constantFrom(
    'every month on day 31',
    'every month on day 31 where it exists',
    'every month on day 15 allow 5 days early',
    'every year in September',
    'every year on 1 November',
  ),
  fc
    .tuple(fc.integer({ min: 1, max: 20 }), fc.integer({ min: 1, max: 30 }), hours)
    .map(([a, b, h]) => `first at ${a} h, ${a + b} h of engine every ${h}`),
);

/** Ends of long and short months, and one in the middle. */
const starts = fc.constantFrom('2026-07-20', '2026-08-31', '2026-10-30', '2027-12-31', '2028-01-29').map((text) => moment(text).day);

/** Ticks a day in each week, standing weeks among them. */
const uses = fc.array(fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 200_000 })), { minLength: WEEKS, maxLength: WEEKS });

const START = 100 * 36_000;

function course(start: Day, weekly: readonly (readonly number[])[]): UseFutures {
  const totals = new Float64Array(weekly.length * (WEEKS + 1));
  weekly.forEach((days, f) => {
    totals[f * (WEEKS + 1)] = START;
    days.forEach((ticks, week) => (totals[f * (WEEKS + 1) + week + 1] = (totals[f * (WEEKS + 1) + week] ?? 0) + 7 * ticks));
  });
  return { start, count: weekly.length, weeks: WEEKS, totals, readings: 9, weeksOnRecord: 9, method: 'as given' };
}

/** The machine entered service today, and everything was done. */
function known(graph: RuleGraph, today: Day): Entry[] {
  const on = formatDate(today);
  const start: Entry = { kind: 'machine', id: 'a', on, inService: on, meters: { engine: START / 36_000 } };
  return [start, { kind: 'done', id: 'b', on, tasks: graph.tasks.map(({ id }) => id), meters: { engine: START / 36_000 } }];
}

function assessedOn(graph: RuleGraph, entries: readonly Entry[], day: Day): ReturnType<typeof assessTimeline> {
  const now = { day, minute: null };
  return assessTimeline(graph, readTimeline(entries, graph, now), now);
}

/** Task → the days on which it is done, if each day is assessed in full and what is due is done. */
function dayByDay(graph: RuleGraph, futures: UseFutures, f: number, to: Day): ReadonlyMap<string, readonly number[]> {
  const entries = known(graph, futures.start);
  const done = new Map<string, number[]>(graph.tasks.map(({ id }) => [id, []]));
  for (let day = futures.start; day <= to; day = addDays(day, 1)) {
    const meters = { engine: totalOn(futures, f, day) / 36_000 };
    entries.push({ kind: 'reading', id: `r${day}`, on: formatDate(day), meters });
    const due = assessedOn(graph, entries, day).tasks.filter(({ state }) => state === 'due' || state === 'overdue');
    const tasks = due.map(({ task }) => task);
    tasks.forEach((task) => done.get(task)?.push(day));
    if (tasks.length > 0) entries.push({ kind: 'done', id: `s${day}`, on: formatDate(day), tasks, meters });
  }
  return done;
}

/** Task → the days that the pass says. */
function followed(graph: RuleGraph, futures: UseFutures, to: Day): ReadonlyMap<string, readonly (number | null)[]> {
  const ahead = tasksAhead(graph, assessedOn(graph, known(graph, futures.start), futures.start), new Map([['engine', futures]]), to);
  return new Map(ahead.map(({ task, next, later }) => [task, [next, ...later].flatMap((range) => (range === null ? [] : [range.likely]))]));
}

function one(futures: UseFutures, f: number): UseFutures {
  const row = futures.weeks + 1;
  return { ...futures, count: 1, totals: futures.totals.slice(f * row, (f + 1) * row) };
}

describe('following along a course', () => {
  test('says the days that a full assessment every day says', () => {
    fc.assert(
      fc.property(fc.array(rule, { minLength: 8, maxLength: 8 }), starts, uses, (rules, start, weekly) => {
        const graph = compileText(`meter engine "Hours" counts h\n${rules.map((text, i) => `task t${i} "T" ${text}`).join('\n')}`);
        const futures = course(start, [weekly]);
        const to = addDays(start, 7 * WEEKS - 1);
        const [said, full] = [followed(graph, futures, to), dayByDay(graph, futures, 0, to)];
        rules.forEach((text, i) => expect(said.get(`t${i}`), text).toEqual(full.get(`t${i}`)));
      }),
      { numRuns: RUNS },
    );
  });
  test('along many at once gives the ranges of following each alone', () => {
    fc.assert(
      fc.property(
        fc.array(rule, { minLength: 4, maxLength: 4 }),
        starts,
        fc.array(uses, { minLength: 21, maxLength: 21 }),
        (rules, start, weekly) => {
          const graph = compileText(`meter engine "Hours" counts h\n${rules.map((text, i) => `task t${i} "T" ${text}`).join('\n')}`);
          const futures = course(start, weekly);
          const to = addDays(start, 100);
          const alone = weekly.map((_, f) => followed(graph, one(futures, f), to));
          const ahead = tasksAhead(
            graph,
            assessedOn(graph, known(graph, futures.start), futures.start),
            new Map([['engine', futures]]),
            to,
          );
          for (const { task, next, later, foreseen } of ahead) {
            const rounds = [next, ...later].map((range) => range && { ...range, level: 0.8 });
            const most = Math.max(1, ...alone.map((days) => days.get(task)?.length ?? 0));
            const each = Array.from({ length: most }, (_, round) =>
              rangeOfDays(Float64Array.from(alone, (days) => days.get(task)?.[round] ?? Infinity)),
            );
            if (foreseen !== 'now') expect(rounds).toEqual([each[0], ...each.slice(1).filter((range) => range !== null)]);
          }
        },
      ),
      { numRuns: RUNS },
    );
  });
});
