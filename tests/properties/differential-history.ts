/** Random histories of the machine of `differential-schedule.ts`: every kind of entry, tidy and untidy, in no order. */
import fc from 'fast-check';
import type { Intent } from '../../src/assess/assessment.js';
import type { Entry } from '../../src/history/entry.js';
import { formatDate } from '../../src/values/civil.js';
import type { Day, Moment } from '../../src/values/moment.js';

/** 2026-01-01 */
const START = 20454;
const LENGTH = 160;

const day = fc.oneof(fc.integer({ min: 0, max: LENGTH }), fc.integer({ min: 0, max: 15 }));
const clock = fc
  .integer({ min: 0, max: 47 })
  .map((half) => `${String(Math.floor(half / 2)).padStart(2, '0')}:${half % 2 === 0 ? '00' : '30'}`);
const time = fc.option(clock, { nil: undefined, freq: 2 });
const task = fc.constantFrom('alpha', 'beta', 'gamma', 'delta', 'mower.blades', 'mower.knives', 'mower.guards');
const level = fc.oneof(
  fc.integer({ min: 0, max: 10 }).map((tenths) => tenths / 10),
  fc.constantFrom('below-low' as const, 'low' as const, 'full' as const, 'above-full' as const),
);

type Draft = { readonly kind: Entry['kind'] } & Readonly<Record<string, unknown>>;

const outing = fc
  .record({
    hours: fc.integer({ min: 1, max: 16 }),
    ends: fc.constantFrom('hours', 'hours', 'hours', 'hours', 'until', 'until', 'on', 'on-until', 'open', 'open'),
    until: clock,
    days: fc.integer({ min: 0, max: 2 }),
    dusty: fc.integer({ min: 0, max: 8 }),
    steep: fc.integer({ min: 0, max: 8 }),
    whole: fc.boolean(),
    shift: fc.constantFrom(undefined, 'early', 'late'),
    mower: fc.boolean(),
    bare: fc.constantFrom(false, false, true),
  })
  .map(({ hours, ends, until, days, dusty, steep, whole, shift, mower, bare }) => ({
    kind: 'outing' as const,
    ...(ends === 'hours' || ends === 'on' ? { hours: hours / 2 } : {}),
    ...(ends === 'until' || ends === 'on-until' ? { until } : {}),
    ...(ends === 'on' || ends === 'on-until' ? { days } : {}),
    ...(bare
      ? {}
      : {
          duties: [
            ...(dusty > 0 ? [{ duty: 'dusty', ...(whole ? {} : { hours: Math.min(dusty, hours) / 2 }) }] : []),
            ...(steep > 4 ? [{ duty: 'steep', hours: Math.min(steep, hours) / 2 }] : []),
          ],
          attachments: mower ? ['mower'] : [],
        }),
    ...(shift === undefined ? {} : { shift }),
  }));

