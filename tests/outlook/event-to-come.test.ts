import { describe, expect, test } from 'vitest';
import { assess } from '../../src/assess/assess.js';
import type { Entry } from '../../src/history/entry.js';
import { readTimeline } from '../../src/history/read-timeline.js';
import type { TaskAhead } from '../../src/outlook/year-ahead.js';
import { yearAhead } from '../../src/outlook/year-ahead.js';
import { addDays } from '../../src/values/calendar.js';
import { formatDate } from '../../src/values/civil.js';
import type { Day } from '../../src/values/moment.js';
import { compileText } from '../support/compile-text.js';
import { moment } from '../support/history.js';

const graph = compileText(`
meter engine "Hours" counts h
event directive "The directive" on 2026-09-01
event noted "Noted by somebody"
task at-once "At once" on directive
task within-days "Within days" within 30 days after directive
task within-hours "Within hours" within 10 h of engine after directive
task stages "Stages" at 10 h, 30 h of engine after directive
task first-months "First, then months" first at 1 month after directive every 4 months
task first-hours "First, then hours" first at 10 h of engine after directive every 200 h of engine
task of-work "Of work" within 2 h of work after directive
task waiting "Waiting" on noted
`);

/** Half an hour a day, read every five days up to now; the two that come round besides were done on the day of the last reading. */
const now = moment('2026-07-20');
const readings = Array.from({ length: 41 }, (_, index): Entry => ({
  kind: 'reading',
  id: `r${String(index).padStart(2, '0')}`,
  on: formatDate(addDays(now.day, -200 + 5 * index)),
  meters: { engine: 100 + 2.5 * index },
}));
const begun: readonly Entry[] = [
  { kind: 'machine', id: 'm', on: '2025-01-01', inService: '2025-01-01' },
  ...readings,
  { kind: 'done', id: 'd', on: formatDate(now.day), tasks: ['first-months', 'first-hours'], meters: { engine: 200 } },
];

function ahead(entries: readonly Entry[], at = now): (task: string) => TaskAhead {
  const timeline = readTimeline(entries, graph, at);
  const { tasks } = yearAhead(graph, timeline, assess(graph, entries, at, {}));
  return (task) => {
    const found = tasks.find((each) => each.task === task);
    if (found === undefined) throw new Error(`no ${task}`);
    return found;
  };
}

function likely({ next }: TaskAhead): string | null {
  return next?.likely == null ? null : formatDate(next.likely);
}

function stateOn(entries: readonly Entry[], task: string, day: Day): string | undefined {
  return assess(graph, entries, { day, minute: null }, {}).tasks.find((each) => each.task === task)?.state;
}

describe('what comes after an event of a day that is still to come', () => {
  test.each([
    ['at-once', '2026-09-01'],
    ['within-days', '2026-10-01'],
    ['first-months', '2026-10-01'],
    ['of-work', null],
    ['waiting', null],
  ])('%s is foreseen for %s', (task, day) => expect(likely(ahead(begun)(task))).toBe(day));

  test.each(['within-hours', 'stages', 'first-hours'])('%s is foreseen for twenty days after it: half an hour a day makes 10 h', (task) => {
    // Courses of use are in whole ticks a day, so that the last of them may come a day later.
    expect(['2026-09-21', '2026-09-22']).toContain(likely(ahead(begun)(task)));
  });

  test('by the calendar that is the day on which it falls due, and not the day before', () => {
    for (const task of ['at-once', 'within-days', 'first-months']) {
      const { next } = ahead(begun)(task);
      const day = next?.likely ?? now.day;
      expect([stateOn(begun, task, day), stateOn(begun, task, addDays(day, -1)) === 'due'], task).toEqual(['due', false]);
    }
  });

  test('what is done before is asked for again; what is done since goes on from there', () => {
    expect(ahead(begun)('at-once').later).toEqual([]);
    expect(ahead(begun)('first-months').later.map((range) => range.likely && formatDate(range.likely))).toEqual([
      '2027-02-01',
      '2027-06-01',
    ]);
    // Ten and thirty hours after it, and then no more.
    const [second, ...more] = ahead(begun)('stages').later;
    expect(['2026-10-31', '2026-11-01']).toContain(second?.likely == null ? null : formatDate(second.likely));
    expect(more).toEqual([]);
    const early: readonly Entry[] = [...begun, { kind: 'done', id: 'e', on: '2026-07-21', tasks: ['at-once'] }];
    expect(likely(ahead(early, moment('2026-07-22'))('at-once'))).toBe('2026-09-01');
  });

  test('where what goes on comes first it goes first, and the event brings the next', () => {
    const late = begun.map((entry) => (entry.id === 'd' ? { ...entry, on: '2026-04-10', meters: { engine: 149.5 } } : entry));
    const months = ahead(late)('first-months');
    expect([likely(months), months.later[0]?.likely]).toEqual(['2026-08-10', moment('2026-10-01').day]);
  });
});
