import { describe, expect, test } from 'vitest';
import type { Entry } from '../../src/history/entry.js';
import { readTimeline } from '../../src/history/read-timeline.js';
import { consumption } from '../../src/outlook/consumption.js';
import { repairsOf } from '../../src/outlook/repairs-of.js';
import { suppliesNeeded } from '../../src/outlook/supplies-needed.js';
import { dayOf } from '../../src/values/civil.js';
import type { Day } from '../../src/values/moment.js';
import { tractor } from '../history/machine-model.js';

const now = { day: dayOf('2026-12-31') ?? (0 as Day), minute: null };

/** Levels of the engine oil, 1.2 L from low to full, with hours; optional top-up just after. */
function history(...levels: readonly (readonly [hours: number, level: number | 'below-low', added?: number])[]): readonly Entry[] {
  return levels.flatMap(([hours, level, added], index): readonly Entry[] => {
    const on = `2026-03-${String(index + 1).padStart(2, '0')}`;
    const read: Entry = { kind: 'reading', id: `r${index}`, on, at: '07:00', meters: { engine: hours }, readings: { 'engine-oil': level } };
    return added === undefined
      ? [read]
      : [read, { kind: 'topped-up', id: `t${index}`, on, at: '07:10', dipstick: 'engine-oil', litres: added }];
  });
}

const of = (entries: readonly Entry[]) => consumption(readTimeline(entries, tractor, now), 'engine-oil', 1.2, 'engine');

describe('consumption', () => {
  test('litres over hours, with the time to the low mark', () => {
    const found = of(history([100, 1], [110, 0.5], [120, 0]));
    expect(found?.litresPerHour).toMatchObject({ value: 0.06, n: 2, of: 'runs between levels', range: null });
    expect(found?.hoursToLow.value).toBe(0);
    expect(of(history([100, 1], [110, 0.5]))?.hoursToLow).toMatchObject({ value: 10, n: 1 });
  });
  test('what was topped up went as well', () => {
    const found = of(history([100, 0.5, 0.6], [110, 0.5, 0.6], [120, 0.5], [130, 0]));
    expect(found?.litresPerHour.value).toBeCloseTo(0.06, 12);
    expect(found).toMatchObject({ levels: 4, topUps: 2, litresLeft: 0 });
    expect(found?.litresPerHour.range?.low).toBeCloseTo(0.06, 9);
  });
  test('an even rate has a narrow interval, an uneven one a wide one', () => {
    const [even, uneven] = [
      of(history([100, 1], [110, 0.9], [120, 0.81], [130, 0.7])),
      of(history([100, 1], [110, 0.99], [120, 0.75], [130, 0.7])),
    ];
    const width = (found: typeof even): number => (found?.litresPerHour.range?.high ?? 0) - (found?.litresPerHour.range?.low ?? 0);
    expect(width(even)).toBeGreaterThan(0);
    expect(width(uneven)).toBeGreaterThan(5 * width(even));
    // Student's t for 2 degrees at 90 % is 1.886 (any table); losses 0.12, 0.108, 0.132 L in 10 h each.
    expect(width(even) / 2).toBeCloseTo((1.8856 * Math.sqrt((3 * (0.012 ** 2 + 0.012 ** 2)) / 2)) / 30, 5);
  });
  test('a run with more than before is left out, a level off the marks says nothing', () => {
    expect(of(history([100, 0.5], [110, 1], [120, 0.5]))?.litresPerHour).toMatchObject({ value: 0.06, n: 1 });
    expect(of(history([100, 1], [110, 'below-low']))).toBeNull();
  });
  test('is not made up', () => {
    expect(of(history([100, 1]))).toBeNull();
    expect(of(history([100, 1], [110, 1]))).toBeNull();
    expect(of([])).toBeNull();
  });
});

test('a defect that comes back sooner each time is getting worse', () => {
  const found = [0, 100, 190, 260, 310, 350, 380, 400, 415].flatMap((hours, index): readonly Entry[] => [
    { kind: 'reading', id: `m${index}`, on: `2026-0${1 + (index % 9)}-01`, meters: { engine: hours } },
    ...(index === 0 ? [] : [{ kind: 'defect-opened', id: `o${index}`, on: `2026-0${1 + (index % 9)}-01`, defect: 'seep' } as const]),
    { kind: 'defect-closed', id: `c${index}`, on: `2026-0${1 + (index % 9)}-02`, defect: 'seep' },
  ]);
  expect(repairsOf(readTimeline(found, tractor, now), 'seep', 'engine')).toMatchObject({ says: 'getting-worse', n: 8 });
  expect(repairsOf(readTimeline([], tractor, now), 'seep', 'engine').says).toBe('too-few');
});

test('what work takes, less the shelf', () => {
  const base = tractor.tasks[0];
  if (base === undefined) throw new Error('no task');
  const graph = {
    supplies: [...tractor.supplies, { id: 'filter', title: 'Filter', origin: base.origin }],
    tasks: [
      {
        ...base,
        id: 'change',
        uses: [
          { supply: 'oil', amount: 6.6 },
          { supply: 'filter', amount: 1 },
        ],
        site: { ...base.site, seconds: 2400, tools: ['19 mm spanner'] },
      },
      { ...base, id: 'top', uses: [{ supply: 'oil', amount: 0.1 }], site: { ...base.site, tools: ['Funnel', '19 mm spanner'] } },
    ],
  };
  const needed = suppliesNeeded(
    graph,
    [
      { task: 'change', times: 2 },
      { task: 'top', times: 3 },
      { task: 'nowhere', times: 1 },
    ],
    new Map([
      ['oil', 5],
      ['filter', 4],
    ]),
  );
  expect(needed).toEqual({
    supplies: [
      {
        supply: 'oil',
        title: 'Oil',
        unit: 'L',
        needed: 13.5,
        onShelf: 5,
        missing: 8.5,
        for: [
          { task: 'change', amount: 13.2 },
          { task: 'top', amount: 0.3 },
        ],
      },
      { supply: 'filter', title: 'Filter', unit: null, needed: 2, onShelf: 4, missing: 0, for: [{ task: 'change', amount: 2 }] },
    ],
    tools: ['19 mm spanner', 'Funnel'],
    minutes: 80,
    untimed: ['top'],
  });
});