const drafts: readonly fc.WeightedArbitrary<Draft>[] = [
  { weight: 5, arbitrary: fc.constant({ kind: 'reading' as const }) },
  { weight: 8, arbitrary: fc.uniqueArray(task, { minLength: 1, maxLength: 2 }).map((tasks) => ({ kind: 'done' as const, tasks })) },
  { weight: 6, arbitrary: outing },
  { weight: 1, arbitrary: fc.constant({ kind: 'finding' as const, text: 'A stone in the guard' }) },
  {
    weight: 2,
    arbitrary: fc
      .constantFrom('wetness', 'drops-form', 'drops-fall', undefined)
      .map((each) => ({ kind: 'defect-opened' as const, defect: 'seep', ...(each === undefined ? {} : { class: each }) })),
  },
  { weight: 1, arbitrary: fc.constantFrom('defect-opened' as const, 'defect-closed' as const).map((kind) => ({ kind, defect: 'crack' })) },
  { weight: 1, arbitrary: fc.constant({ kind: 'defect-closed' as const, defect: 'seep' }) },
  { weight: 3, arbitrary: fc.constantFrom('refit', 'wash').map((event) => ({ kind: 'event' as const, event })) },
  {
    weight: 2,
    arbitrary: fc
      .tuple(fc.constantFrom('attached' as const, 'attached' as const, 'detached' as const), fc.constantFrom('mower', 'mower', 'fork'))
      .map(([kind, attachment]) => ({ kind, attachment })),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom('engine', 'shaft').map((meter) => ({ kind: 'meter-replaced' as const, meter, final: 'true', initial: 0 })),
  },
  {
    weight: 1,
    arbitrary: fc
      .constantFrom({ loader: 'lowered' }, { loader: 'raised' }, { guard: 'open' }, { guard: 'closed', loader: 'raised' })
      .map((positions) => ({ kind: 'stands' as const, positions })),
  },
  { weight: 2, arbitrary: fc.constantFrom('begins' as const, 'ends' as const).map((phase) => ({ kind: 'storage' as const, phase })) },
  { weight: 1, arbitrary: fc.constant({ kind: 'refuelled' as const }) },
  {
    weight: 1,
    arbitrary: fc
      .tuple(fc.constantFrom('oil', 'oil', 'hydraulic', undefined), fc.integer({ min: 1, max: 8 }))
      .map(([dipstick, n]) => ({ kind: 'topped-up' as const, ...(dipstick === undefined ? {} : { dipstick }), litres: n / 4 })),
  },
  {
    weight: 1,
    arbitrary: fc
      .record({
        task,
        back: fc.option(fc.integer({ min: 1, max: 200 }), { nil: undefined }),
        at: fc.option(fc.integer({ min: 0, max: 100 }), { nil: undefined }),
      })
      .map((each) => ({
        kind: 'stated' as const,
        task: each.task,
        back: each.back,
        ...(each.at === undefined ? {} : { doneAt: { engine: each.at } }),
      })),
  },
  { weight: 1, arbitrary: fc.integer({ min: 0, max: 25 }).map((n) => ({ kind: 'void' as const, entry: `e${n}` })) },
  { weight: 1, arbitrary: fc.integer({ min: 0, max: 25 }).map((n) => ({ kind: 'confirm' as const, entry: `e${n}` })) },
];

const along = fc.record({
  engine: fc.constantFrom('none', 'none', 'true', 'true', 'true', 'true', 'wrong'),
  others: fc.subarray(['shaft', 'road', 'mower.rotor']),
  coolant: fc.option(fc.integer({ min: 60, max: 110 }), { nil: undefined, freq: 2 }),
  oil: fc.option(level, { nil: undefined, freq: 2 }),
  hydraulic: fc.option(level, { nil: undefined, freq: 1 }),
  tyre: fc.option(
    fc.integer({ min: 15, max: 25 }).map((tens) => tens * 10),
    { nil: undefined, freq: 1 },
  ),
});

type Dated = {
  readonly day: number;
  readonly time: string | undefined;
  readonly draft: Draft;
  readonly along: { readonly engine: string; readonly others: readonly string[] } & Readonly<
    Record<'coolant' | 'oil' | 'hydraulic' | 'tyre', unknown>
  >;
};

/** Hour meters that really went 1.5 h and 0.75 h a day; a wrong reading is far off. */
function metersAt(dayIndex: number, { engine, others }: Dated['along'], since: number): Record<string, number> {
  const truth = dayIndex * 1.5;
  const shown = Math.max(0, truth - since * 1.5);
  const values: Record<string, number> = { shaft: truth / 2, road: dayIndex * 12.5, 'mower.rotor': dayIndex * 0.5 };
  const wrong = Math.max(0, shown + (dayIndex % 2 === 0 ? 400 : -30));
  return {
    ...(engine === 'none' ? {} : { engine: engine === 'true' ? shown : wrong }),
    ...Object.fromEntries(others.map((each) => [each, values[each] ?? 0])),
  };
}

