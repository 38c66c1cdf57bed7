/** What entries name and the schedule does not have: each is reported in words, with its entry, and moves nothing. */
import { describe, expect, test } from 'vitest';
import type { Entry } from '../../src/history/entry.js';
import { ticksPerDay } from '../../src/history/ticks-per-day.js';
import { readTimeline } from '../../src/history/read-timeline.js';
import { convert, findUnit, unitSpellings } from '../../src/values/units.js';
import { moment } from '../support/history.js';
import { tractor } from './machine-model.js';

const now = moment('2026-12-31');
const on = '2026-05-01';

function read(entries: readonly Entry[], model = tractor) {
  return readTimeline(entries, model, now);
}

const nothing = read([]);

describe('a name that the schedule does not have', () => {
  test.each<[string, Entry]>([
    ['There is no attachment `plough` in this schedule', { kind: 'attached', id: 'x', on, attachment: 'plough' }],
    ['There is no attachment `plough` in this schedule', { kind: 'detached', id: 'x', on, attachment: 'plough' }],
    ['There is no defect `crack` in this schedule', { kind: 'defect-opened', id: 'x', on, defect: 'crack', class: 'wide' }],
    ['There is no defect `crack` in this schedule', { kind: 'defect-closed', id: 'x', on, defect: 'crack' }],
    ['There is no event `fire` in this schedule', { kind: 'event', id: 'x', on, event: 'fire' }],
    ['There is no task `paint` in this schedule', { kind: 'done', id: 'x', on, tasks: ['paint'] }],
    ['There is no task `paint` in this schedule', { kind: 'stated', id: 'x', on, task: 'paint' }],
    ['There is no task `paint` in this schedule', { kind: 'finding', id: 'x', on, task: 'paint', text: 'Rust.' }],
    ['There is no meter `clock` in this schedule', { kind: 'reading', id: 'x', on, meters: { clock: 3 } }],
    ['There is no meter `clock` in this schedule', { kind: 'meter-replaced', id: 'x', on, meter: 'clock', final: 3, initial: 0 }],
    ['There is no gauge or dipstick `vacuum` in this schedule', { kind: 'reading', id: 'x', on, readings: { vacuum: 3 } }],
    ['There is no moving part `door` in this schedule', { kind: 'stands', id: 'x', on, positions: { door: 'open' } }],
    ['There is no position of `loader` named `flat` in this schedule', { kind: 'stands', id: 'x', on, positions: { loader: 'flat' } }],
  ])('%s', (what, entry) => {
    expect(read([entry])).toEqual({ ...nothing, strays: [{ entry: 'x', what }] });
  });

  test('an event of a day that the schedule names is none that an entry notes', () => {
    const [event] = tractor.events;
    if (event === undefined) throw new Error('the machine has no event');
    const model = { ...tractor, events: [...tractor.events, { ...event, id: 'recall', on: 20_514 }] };
    const entry: Entry = { kind: 'event', id: 'x', on, event: 'recall' };
    expect(read([entry], model)).toEqual({ ...nothing, strays: [{ entry: 'x', what: 'There is no event `recall` in this schedule' }] });
  });

  test('a top-up of an unknown dipstick or supply is kept as a top-up of neither', () => {
    const entry: Entry = { kind: 'topped-up', id: 'x', on, dipstick: 'brine', supply: 'tar', litres: 2 };
    const { topUps, strays } = read([entry]);
    expect(topUps).toEqual([{ entry: 'x', when: moment(on), litres: 2, dipstick: null, supply: null }]);
    expect(strays.map(({ what }) => what)).toEqual([
      'There is no dipstick `brine` in this schedule',
      'There is no supply `tar` in this schedule',
    ]);
    expect(read([{ ...entry, dipstick: 'engine-oil', supply: 'oil' }]).topUps).toMatchObject([{ dipstick: 'engine-oil', supply: 'oil' }]);
    expect(read([{ kind: 'topped-up', id: 'x', on, litres: 2 }])).toMatchObject({ topUps: [{ dipstick: null, supply: null }], strays: [] });
  });

  test('an outing is kept without an attachment or a duty that is unknown', () => {
    const entry: Entry = { kind: 'outing', id: 'x', on, hours: 1, attachments: ['plough', 'flail-mower'], duties: [{ duty: 'mud' }] };
    const { outings, attachments, strays } = read([entry]);
    expect(outings).toMatchObject([{ attachments: ['flail-mower'], duties: [] }]);
    expect([...attachments.keys()]).toEqual(['flail-mower']);
    expect(strays.map(({ what }) => what)).toEqual([
      'There is no attachment `plough` in this schedule',
      'There is no duty `mud` in this schedule',
    ]);
  });

  test('a statement is kept without a meter that is unknown', () => {
    const { statements, strays } = read([{ kind: 'stated', id: 'x', on, task: 'change-oil', doneAt: { clock: 5, engine: 2 } }]);
    expect(statements.get('change-oil')?.[0]?.doneAt).toEqual(new Map([['engine', 72_000]]));
    expect(strays).toEqual([{ entry: 'x', what: 'There is no meter `clock` in this schedule' }]);
  });

  test('a defect is open even where its class is unknown', () => {
    const { defects, strays } = read([{ kind: 'defect-opened', id: 'x', on, defect: 'seep', class: 'flood' }]);
    expect(defects.get('seep')).toEqual([{ begin: { entry: 'x', when: moment(on) }, end: null, class: null }]);
    expect(strays).toEqual([{ entry: 'x', what: 'There is no class of `seep` named `flood` in this schedule' }]);
  });

  test('a near name is offered, but not looked for where the name is longer than 80 characters', () => {
    const stray = (task: string): string | undefined => read([{ kind: 'done', id: 'x', on, tasks: [task] }]).strays[0]?.what;
    expect(stray('change-oli')).toBe('There is no task `change-oli` in this schedule; did you mean `change-oil`?');
    const [task] = tractor.tasks;
    const long = 'a'.repeat(80);
    const model = { ...tractor, tasks: task === undefined ? [] : [{ ...task, id: long }] };
    const near = (name: string): string | undefined => read([{ kind: 'done', id: 'x', on, tasks: [name] }], model).strays[0]?.what;
    expect(near(`${'a'.repeat(79)}b`)).toMatch(/did you mean/);
    expect(near(`${long}b`)).not.toMatch(/did you mean/);
  });
});

