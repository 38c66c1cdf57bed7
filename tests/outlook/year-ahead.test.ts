import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { assessTimeline } from '../../src/assess/assess.js';
import type { Entry } from '../../src/history/entry.js';
import { readTimeline } from '../../src/history/read-timeline.js';
import type { Timeline } from '../../src/history/timeline.js';
import type { TaskAhead } from '../../src/outlook/year-ahead.js';
import { futuresOf, tasksAhead, yearAhead } from '../../src/outlook/year-ahead.js';
import { addDays } from '../../src/values/calendar.js';
import { civilOf, dayOf, formatDate } from '../../src/values/civil.js';
import type { Day } from '../../src/values/moment.js';
import { compileText } from '../support/compile-text.js';
import { moment } from '../support/history.js';

const graph = compileText(
  `
  meter engine "Hours" counts h
  meter shaft "Shaft hours" counts h
  duty dusty "Dust"
  task hours-first "Hours first" every 100 h of engine or 12 months, whichever first
  task months-first "Months first" every 900 h of engine or 3 months, whichever first
  task last "Both" every 20 h of engine or 2 months, whichever last
  task weekly "Weekly" every 1 week
  task marks "Marks" every multiple of 50 h
  task april "In April" every year in April
  task dates "On dates" every month on day 31
  task daily "Daily" before each day's work
  task shaft-only "Shaft" every 50 h of shaft
  task never-done "Never done" every 100 h of engine
  task once "Once" first at 10 h of engine
`.replaceAll('every multiple of 50 h', 'every multiple of 50 h of engine'),
);

/** Half an hour a day in the engine's meter, read every five days for 200 days up to now; all tasks done at the last reading. */
const now = moment('2026-07-20');
const entries: Entry[] = [
  { kind: 'machine', id: 'm', on: '2025-01-01', inService: '2025-01-01' },
  ...Array.from({ length: 41 }, (_, index): Entry => ({
    kind: 'reading',
    id: `r${String(index).padStart(2, '0')}`,
    on: formatDate(addDays(now.day, -200 + 5 * index)),
    meters: { engine: 100 + 2.5 * index },
  })),
  {
    kind: 'done',
    id: 'd',
    on: formatDate(now.day),
    tasks: graph.tasks.map(({ id }) => id).filter((id) => id !== 'never-done'),
    meters: { engine: 200 },
  },
];

function ahead(days = 365): (task: string) => TaskAhead {
  const timeline = readTimeline(entries, graph, now);
  const year = yearAhead(graph, timeline, assessTimeline(graph, timeline, now), { days });
  return (task) => year.tasks.find((each) => each.task === task) ?? fail(task);
}

function fail(task: string): never {
  throw new Error(`no ${task}`);
}

const from = (day: Day | null | undefined): number => (day ?? Number.NaN) - now.day;

describe('the year ahead', () => {
  const of = ahead();
  test('hours decide where they come first, with a range and what stands behind it', () => {
    const task = of('hours-first');
    expect(task).toMatchObject({ foreseen: 'simulated', state: 'clear', n: 41, unforeseen: [], readUntil: now.day });
    expect(Math.abs(from(task.next?.likely) - 200)).toBeLessThan(10);
    expect(from(task.next?.early)).toBeLessThan(from(task.next?.likely));
    expect(from(task.next?.late)).toBeGreaterThan(from(task.next?.likely));
    const node = graph.nodes[task.decides[0]?.node ?? -1];
    expect(node).toMatchObject({ kind: 'interval', amount: { on: 'meter' } });
    expect(task.decides[0]?.share).toBeGreaterThan(0.9);
  });
  test('the calendar decides where it comes first', () => {
    const task = of('months-first');
    expect(formatDate(task.next?.likely ?? (0 as Day))).toBe('2026-10-20');
    expect(task.decides).toHaveLength(1);
    expect(task.later.map(({ likely }) => formatDate(likely ?? (0 as Day)))).toEqual(['2027-01-20', '2027-04-20', '2027-07-20']);
  });
  test('whichever last waits for both', () => {
    expect(formatDate(of('last').next?.likely ?? (0 as Day))).toBe('2026-09-20');
  });
  test('weekly ones come round 52 times', () => {
    const task = of('weekly');
    expect(task).toMatchObject({ foreseen: 'calendar', method: 'by the calendar' });
    expect(task.next).toEqual({ early: now.day + 7, likely: now.day + 7, late: now.day + 7, level: 1 });
    expect(task.later).toHaveLength(51);
  });
  test('marks are every multiple', () => {
    const likely = [of('marks').next, ...of('marks').later].map((range) => from(range?.likely));
    expect(likely.slice(0, 3).map((days) => Math.round(days / 25))).toEqual([4, 8, 12]);
  });
  test('days of the year and of the month', () => {
    expect(formatDate(of('april').next?.likely ?? (0 as Day))).toBe('2027-04-01');
    const dates = [of('dates').next, ...of('dates').later].map((range) => civilOf(range?.likely ?? (0 as Day)).day);
    expect(dates).toEqual([31, 31, 30, 31, 30, 31, 31, 28, 31, 30, 31, 30]);
  });
  test('what has no date says why', () => {
    expect(of('daily')).toMatchObject({ foreseen: 'no-date', next: null, later: [] });
    expect(of('shaft-only').next).toBeNull();
    expect(of('once')).toMatchObject({ next: null });
    expect(of('never-done')).toMatchObject({ foreseen: 'now', next: { early: now.day, late: now.day } });
  });
  test('is the same every time', () => {
    expect(ahead()('hours-first')).toEqual(of('hours-first'));
  });
});

