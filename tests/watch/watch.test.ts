import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { assess } from '../../src/assess/assess.js';
import type { Assessment } from '../../src/assess/assessment.js';
import type { Moment } from '../../src/values/moment.js';
import { watch } from '../../src/watch/watch.js';
import { now as anyMoment } from '../properties/random-history.js';
import { anyCase } from '../properties/situation.js';
import { compileText } from '../support/compile-text.js';
import { done, history, meters, moment } from '../support/history.js';

/** Steps count the work of one look, which is what a watch saves. */
function withoutSteps(assessment: Assessment): object {
  return { ...assessment, steps: 0 };
}

describe('a watch', () => {
  test('equals a full assessment after each entry and each look at another time', () => {
    let [spared, all] = [0, 0];
    fc.assert(
      fc.property(anyCase, fc.array(fc.oneof(fc.constant('entry' as const), anyMoment), { minLength: 1, maxLength: 12 }), (each, moves) => {
        const start = Math.floor(each.entries.length / 2);
        let [entries, now]: [typeof each.entries, Moment] = [each.entries.slice(0, start), each.now];
        const machine = watch(each.graph, entries, now, each.options);
        for (const move of moves) {
          const next = each.entries[entries.length];
          if (move === 'entry' && next === undefined) continue;
          const before = machine.assessment;
          if (move === 'entry' && next !== undefined) entries = [...entries, next];
          else if (move !== 'entry') now = move;
          const { assessment, changed, again } = move === 'entry' && next !== undefined ? machine.add(next) : machine.at(now);
          expect(withoutSteps(assessment)).toEqual(withoutSteps(assess(each.graph, entries, now, each.options)));
          const differ = assessment.tasks.filter(
            (task, i) => task.state !== before.tasks[i]?.state || task.resting !== before.tasks[i]?.resting,
          );
          expect(changed.map(({ task }) => task)).toEqual(differ.map(({ task }) => task));
          expect(changed.filter(({ why }) => why.entries.length === 0 && !why.time)).toEqual([]);
          spared += assessment.tasks.length - again.length;
          all += assessment.tasks.length;
        }
      }),
      { numRuns: 80 },
    );
    // It would also hold of a watch that does everything anew.
    expect(spared / all).toBeGreaterThan(0.1);
  });

  const graph = compileText(`meter engine "Hour meter" counts h
meter shaft "Shaft" counts h
task oil "Oil" every 100 h of engine
task grease "Grease" every 20 h of shaft
task wash "Wash" every 7 days
`);
  const entries = history(
    ['2026-05-01', meters({ engine: 1290, shaft: 500 })],
    ['2026-04-01', done('oil', { engine: 1200 })],
    ['2026-05-01', done(['grease', 'wash'], { shaft: 500 })],
  );

  test('says which tasks changed and why, and works out no others', () => {
    const machine = watch(graph, entries, moment('2026-05-02'));
    const step = machine.add({ kind: 'reading', id: 'new', on: '2026-05-02', meters: { engine: 1305 } });
    expect(step.again).toEqual(['oil']);
    expect(step.changed.map(({ task, before, after, why }) => [task, before.state, after.state, why])).toEqual([
      ['oil', 'coming-up', 'overdue', { entries: ['new'], time: false }],
    ]);
  });

  test('says that it is time that changed a task', () => {
    const machine = watch(graph, entries, moment('2026-05-02'));
    const step = machine.at(moment('2026-05-09'));
    expect(step.again).toEqual(['wash']);
    expect(step.changed.map(({ task, after, why }) => [task, after.state, why])).toEqual([
      ['wash', 'overdue', { entries: [], time: true }],
    ]);
  });

  test('says which entry it was that came to count as time passed', () => {
    const later = history(['2026-05-04', meters({ engine: 1300 })]).map((entry) => ({ ...entry, id: 'ahead' }));
    const machine = watch(graph, [...entries, ...later], moment('2026-05-02'));
    expect(machine.at(moment('2026-05-04')).changed.map(({ task, why }) => [task, why])).toEqual([
      ['oil', { entries: ['ahead'], time: false }],
    ]);
  });

  test('traces a change through a void to what it took away', () => {
    const machine = watch(graph, entries, moment('2026-05-02'));
    const step = machine.add({ kind: 'void', id: 'oops', on: '2026-05-02', entry: 'e2' });
    expect(step.changed.map(({ task, after, why }) => [task, after.state, why.entries])).toEqual([['oil', 'unrecorded', ['oops']]]);
  });
});
