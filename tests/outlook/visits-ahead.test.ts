import { expect, test } from 'vitest';
import { assessTimeline } from '../../src/assess/assess.js';
import type { Entry } from '../../src/history/entry.js';
import { readTimeline } from '../../src/history/read-timeline.js';
import { openings } from '../../src/outlook/openings.js';
import { visitsAhead } from '../../src/outlook/visits-ahead.js';
import { yearAhead } from '../../src/outlook/year-ahead.js';
import { formatDate } from '../../src/values/civil.js';
import { compileText } from '../support/compile-text.js';
import { moment } from '../support/history.js';

const graph = compileText(`
  position engine stopped, running
  position loader lowered, raised aloft, blocked
  position panel fitted, off
  at rest engine stopped, loader lowered, panel fitted
  step start "Start" engine stopped to running back "Stop" takes 1 min
  step raise "Raise" loader lowered to raised while engine running back "Lower" takes 1 min
  step block "Block" loader raised to blocked while engine stopped back "Unblock" takes 3 min
  step take-panel "Panel off" panel fitted to off while loader blocked back "Panel on" takes 2 min
  supply oil "Oil" in L
  task filter "Filter" every 6 months with panel off takes 10 min uses 1 L oil
  task belt "Belt" every 200 days with panel off, engine stopped takes 5 min uses 0.5 L oil needs "Spanner"
  task look "Look" every 150 days takes 1 min
`);

test('the steps that a task needs, and those that they need in turn', () => {
  const found = openings(graph);
  expect(found.of.get('belt')).toEqual(['block', 'raise', 'start', 'take-panel']);
  expect(found.of.get('look')).toEqual([]);
  expect(found.minutes.get('block')).toBe(6);
});

test('tasks that open the same things up are done together, with what they take less the shelf', () => {
  const now = moment('2026-01-01');
  const entries: Entry[] = [{ kind: 'done', id: 'd', on: '2026-01-01', tasks: ['filter', 'belt', 'look'] }];
  const timeline = readTimeline(entries, graph, now);
  const ahead = yearAhead(graph, timeline, assessTimeline(graph, timeline, now));
  const found = visitsAhead(graph, ahead, { shelf: new Map([['oil', 1]]) });
  expect(found.visits.map(({ day, tasks }) => [formatDate(day), tasks])).toEqual([
    ['2026-05-31', ['look']],
    ['2026-07-01', ['filter', 'belt']],
  ]);
  expect(found).toMatchObject({ opening: 2 + 2 + 6 + 4, thrownAway: 19, proved: true });
  expect(found.takes.supplies).toMatchObject([{ supply: 'oil', needed: 1.5, missing: 0.5 }]);
  expect(found.visits[1]?.takes).toMatchObject({ minutes: 15, tools: ['Spanner'] });
  expect(visitsAhead(graph, ahead, { pull: 0.2 }).visits).toHaveLength(2);
  expect(visitsAhead(graph, ahead, { pull: 0.3 }).visits).toHaveLength(1);
  expect(visitsAhead(graph, ahead, { without: new Set(['look', 'belt', 'filter']) }).visits).toEqual([]);
});