test('a thousand futures × 60 tasks × 2 years in a moment', () => {
  const rules = Array.from(
    { length: 60 },
    (_, index) => `task t${index} "T" every ${40 + 15 * index} h of engine or ${3 + (index % 20)} months, whichever first`,
  );
  const many = compileText(`meter engine "Hours" counts h\n${rules.join('\n')}`);
  const done: Entry = { kind: 'done', id: 'd2', on: formatDate(now.day), tasks: many.tasks.map(({ id }) => id), meters: { engine: 200 } };
  const timeline = readTimeline([...entries, done], many, now);
  const assessment = assessTimeline(many, timeline, now);
  const futures = futuresOf(graph, timeline, now.day, { days: 730, count: 1000 });
  const begin = performance.now();
  const tasks = tasksAhead(many, assessment, futures, addDays(now.day, 730));
  // `npm run bench:futures` measures it against making the futures; the bound here leaves room for a busy machine.
  expect(performance.now() - begin).toBeLessThan(1500);
  expect(tasks.filter(({ next }) => next !== null)).toHaveLength(60);
});

test('an orchard tractor with two years of history', () => {
  const lines = readFileSync(new URL('../../schedules/orchard-tractor.logbook.jsonl', import.meta.url), 'utf8')
    .trim()
    .split('\n');
  const log = lines.map((line) => JSON.parse(line) as Entry);
  const small = compileText(
    'meter engine "Hours" counts h\n meter shaft "Shaft" counts h\n task change-engine-oil "Oil" every 100 h of engine or 12 months, whichever first',
  );
  const at = { day: dayOf('2026-06-15') ?? (0 as Day), minute: null };
  const timeline: Timeline = readTimeline(log, small, at);
  const year = yearAhead(small, timeline, assessTimeline(small, timeline, at));
  expect(year.tasks[0]?.n).toBeGreaterThan(50);
  expect(year.tasks[0]?.next?.early).toBeGreaterThanOrEqual(at.day);
});

test('a rule that waits for a condition brings nothing while the condition does not hold, and goes on while it does', () => {
  const watched = compileText(`
    meter engine "Hours" counts h
    defect crack "Crack" classes small "Small"
    task look "Look" every 6 months while crack is open every 1 week
  `);
  const at = moment('2026-07-20');
  const look: Entry = { kind: 'done', id: 'd', on: '2026-07-20', tasks: ['look'] };
  const rounds = (...more: Entry[]): number => {
    const timeline = readTimeline([look, ...more], watched, at);
    const [only] = yearAhead(watched, timeline, assessTimeline(watched, timeline, at)).tasks;
    return (only?.later.length ?? 0) + (only?.next === null ? 0 : 1);
  };
  expect(rounds()).toBe(2);
  expect(rounds({ kind: 'defect-opened', id: 'c', on: '2026-07-20', defect: 'crack', class: 'small' })).toBe(52);
});

test('what is due now is followed on from today, as if it were done', () => {
  const late = compileText('task look "Look" every 3 months');
  const at = moment('2026-07-20');
  const timeline = readTimeline([{ kind: 'done', id: 'd', on: '2026-01-01', tasks: ['look'] }], late, at);
  const [only] = yearAhead(late, timeline, assessTimeline(late, timeline, at)).tasks;
  expect(only).toMatchObject({ foreseen: 'now', state: 'overdue' });
  expect(only?.later.map(({ likely }) => (likely === null ? '' : formatDate(likely)))).toEqual([
    '2026-10-20',
    '2027-01-20',
    '2027-04-20',
    '2027-07-20',
  ]);
});
