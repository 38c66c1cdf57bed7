/**
 * Random histories of the machine of `random-schedule.ts`, with every kind of entry, tidy and untidy.
 */
import fc from 'fast-check';
import type { Entry } from '../../src/history/entry.js';
import { formatDate } from '../../src/values/civil.js';
import type { Day, Moment } from '../../src/values/moment.js';
import type { Intent } from '../../src/assess/assessment.js';

/** 2026-01-01 */
const START = 20454;
const LENGTH = 160;

const day = fc.integer({ min: 0, max: LENGTH });
const time = fc.option(
  fc.integer({ min: 0, max: 47 }).map((half) => `${String(Math.floor(half / 2)).padStart(2, '0')}:${half % 2 === 0 ? '00' : '30'}`),
  { nil: undefined, freq: 2 },
);
const taskName = fc.constantFrom('alpha', 'beta', 'gamma', 'delta');
const level = fc.oneof(
  fc.integer({ min: 0, max: 10 }).map((tenths) => tenths / 10),
  fc.constantFrom('below-low' as const, 'low' as const, 'full' as const, 'above-full' as const),
);

type Draft = { readonly kind: Entry['kind'] } & Readonly<Record<string, unknown>>;

const drafts: readonly fc.WeightedArbitrary<Draft>[] = [
  { weight: 6, arbitrary: fc.constant({ kind: 'reading' as const }) },
  { weight: 8, arbitrary: fc.uniqueArray(taskName, { minLength: 1, maxLength: 2 }).map((tasks) => ({ kind: 'done' as const, tasks })) },
  {
    weight: 5,
    arbitrary: fc
      .record({
        hours: fc.integer({ min: 1, max: 16 }),
        dusty: fc.integer({ min: 0, max: 8 }),
        steep: fc.integer({ min: 0, max: 8 }),
        shift: fc.constantFrom(undefined, 'early', 'late'),
        open: fc.integer({ min: 0, max: 9 }),
      })
      .map(({ hours, dusty, steep, shift, open }) => ({
        kind: 'outing' as const,
        ...(open === 0 ? {} : { hours: hours / 2 }),
        duties: [...(dusty > 0 ? [{ duty: 'dusty', hours: Math.min(dusty, hours) / 2 }] : []), ...(steep > 4 ? [{ duty: 'steep' }] : [])],
        ...(shift === undefined ? {} : { shift }),
      })),
  },
  { weight: 1, arbitrary: fc.constant({ kind: 'finding' as const, text: 'A stone in the guard' }) },
  {
    weight: 2,
    arbitrary: fc
      .constantFrom('wetness', 'drops-form', 'drops-fall', undefined)
      .map((each) => ({ kind: 'defect-opened' as const, defect: 'seep', ...(each === undefined ? {} : { class: each }) })),
  },
  { weight: 1, arbitrary: fc.constant({ kind: 'defect-closed' as const, defect: 'seep' }) },
  { weight: 2, arbitrary: fc.constant({ kind: 'event' as const, event: 'refit' }) },
  { weight: 1, arbitrary: fc.constantFrom('attached' as const, 'detached' as const).map((kind) => ({ kind, attachment: 'mower' })) },
  { weight: 1, arbitrary: fc.constant({ kind: 'meter-replaced' as const, meter: 'engine', final: 'true', initial: 0 }) },
  { weight: 1, arbitrary: fc.constantFrom('lowered', 'raised').map((loader) => ({ kind: 'stands' as const, positions: { loader } })) },
  { weight: 1, arbitrary: fc.constantFrom('begins' as const, 'ends' as const).map((phase) => ({ kind: 'storage' as const, phase })) },
  { weight: 1, arbitrary: fc.constant({ kind: 'refuelled' as const }) },
  { weight: 1, arbitrary: fc.constant({ kind: 'topped-up' as const, dipstick: 'oil', litres: 0.5 }) },
  {
    weight: 1,
    arbitrary: fc
      .record({
        task: taskName,
        back: fc.option(fc.integer({ min: 1, max: 200 }), { nil: undefined }),
        at: fc.option(fc.integer({ min: 0, max: 100 }), { nil: undefined }),
      })
      .map(({ task, back, at }) => ({ kind: 'stated' as const, task, back, ...(at === undefined ? {} : { doneAt: { engine: at } }) })),
  },
  { weight: 1, arbitrary: fc.integer({ min: 0, max: 30 }).map((n) => ({ kind: 'void' as const, entry: `e${n}` })) },
  { weight: 1, arbitrary: fc.integer({ min: 0, max: 30 }).map((n) => ({ kind: 'confirm' as const, entry: `e${n}` })) },
];

