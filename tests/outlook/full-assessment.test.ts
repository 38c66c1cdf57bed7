/**
 * Following a task along a simulated course of use says the same days as asking the whole assessment every day along it, with the meter read and the
 * work written down: random rules, random courses.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { assessTimeline } from '../../src/assess/assess.js';
import type { Observation } from '../../src/assess/assessment.js';
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
/** So many times, of which some have to be so far apart. */
const several = fc
  .tuple(
    fc.oneof(hours, calendar, fc.constantFrom('calendar week', 'calendar month', 'calendar quarter')),
    fc.integer({ min: 2, max: 3 }),
    fc.constantFrom('', ', 5 days apart', ', 3 weeks apart', ', 1 month apart'),
  )
  .map(([span, times, apart]) => `${span} ${times} times${apart}`);
const severalRule = fc.oneof(
  several.map((one) => `every ${one}`),
  fc.tuple(several, fc.oneof(limit, several), fc.constantFrom('first', 'last')).map(([a, b, w]) => `every ${a} or ${b}, whichever ${w}`),
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
    'every month on the first Monday',
    'every 2 months on the last Friday allow 3 days early',
    'every 3 weeks on Tuesday and Sunday from 2026-08-04 allow 2 days early',
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

/** What is on record before the first day: when the machine entered service (`null`: nobody knows) and each doing of all tasks, in days back. */
interface Before {
  readonly inService: number | null;
  readonly done: readonly number[];
}

const TODAY: Before = { inService: 0, done: [0] };
const before: fc.Arbitrary<Before> = fc.record({
  inService: fc.constantFrom(null, 300, 100),
  done: fc.uniqueArray(fc.integer({ min: 0, max: 99 }), { maxLength: 3 }),
});

function known(graph: RuleGraph, today: Day, { inService, done }: Before): Entry[] {
  const meters = (back: number) => ({ engine: START / 36_000 - back / 10 });
  const on = (back: number): string => formatDate(addDays(today, -back));
  const tasks = graph.tasks.map(({ id }) => id);
  const doings = done.map((back, i): Entry => ({ kind: 'done', id: `b${i}`, on: on(back), tasks, meters: meters(back) }));
  const read: Entry = { kind: 'reading', id: 'a', on: on(0), meters: meters(0) };
  if (inService === null) return [read, ...doings];
  return [{ kind: 'machine', id: 'm', on: on(inService), inService: on(inService), meters: meters(inService) }, read, ...doings];
}

function assessedOn(graph: RuleGraph, entries: readonly Entry[], day: Day): ReturnType<typeof assessTimeline> {
  const now = { day, minute: null };
  return assessTimeline(graph, readTimeline(entries, graph, now), now);
}

/** Task → the days on which it is done, if each day is assessed in full and what is due is done; on the first day what is unrecorded too. */
function dayByDay(graph: RuleGraph, futures: UseFutures, to: Day, record: Before): ReadonlyMap<string, readonly number[]> {
  const entries = known(graph, futures.start, record);
  const done = new Map<string, number[]>(graph.tasks.map(({ id }) => [id, []]));
  for (let day = futures.start; day <= to; day = addDays(day, 1)) {
    const meters = { engine: totalOn(futures, 0, day) / 36_000 };
    const doing = (tasks: string[]): Entry => ({ kind: 'done', id: `s${day}`, on: formatDate(day), tasks, meters });
    entries.push({ kind: 'reading', id: `r${day}`, on: formatDate(day), meters });
    const stands = assessedOn(graph, entries, day);
    const isUp = (state: string | undefined): boolean => state === 'due' || state === 'overdue';
    const due = stands.tasks
      .filter(({ state }) => isUp(state) || (state === 'unrecorded' && day === futures.start))
      .map(({ task }) => task);
    const isFirst = day === futures.start;
    const after = isFirst || due.length === 0 ? null : assessedOn(graph, [...entries, doing(due)], day);
    const tasks = due.filter((task) => after === null || isOfUse(graph, task, stands.record[task] ?? [], after.record[task] ?? [], day));
    tasks.forEach((task) => done.get(task)?.push(day));
    if (tasks.length > 0) entries.push(doing(tasks));
  }
  return done;
}

/** Whether some rule asks for the task on a day, and takes it for done if it is done then: a doing that comes too soon is none. */
function isOfUse(graph: RuleGraph, task: string, stands: readonly Observation[], after: readonly Observation[], day: Day): boolean {
  const observed = (record: readonly Observation[], id: number) => record.find(({ node }) => node === id);
  const asks = (id: number | undefined): boolean => {
    const node = id === undefined ? undefined : graph.nodes[id];
    if (node?.kind === 'whichever') return node.mode === 'first' ? node.parts.some(asks) : node.parts.every(asks);
    if (node?.kind === 'first') return true;
    const state = observed(stands, node?.id ?? -1)?.state;
    const note = observed(after, node?.id ?? -1)?.note;
    const tooSoon = note?.is === 'doings-counted' || note?.is === 'times-done' ? (note.tooSoon ?? []) : [];
    return (state === 'due' || state === 'overdue') && !tooSoon.some(({ when }) => when.day === day);
  };
  return asks(graph.tasks.find(({ id }) => id === task)?.trigger);
}

/** Task → the days that the pass says. */
function followed(graph: RuleGraph, futures: UseFutures, to: Day, record = TODAY): ReadonlyMap<string, readonly (number | null)[]> {
  const ahead = tasksAhead(
    graph,
    assessedOn(graph, known(graph, futures.start, record), futures.start),
    new Map([['engine', futures]]),
    to,
  );
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
        const [said, full] = [followed(graph, futures, to), dayByDay(graph, futures, to, TODAY)];
        rules.forEach((text, i) => expect(said.get(`t${i}`), text).toEqual(full.get(`t${i}`)));
      }),
      { numRuns: RUNS },
    );
  });
  test('also by rules of several doings, some of them so far apart, whatever is on record', () => {
    fc.assert(
      fc.property(fc.array(severalRule, { minLength: 8, maxLength: 8 }), starts, uses, before, (rules, start, weekly, record) => {
        const graph = compileText(`meter engine "Hours" counts h\n${rules.map((text, i) => `task t${i} "T" ${text}`).join('\n')}`);
        const futures = course(start, [weekly]);
        const to = addDays(start, 7 * WEEKS - 1);
        const [said, full] = [followed(graph, futures, to, record), dayByDay(graph, futures, to, record)];
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
            assessedOn(graph, known(graph, futures.start, TODAY), futures.start),
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