function finish(each: Dated, index: number, since: number): Entry {
  const { back, days, ...draft } = each.draft as Draft & { readonly back?: number; readonly days?: number };
  const meters = metersAt(each.day, each.along, each.day > since ? since : 0);
  const readings = Object.fromEntries(
    (['coolant', 'oil', 'hydraulic', 'tyre'] as const).flatMap((id) => (each.along[id] === undefined ? [] : [[id, each.along[id]]])),
  );
  const besides = each.along.others.includes('road') ? { meters: { road: each.day * 12.5 } } : {};
  const final = draft['meter'] === 'engine' ? each.day * 1.5 : each.day * 0.75;
  return {
    id: `e${index}`,
    on: formatDate((START + each.day) as Day),
    ...(each.time === undefined ? {} : { at: each.time }),
    ...draft,
    ...(draft.kind === 'meter-replaced' ? { final, ...besides } : Object.keys(meters).length === 0 ? {} : { meters }),
    ...(days === undefined ? {} : { untilOn: formatDate((START + each.day + days) as Day) }),
    ...(back === undefined ? {} : { doneBy: formatDate((START + each.day - back) as Day) }),
    ...(Object.keys(readings).length === 0 ? {} : { readings }),
  } as unknown as Entry;
}

const dated: fc.Arbitrary<Dated> = fc.record({ day, time, draft: fc.oneof(...drafts), along });

const machine = fc.record({
  known: fc.constantFrom(true, true, false),
  /** An entry that stands twice, or whose id another takes. */
  twice: fc.option(fc.tuple(fc.nat(25), fc.boolean()), { nil: undefined, freq: 1 }),
  serial: fc.constantFrom(undefined, 7, 70),
  noted: fc.constantFrom(undefined, 0),
  at: fc.constantFrom(undefined, undefined, '07:00'),
  coolant: fc.constantFrom(undefined, undefined, 80),
});

/** One of the entries once more; or, under its id, something else. */
function again(all: readonly Entry[], twice: readonly [number, boolean] | undefined): readonly Entry[] {
  const found = twice === undefined ? undefined : all[twice[0]];
  if (found === undefined) return [];
  return [twice?.[1] === true ? { ...found } : { kind: 'refuelled', id: found.id, on: found.on }];
}

/** Up to about thirty entries. At most one replacement of the engine's meter. */
export const anyHistory: fc.Arbitrary<readonly Entry[]> = fc
  .tuple(fc.array(dated, { maxLength: 26, size: 'max' }), machine)
  .map(([entries, { known, serial, noted, at, coolant, twice }]) => {
    const birth: Entry = {
      kind: 'machine',
      id: 'm',
      on: formatDate(START as Day),
      ...(known ? { inService: formatDate(START as Day) } : {}),
      ...(serial === undefined ? {} : { serial }),
      ...(noted === undefined ? {} : { meters: { engine: noted } }),
      ...(at === undefined ? {} : { at }),
      ...(coolant === undefined ? {} : { readings: { coolant } }),
    };
    const isSwap = (each: Dated): boolean => each.draft.kind === 'meter-replaced' && each.draft['meter'] === 'engine';
    const swap = entries.find(isSwap);
    const kept = entries.filter((each) => !isSwap(each) || each === swap);
    const finished = kept.map((each, i) => finish(each, i, swap === undefined ? 0 : swap.day));
    return [birth, ...finished, ...again(finished, twice)];
  });

/** Some day, with or without the minute. */
export const anyNow: fc.Arbitrary<Moment> = fc.record({
  day: fc.integer({ min: START, max: START + LENGTH + 60 }).map((each) => each as Day),
  minute: fc.option(
    fc.integer({ min: 0, max: 47 }).map((half) => half * 30),
    { nil: null, freq: 2 },
  ),
});

export const anyIntent: fc.Arbitrary<Intent> = fc.constantFrom<Intent>(
  {},
  {},
  { outing: { hours: 3 } },
  { outing: { hours: 3, duties: ['dusty'], attachments: ['mower'], shift: 'early' } },
  { outing: { start: 480, hours: 5, duties: ['steep', 'dusty'], shift: 'late' } },
  { storage: true },
);