describe('strays', () => {
  test('stand in the order of entry and words, each once, whatever order they were found in', () => {
    const entries: readonly Entry[] = [
      { kind: 'stands', id: 'b', on, positions: { door: 'open', boot: 'open' } },
      { kind: 'done', id: 'a', on, tasks: ['paint'], used: { tar: 1 } },
      { kind: 'finding', id: 'c', on, task: 'paint', text: 'Rust.' },
      { kind: 'finding', id: 'd', on, task: 'change-oil', text: 'Black.' },
      { kind: 'finding', id: 'e', on, text: 'Wet.' },
    ];
    expect(read(entries).strays).toEqual([
      { entry: 'a', what: 'There is no supply `tar` in this schedule' },
      { entry: 'a', what: 'There is no task `paint` in this schedule' },
      { entry: 'b', what: 'There is no moving part `boot` in this schedule' },
      { entry: 'b', what: 'There is no moving part `door` in this schedule' },
      { entry: 'c', what: 'There is no task `paint` in this schedule' },
    ]);
  });

  test('two names of two kinds that read alike run together are told apart', () => {
    const entries: readonly Entry[] = [
      { kind: 'event', id: 'a', on, event: 'paint' },
      { kind: 'done', id: 'b', on, tasks: ['paint'] },
    ];
    expect(read(entries).strays.map(({ what }) => what)).toEqual([
      'There is no event `paint` in this schedule',
      'There is no task `paint` in this schedule',
    ]);
  });
});

test('what was never found is not among the defects, whatever was closed or mended', () => {
  const entries: readonly Entry[] = [
    { kind: 'defect-closed', id: 'a', on, defect: 'seep' },
    { kind: 'done', id: 'b', on, tasks: ['overhaul'] },
  ];
  expect(read(entries).defects).toEqual(new Map());
});

test('a meter counts time in just those units that measure it, each as the table of units has it', () => {
  const hour = findUnit('h');
  for (const unit of unitSpellings().flatMap((spelling) => findUnit(spelling) ?? [])) {
    const inADay = hour === null ? null : convert(24, hour, unit);
    expect(ticksPerDay({ unit: unit.symbol }), unit.symbol).toBe(inADay === null ? null : inADay * 36_000);
  }
  expect(ticksPerDay({ unit: 'loads' })).toBeNull();
  expect(ticksPerDay({ unit: 'toString' })).toBeNull();
});

describe('entries that speak of other entries', () => {
  const reading: Entry = { kind: 'reading', id: 'r', on, meters: { engine: 3 } };
  test.each<[string, Entry]>([
    ['There is no entry `gone` to void', { kind: 'void', id: 'x', on, entry: 'gone' }],
    ['There is no entry `gone` to confirm', { kind: 'confirm', id: 'x', on, entry: 'gone' }],
    ['There is no day 2026-02-30', { ...reading, id: 'x', on: '2026-02-30' }],
  ])('%s', (what, entry) => {
    expect(read([reading, entry])).toEqual({ ...read([reading]), strays: [{ entry: 'x', what }] });
  });

  test('voids in a circle are reported, each of them', () => {
    const round: readonly Entry[] = [
      { kind: 'void', id: 'v', on, entry: 'w' },
      { kind: 'void', id: 'w', on, entry: 'v' },
    ];
    const what = 'This void and the entry it names void each other; neither counts as a void';
    expect(read([reading, ...round]).strays).toEqual([
      { entry: 'v', what },
      { entry: 'w', what },
    ]);
  });

  test('of several confirmations the first in order speaks; a void of a later entry is seen once it is dated', () => {
    const suspect: Entry = { kind: 'reading', id: 's', on: '2026-05-02', meters: { engine: 900 } };
    const confirm = (id: string, day: string): Entry => ({ kind: 'confirm', id, on: day, entry: 's' });
    const points = read([reading, suspect, confirm('c2', '2026-05-04'), confirm('c1', '2026-05-05')]).meters.get('engine')?.points;
    expect(points?.map(({ entry, alongside }) => [entry, alongside])).toEqual([
      ['r', []],
      ['s', ['c2']],
    ]);
  });
});