const along = fc.record({
  engine: fc.constantFrom('none', 'none', 'true', 'true', 'true', 'wrong'),
  shaft: fc.constantFrom('none', 'none', 'true'),
  coolant: fc.option(fc.integer({ min: 60, max: 110 }), { nil: undefined, freq: 3 }),
  oil: fc.option(level, { nil: undefined, freq: 3 }),
  tyre: fc.option(fc.integer({ min: 150, max: 250 }), { nil: undefined, freq: 2 }),
});

const dated = fc.record({ day, time, draft: fc.oneof(...drafts), along });

/** An hour meter that really went 1.5 h a day; a wrong reading is far off. */
function metersAt(dayIndex: number, engine: string, shaft: string): Record<string, number> {
  const truth = dayIndex * 1.5;
  return {
    ...(engine === 'none' ? {} : { engine: engine === 'true' ? truth : Math.max(0, truth + (dayIndex % 2 === 0 ? 400 : -30)) }),
    ...(shaft === 'none' ? {} : { shaft: truth / 2 }),
  };
}

function finish(
  each: {
    readonly day: number;
    readonly time: string | undefined;
    readonly draft: Draft;
    readonly along: {
      readonly engine: string;
      readonly shaft: string;
      readonly coolant: number | undefined;
      readonly oil: unknown;
      readonly tyre: number | undefined;
    };
  },
  index: number,
): Entry {
  const { back, ...draft } = each.draft as Draft & { readonly back?: number };
  const readings = {
    ...(each.along.coolant === undefined ? {} : { coolant: each.along.coolant }),
    ...(each.along.oil === undefined ? {} : { oil: each.along.oil }),
    ...(each.along.tyre === undefined ? {} : { tyre: each.along.tyre }),
  };
  const meters = metersAt(each.day, each.along.engine, each.along.shaft);
  return {
    id: `e${index}`,
    on: formatDate((START + each.day) as Day),
    ...(each.time === undefined ? {} : { at: each.time }),
    ...draft,
    ...(draft.kind === 'meter-replaced' ? { final: each.day * 1.5 } : {}),
    ...(back === undefined ? {} : { doneBy: formatDate((START + each.day - back) as Day) }),
    ...(Object.keys(meters).length === 0 ? {} : { meters }),
    ...(Object.keys(readings).length === 0 ? {} : { readings }),
  } as unknown as Entry;
}

/** Up to about thirty entries, in no order; two in three know when the machine entered service. */
export const history: fc.Arbitrary<readonly Entry[]> = fc
  .tuple(fc.array(dated, { maxLength: 28, size: 'max' }), fc.constantFrom(true, true, false))
  .map(([entries, known]) => {
    const machine: Entry = {
      kind: 'machine',
      id: 'm',
      on: formatDate(START as Day),
      ...(known ? { inService: formatDate(START as Day) } : {}),
    };
    return [machine, ...entries.map(finish)];
  });

/** Some day of the second half, with or without the minute. */
export const now: fc.Arbitrary<Moment> = fc.record({
  day: fc.integer({ min: START + LENGTH / 2, max: START + LENGTH + 60 }).map((each) => each as Day),
  minute: fc.option(
    fc.integer({ min: 0, max: 47 }).map((half) => half * 30),
    { nil: null, freq: 2 },
  ),
});

export const intent: fc.Arbitrary<Intent | undefined> = fc.constantFrom<Intent | undefined>(
  undefined,
  undefined,
  { outing: { hours: 3 } },
  { outing: { hours: 3, duties: ['dusty'], attachments: ['mower'], shift: 'early' } },
  { storage: true },
);
