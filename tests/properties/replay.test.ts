/**
 * The five properties that explanations are held to (docs/meaning.md §9), over random schedules and histories.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyChange, justShort } from '../../src/explain/apply-change.js';
import { explain } from '../../src/explain/explain.js';
import type { CitedEntry } from '../../src/explain/explanation.js';
import { assess } from '../../src/assess/assess.js';
import { anyCase, assessed, looksAtSeries, oneADay, taskOf } from './situation.js';
import { numbersOf } from './numbers-of.js';

const RUNS = Number(process.env['DUEWRIGHT_RUNS'] ?? 100);
// The same cases each time, so that the suite is red only for what changed. Wide runs with other seeds are `npm run test:wide`; what they
// still find is stated in docs/evidence.md.
const SEED = Number(process.env['DUEWRIGHT_SEED'] ?? 20_260_511);
const parameters = { numRuns: RUNS, seed: SEED };

/** What is cited only so that a reading counts, or does not: it matters where that reading would. */
function isForAnother({ id, refutes, confirms }: CitedEntry, all: readonly CitedEntry[]): boolean {
  return refutes !== undefined || confirms !== undefined || all.some((other) => other.confirms === id);
}

describe('an explanation', () => {
  test('is sufficient: the cited entries alone give the same state and due point', () => {
    fc.assert(
      fc.property(anyCase, (each) => {
        const assessment = assessed(each, each.entries, each.now);
        for (const { task, state, due } of assessment.tasks) {
          const cited = explain(each.graph, assessment, each.entries, task).entries.map(({ entry }) => entry);
          const again = taskOf(assessed(each, cited, each.now), task);
          expect({ task, state: again.state, due: again.due }).toEqual({ task, state, due });
        }
      }),
      parameters,
    );
  });

  test('is minimal: leaving out any cited entry changes the state, the due point or the numbers', () => {
    fc.assert(
      fc.property(anyCase, (any) => {
        // Where two entries of one day say the same, either can stand in for the other.
        const each = { ...any, entries: oneADay(any.entries) };
        const assessment = assessed(each, each.entries, each.now);
        // A beat is followed through every doing, a consumption through every level: all are cited, whether or not each moved the result.
        for (const { task } of assessment.tasks.filter(({ task: id }) => !looksAtSeries(each.graph, id))) {
          const citations = explain(each.graph, assessment, each.entries, task).entries;
          const cited = citations.map(({ entry }) => entry);
          const whole = numbersOf(explain(each.graph, assessed(each, cited, each.now), cited, task));
          for (const { entry: left } of citations.filter((citation) => !isForAnother(citation, citations))) {
            const rest = cited.filter((entry) => entry !== left);
            const without = numbersOf(explain(each.graph, assessed(each, rest, each.now), rest, task));
            expect(without, `${task} without ${left.id}`).not.toBe(whole);
          }
        }
      }),
      parameters,
    );
  });

  test('is true to its changes: each has the stated effect, and just short of it has not', () => {
    fc.assert(
      fc.property(anyCase, (each) => {
        const assessment = assessed(each, each.entries, each.now);
        for (const { task } of assessment.tasks) {
          for (const change of explain(each.graph, assessment, each.entries, task).changes) {
            const after = applyChange(change, each.entries, each.now);
            expect({ task, change, state: taskOf(assessed(each, after.history, after.now), task).state }).toEqual({
              task,
              change,
              state: change.becomes,
            });
            const short = justShort(change, each.entries, each.now);
            expect(
              taskOf(assessed(each, short.history, short.now), task).state,
              `${task}, just short of ${JSON.stringify(change)}`,
            ).not.toBe(change.becomes);
          }
        }
      }),
      parameters,
    );
  });

  test('is stable: the same inputs give the same bytes, in whatever order the entries come', () => {
    fc.assert(
      fc.property(
        anyCase.chain((each) =>
          fc.shuffledSubarray([...each.entries], { minLength: each.entries.length }).map((shuffled) => ({ each, shuffled })),
        ),
        ({ each, shuffled }) => {
          const one = assessed(each, each.entries, each.now);
          const other = assessed(each, shuffled, each.now);
          expect(JSON.stringify(other)).toBe(JSON.stringify(one));
          for (const { task } of one.tasks) {
            expect(JSON.stringify(explain(each.graph, other, shuffled, task))).toBe(
              JSON.stringify(explain(each.graph, one, each.entries, task)),
            );
          }
        },
      ),
      parameters,
    );
  });

  test('is free: states, verdict and step count do not depend on whether anybody asked', () => {
    fc.assert(
      fc.property(anyCase, (each) => {
        const asked = assessed(each, each.entries, each.now);
        const before = JSON.stringify(asked);
        for (const { task } of asked.tasks) explain(each.graph, asked, each.entries, task);
        expect(JSON.stringify(asked)).toBe(before);
        const unasked = assess(each.graph, each.entries, each.now, { ...each.options, withoutRecord: true });
        expect({ ...asked, record: {}, stopRecord: [] }).toEqual({ ...unasked, record: {}, stopRecord: [] });
      }),
      parameters,
    );
  });
});
