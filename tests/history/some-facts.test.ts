/** A history laid out by some readers only: what nobody reads is not there, and nothing else is otherwise. */
import { describe, expect, test } from 'vitest';
import type { Entry } from '../../src/history/entry.js';
import { everyFact } from '../../src/history/every-fact.js';
import type { Facts } from '../../src/history/facts.js';
import { layOut } from '../../src/history/lay-out.js';
import type { Timeline } from '../../src/history/timeline.js';
import { dayOf } from '../../src/values/civil.js';
import type { Day } from '../../src/values/moment.js';
import { tractor } from './machine-model.js';

const now = { day: dayOf('2026-12-31') ?? (0 as Day), minute: null };
const lay = (facts: Partial<Facts>, entries: readonly Entry[]): Timeline => layOut(facts, entries, tractor, now);

const on = '2026-05-01';
const readings: readonly Entry[] = [
  { kind: 'machine', id: 'm', on: '2026-01-01', model: 'Tarn 55' },
  { kind: 'reading', id: 'a', on, at: '08:00', meters: { engine: 100, road: 7 } },
  { kind: 'reading', id: 'b', on, meters: { engine: 103 } },
  { kind: 'reading', id: 'c', on: '2026-05-02', at: '09:00', meters: { engine: 99 } },
  { kind: 'done', id: 'd', on: '2026-05-03', tasks: ['change-oil'], meters: { engine: 110 }, used: { oil: 6 } },
  { kind: 'reading', id: 'e', on: '2026-05-04', at: '06:00', meters: { engine: 500 } },
];
const others: readonly Entry[] = [
  { kind: 'stated', id: 's', on, task: 'change-oil', doneBy: '2025-01-01', doneAt: { engine: 12 } },
  { kind: 'reading', id: 'i', on, readings: { coolant: 80 } },
  { kind: 'stands', id: 'p', on, positions: { loader: 'raised' } },
  { kind: 'event', id: 'v', on, event: 'wheel-refit' },
  { kind: 'topped-up', id: 't', on, dipstick: 'engine-oil', litres: 0.5 },
  { kind: 'refuelled', id: 'f', on },
  { kind: 'storage', id: 'w', on, phase: 'begins' },
  { kind: 'defect-opened', id: 'g', on, defect: 'seep', class: 'wetness' },
  { kind: 'attached', id: 'h', on, attachment: 'flail-mower' },
];

/** What a timeline says of each sort of fact that has a reader of its own, where there is nothing to say. */
const nothing = {
  instruments: new Map(),
  events: new Map(),
  defects: new Map(),
  attachments: new Map(),
  positions: new Map(),
  storage: [],
  refuellings: [],
  topUps: [],
  statements: new Map(),
} satisfies Partial<Timeline>;
const sorts = Object.keys(nothing) as readonly (keyof typeof nothing)[];

describe('without any reader', () => {
  test('there are the meters, the doings and the machine, as with all of them', () => {
    // A track of each attachment is there even where nothing is in it.
    expect(lay({}, readings)).toEqual({ ...lay(everyFact, readings), attachments: new Map() });
    expect(lay({}, readings).suspects.map(({ entry, why, against }) => [entry, why, against])).toEqual([
      ['c', 'falls', 'b'],
      ['e', 'rises-too-fast', 'd'],
    ]);
  });

  test('there is nothing else, whatever the entries say', () => {
    expect(lay({}, [...readings, ...others])).toMatchObject(nothing);
    expect(lay({}, [{ kind: 'outing', id: 'o', on, hours: 2, meters: { engine: 3 } }])).toMatchObject({ outings: [] });
  });

  test('nothing is voided, no dial is taken out, and no meter counts from outings', () => {
    const replaced: Entry = { kind: 'meter-replaced', id: 'r', on: '2026-05-01', meter: 'engine', final: 103, initial: 0 };
    const timeline = lay({}, [...readings, replaced, { kind: 'void', id: 'x', on, entry: 'a' }, { kind: 'outing', id: 'o', on, hours: 2 }]);
    expect(timeline.meters).toEqual(lay(everyFact, readings).meters);
    expect(timeline.meters.get('work')).toEqual({ points: [] });
  });

  test('no name is guessed', () => {
    const [stray] = lay({}, [{ kind: 'done', id: 'd', on, tasks: ['chnage-oil'] }]).strays;
    expect(stray?.what).toBe('There is no task `chnage-oil` in this schedule');
  });
});

test.each(sorts)('without a reader of %s there are none, and all else is as it was', (sort) => {
  const entries = [...readings, ...others];
  const whole = lay(everyFact, entries);
  expect(whole[sort]).not.toEqual(nothing[sort]);
  expect(lay({ ...everyFact, [sort]: undefined }, entries)).toEqual({ ...whole, [sort]: nothing[sort] });
});
