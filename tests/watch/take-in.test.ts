import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dateEntry } from '../../src/history/dated-entry.js';
import type { Entry } from '../../src/history/entry.js';
import { everyFact } from '../../src/history/every-fact.js';
import { laidOut } from '../../src/history/lay-out.js';
import { countsAt } from '../../src/values/moment.js';
import { passTime, takeIn } from '../../src/watch/take-in.js';
import { now as anyMoment } from '../properties/random-history.js';
import { anyCase } from '../properties/situation.js';
import { compileText } from '../support/compile-text.js';
import { done, history, meters, moment } from '../support/history.js';

/** Kinds that reach too far to be taken in by themselves. */
const FAR: readonly Entry['kind'][] = ['outing', 'machine', 'meter-replaced', 'void', 'confirm'];

describe('an entry that is taken in', () => {
  test('gives the timeline of all entries laid out anew', () => {
    const kinds = new Map<Entry['kind'], number>();
    fc.assert(
      fc.property(anyCase, ({ graph, entries, now }) => {
        // Those of each kind come last too, whatever the history ends with.
        const last = [...new Map(entries.map((entry) => [entry.kind, entry])).values()];
        for (const entry of last) {
          const others = entries.filter((other) => other !== entry);
          const taken = takeIn(laidOut(everyFact, others, graph, now), others, entry);
          if (taken === null) continue;
          expect(taken.timeline).toEqual(laidOut(everyFact, [...others, entry], graph, now).timeline);
          kinds.set(entry.kind, (kinds.get(entry.kind) ?? 0) + 1);
        }
      }),
      { numRuns: Number(process.env['DUEWRIGHT_RUNS'] ?? 60) },
    );
    // It would also hold of an entry that never is.
    const near: readonly Entry['kind'][] = [
      'reading',
      'done',
      'event',
      'finding',
      'topped-up',
      'refuelled',
      'defect-opened',
      'storage',
      'stands',
      'stated',
    ];
    expect(near.filter((kind) => (kinds.get(kind) ?? 0) < 3)).toEqual([]);
    expect(FAR.filter((kind) => kinds.has(kind))).toEqual([]);
  });

  test('gives it after several, one upon the other', () => {
    let [taken, all] = [0, 0];
    fc.assert(
      fc.property(anyCase, ({ graph, entries, now }) => {
        const half = Math.floor(entries.length / 2);
        let laid = laidOut(everyFact, entries.slice(0, half), graph, now);
        for (let known = half; known < entries.length; known += 1) {
          const entry = entries[known];
          if (entry === undefined) continue;
          const next = takeIn(laid, entries.slice(0, known), entry);
          const anew = laidOut(everyFact, entries.slice(0, known + 1), graph, now);
          if (next !== null) expect(next.timeline).toEqual(anew.timeline);
          taken += next === null ? 0 : 1;
          all += 1;
          laid = next ?? anew;
        }
      }),
      { numRuns: Number(process.env['DUEWRIGHT_RUNS'] ?? 60) },
    );
    expect(taken / all).toBeGreaterThan(0.2);
  });

  test('stays as it is while nothing goes on, and no longer', () => {
    let [stayed, all] = [0, 0];
    fc.assert(
      fc.property(anyCase, anyMoment, ({ graph, entries, now }, later) => {
        const between = entries.some((entry) => {
          const when = dateEntry(entry)?.when;
          return when !== undefined && countsAt(when, now) !== countsAt(when, later);
        });
        const next = between ? null : passTime(laidOut(everyFact, entries, graph, now), later);
        if (next !== null) expect(next.timeline).toEqual(laidOut(everyFact, entries, graph, later).timeline);
        stayed += next === null ? 0 : 1;
        all += 1;
      }),
      { numRuns: Number(process.env['DUEWRIGHT_RUNS'] ?? 120) },
    );
    expect(stayed / all).toBeGreaterThan(0.01);
  });

  const graph = compileText('meter engine "Hour meter" counts h\ntask oil "Oil" every 100 h of engine');
  const entries = history(['2026-05-01', done('oil', { engine: 1200 })], ['2026-05-03', meters({ engine: 1240 })]);
  const takes = (more: Entry): boolean => takeIn(laidOut(everyFact, entries, graph, moment('2026-05-09')), entries, more) !== null;

  test.each<[string, Entry, boolean]>([
    ['a reading in its turn', { kind: 'reading', id: 'new', on: '2026-05-04', meters: { engine: 1260 } }, true],
    [
      'a reading that is below the last, which casts no doubt but on itself',
      { kind: 'reading', id: 'new', on: '2026-05-04', meters: { engine: 1230 } },
      true,
    ],
    ['a reading before others that puts them in doubt', { kind: 'reading', id: 'new', on: '2026-05-02', meters: { engine: 1245 } }, false],
    ['an id that is taken', { kind: 'finding', id: 'e1', on: '2026-05-04', text: 'A stone' }, false],
    ['a name that is not there', { kind: 'done', id: 'new', on: '2026-05-04', tasks: ['oyl'] }, false],
    ['what is yet to come', { kind: 'done', id: 'new', on: '2026-06-04', tasks: ['oil'] }, false],
    ['a correction', { kind: 'void', id: 'new', on: '2026-05-04', entry: 'e2' }, false],
  ])('%s', (_, entry, taken) => {
    expect(takes(entry)).toBe(taken);
  });
});
