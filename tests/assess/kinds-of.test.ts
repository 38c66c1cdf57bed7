/** Which sets of kinds small schedules take, and histories with them: by what each set says that it is for. */
import { describe, expect, test } from 'vitest';
import { assess } from '../../src/assess/assess.js';
import { engineWith } from '../../src/assess/engine-with.js';
import { type KindSetName, kindSets } from '../../src/assess/kind-sets.js';
import { kindsOf } from '../../src/assess/kinds-of.js';
import type { Entry } from '../../src/history/entry.js';
import { compileText } from '../support/compile-text.js';
import { done, type Happenings, history, meters, moment } from '../support/history.js';

const now = moment('2026-05-08 07:30');
const ENGINE = 'meter engine "Hours" counts h';
const COOLANT = 'gauge coolant "Coolant" reads °C normal 70 to 97';
const OIL = 'dipstick oil "Oil" low to full is 2 L';
const WASH = 'event wash "Washed"';
const MOWER = 'attachment mower "Mower"';
const SEEP = 'defect seep "Seep" classes wetness "Wet", drops "Drops"';
const LOADER = 'position loader low, high\nat rest loader low';
const DUST = 'duty dusty "Dust"';

/** The sets that tasks take on a machine with these things, with what happened. */
function taken(things: readonly string[], tasks: readonly string[], happened: Happenings = []): readonly KindSetName[] {
  const graph = compileText([...things, ...tasks.map((task, index) => `task t${index} "Task ${index}"\n  ${task}`)].join('\n'));
  const entries = history(...happened);
  const names = kindsOf(graph, entries);
  const answerOf = (chosen: readonly KindSetName[]) => engineWith(chosen.map((name) => kindSets[name])).assess(graph, entries, now);
  expect(answerOf([...names, 'suggestions'])).toEqual({ kind: 'assessment', assessment: assess(graph, entries, now) });
  for (const name of names) expect(answerOf(names.filter((each) => each !== name)).kind, `without ${name}`).toBe('refused');
  return names;
}

describe('a schedule takes', () => {
  test.each<readonly [readonly KindSetName[], readonly string[], string]>([
    [['intervals'], [ENGINE], 'every 100 h of engine'],
    [['intervals', 'beats'], [ENGINE], 'every 100 h of engine\n  count from due if late'],
    [['intervals', 'beats'], [ENGINE], 'every 100 h of engine\n  count from due within the allowance'],
    [['intervals', 'calendar'], [], 'every 12 months'],
    [['intervals', 'calendar'], [ENGINE], 'every 100 h of engine or 12 months, whichever first'],
    [['intervals', 'whicheverLast', 'calendar'], [ENGINE], 'every 100 h of engine or 12 months, whichever last'],
    [['intervals', 'calendar'], [], 'every 6 months\n  allow 1 month late'],
    [['intervals', 'calendar', 'calendarMonths'], [], 'every 12 calendar months'],
    [['intervals', 'calendar', 'calendarMonths'], [], 'every 12 months less 1 day'],
    [['intervals', 'calendar', 'calendarMonths'], [], 'every 7 months plus 15 days'],
    [['intervals', 'calendar', 'calendarMonths'], [], 'every 6 months\n  allow 1 calendar month early'],
    [['intervals', 'hardStops'], [ENGINE], 'every 100 h of engine\n  hold 10 h late "Stop."'],
    [['intervals', 'serialNumbers'], [ENGINE], 'for serial 100 to 200\n  every 100 h of engine'],
    [['intervals', 'calendar', 'storedTime'], [], 'every 20 days, not counting storage'],
    [['intervals', 'severalTimes'], [ENGINE], 'every 100 h of engine 3 times'],
    [['intervals', 'calendar', 'severalTimes'], [], 'every 20 days 2 times, 5 days apart'],
    [['intervals', 'workTime'], [], 'every 20 min of work'],
    [['intervals', 'stagedServices'], [ENGINE], 'first at 20 h of engine\n  every 100 h of engine'],
    [['meterMarks'], [ENGINE], 'every multiple of 50 h of engine'],
    [['fixedDates'], [], 'every year on 1 April'],
    [['fixedDates'], [], 'every year in April'],
    [['calendarMonths', 'fixedDates'], [], 'every calendar year 2 times'],
    [['fixedDates', 'weekdayMarks'], [], 'every month on the first Monday'],
    [['fixedDates', 'weekdayMarks'], [], 'every 2 weeks on Monday from 2026-03-02'],
    [['duties'], [ENGINE, DUST], 'every 40 h of engine\n  in dusty every 20 h of engine'],
    [['occasions'], [], "before each day's work"],
    [['windows'], [], 'within 2 h before each outing'],
    [['happenings'], [WASH], 'on wash'],
    [['happenings'], [], 'on refuelling'],
    [['attachments'], [MOWER], 'after attaching mower'],
    [['attachments', 'conditions'], [MOWER], 'when mower is on'],
    [['conditions', 'seasons'], [], 'when date from 1 March to 31 May'],
    [['conditions', 'standstill'], [], 'when machine at work'],
    [['conditions', 'readings'], [COOLANT], 'when coolant above normal'],
    [['conditions', 'trends'], [COOLANT], 'when coolant climbs 6 °C within 20 min'],
    [['calendar', 'conditions', 'recency'], [WASH], 'when wash happened within 14 days'],
    [['conditions', 'positions'], [LOADER], 'when loader is high'],
    [['conditions', 'defects'], [SEEP], 'when seep is open'],
    [['intervals', 'conditions', 'seasons'], [ENGINE], 'every 100 h of engine\n  only if date from 1 March to 31 May'],
  ])('%s', (names, things, task) => {
    expect(taken(things, [task])).toEqual(names);
  });

  test('what its meters and stops ask for, whether or not a task does', () => {
    expect(taken(['meter out "Out" counts h from outings'], ['every 100 h of out'])).toEqual(['intervals', 'workTime']);
    expect(taken([COOLANT, 'stop hot "Too hot" when coolant above normal'], ["before each day's work"])).toEqual([
      'occasions',
      'conditions',
      'readings',
    ]);
  });

  test('no more for what its sets read', () => {
    const outing: Happenings[number][1] = { kind: 'outing', hours: 2 };
    const on = (...what: readonly Happenings[number][1][]): Happenings =>
      what.map((each, index) => [`2026-05-0${index + 1}`, each] as const);
    const cases: readonly (readonly [readonly KindSetName[], readonly string[], string, Happenings])[] = [
      [
        ['duties'],
        [ENGINE, DUST],
        'every 40 h of engine\n  in dusty every 20 h of engine',
        on(done('t0', { engine: 5 }), { ...outing, duties: [{ duty: 'dusty', hours: 2 }] }, meters({ engine: 9 })),
      ],
      [['intervals', 'workTime'], [], 'every 20 min of work', on(done('t0'), outing)],
      [['occasions'], [], 'after each outing', on(done('t0'), outing)],
      [['occasions'], [], 'after storage', on({ kind: 'storage', phase: 'begins' }, { kind: 'storage', phase: 'ends' })],
      [['windows'], [], 'within 2 h before each outing', on(done('t0'), { kind: 'outing' })],
      [['happenings'], [WASH], 'on wash', on({ kind: 'event', event: 'wash' })],
      [['happenings'], [], 'on refuelling', on({ kind: 'refuelled' })],
      [
        ['intervals', 'stagedServices'],
        [ENGINE, WASH],
        'at 1 h, 10 h of engine after wash',
        on(meters({ engine: 1 }), { kind: 'event', event: 'wash' }, meters({ engine: 5 })),
      ],
      [
        ['attachments'],
        [MOWER],
        'after attaching mower',
        on({ kind: 'attached', attachment: 'mower' }, { kind: 'detached', attachment: 'mower' }, { ...outing, attachments: ['mower'] }),
      ],
      [['conditions', 'standstill'], [], 'when no outing since t0', on(done('t0'), outing)],
      [['conditions', 'readings'], [COOLANT], 'when coolant above normal', on({ kind: 'reading', readings: { coolant: 99 } })],
      [
        ['conditions', 'trends'],
        [COOLANT],
        'when coolant climbs 6 °C within 20 min',
        [
          ['2026-05-01 08:00', { kind: 'reading', readings: { coolant: 80 } }],
          ['2026-05-01 08:10', { kind: 'reading', readings: { coolant: 99 } }],
          ['2026-05-02', outing],
        ],
      ],
      [['calendar', 'conditions', 'recency'], [WASH], 'when wash happened within 14 days', on({ kind: 'event', event: 'wash' })],
      [
        ['calendar', 'conditions', 'recency'],
        [COOLANT],
        'when not coolant read within 14 days',
        on({ kind: 'reading', readings: { coolant: 99 } }),
      ],
      [['conditions', 'positions'], [LOADER], 'when loader is high', on({ kind: 'stands', positions: { loader: 'high' } })],
      [
        ['conditions', 'defects'],
        [SEEP],
        'when seep is open',
        on({ kind: 'defect-opened', defect: 'seep' }, { kind: 'defect-closed', defect: 'seep' }, { kind: 'defect-opened', defect: 'seep' }),
      ],
      [
        ['intervals', 'occasions'],
        [ENGINE],
        // The storage that began with the reading is over: its end is cited with it.
        'every 100 h of engine\n  before storage',
        on(done('t0', { engine: 5 }), { kind: 'storage', phase: 'begins', meters: { engine: 9 } }, { kind: 'storage', phase: 'ends' }),
      ],
      [
        ['consumption'],
        [ENGINE, OIL],
        'sooner at half the time that oil takes to fall to low',
        on(
          { kind: 'reading', readings: { oil: 'full' }, meters: { engine: 0 } },
          { kind: 'topped-up', dipstick: 'oil', litres: 1 },
          { kind: 'reading', readings: { oil: 'low' }, meters: { engine: 20 } },
        ),
      ],
      [
        ['intervals', 'calendar', 'storedTime'],
        [],
        'every 3 days, not counting storage',
        on(done('t0'), { kind: 'storage', phase: 'begins' }),
      ],
    ];
    for (const [names, things, task, happened] of cases) expect([task, ...taken(things, [task], happened)]).toEqual([task, ...names]);
  });

  test('links where a task covers or restarts another', () => {
    expect(taken([ENGINE], ['every 100 h of engine', 'every 500 h of engine\n  covers t0'])).toEqual(['intervals', 'links']);
    expect(taken([ENGINE], ['every 100 h of engine', 'every 500 h of engine\n  restarts t0'])).toEqual(['intervals', 'links']);
  });

  test('wholes where parts make up a task, and the kinds of all tasks together', () => {
    expect(taken([ENGINE], ['every 100 h of engine\n  met by t1, t2', 'every 12 months', 'before each outing'])).toEqual([
      'intervals',
      'calendar',
      'occasions',
      'wholes',
    ]);
  });

  test('what reads, and what follows from a reading', () => {
    const reads = 'every 12 months\n  reads oil\n    below low hold "Too low." then t1 now\n    low to full fine\n    above full fine';
    expect(taken([OIL], [reads, 'every 12 months'])).toEqual(['intervals', 'calendar', 'readings', 'followUps']);
    expect(taken([OIL], ['sooner at half the time that oil takes to fall to low', 'every 12 months'])).toEqual([
      'intervals',
      'calendar',
      'consumption',
    ]);
  });
});

test('a schedule alone takes what it takes with nothing on record', () => {
  expect(kindsOf(compileText(`${ENGINE}\ntask t "Task" every 100 h of engine`))).toEqual(['intervals']);
});

describe('a history takes', () => {
  const oil = 'every 100 h of engine';
  const of = (...entries: readonly Entry[]): readonly KindSetName[] => {
    const graph = compileText([ENGINE, COOLANT, WASH, MOWER, SEEP, LOADER, `task t0 "Task"\n  ${oil}`].join('\n'));
    return kindsOf(graph, entries).filter((name) => name !== 'intervals' && name !== 'defects');
  };
  const on = '2026-05-01';

  test.each<readonly [KindSetName, Entry]>([
    ['corrections', { kind: 'void', id: 'v', on, entry: 'x' }],
    ['corrections', { kind: 'confirm', id: 'c', on, entry: 'x' }],
    ['statements', { kind: 'stated', id: 's', on, task: 't0' }],
    ['replacedMeters', { kind: 'meter-replaced', id: 'r', on, meter: 'engine', final: 9, initial: 0 }],
    ['positions', { kind: 'stands', id: 'p', on, positions: { loader: 'high' } }],
    ['attachments', { kind: 'attached', id: 'a', on, attachment: 'mower' }],
    ['attachments', { kind: 'detached', id: 'd', on, attachment: 'mower' }],
    ['consumption', { kind: 'topped-up', id: 't', on, dipstick: 'oil', litres: 1 }],
    ['happenings', { kind: 'refuelled', id: 'f', on }],
  ])('%s for what only they read', (name, entry) => {
    expect(of(entry)).toEqual([name]);
  });

  test('mergedLogbooks where two entries have one id, whether or not they are the same', () => {
    const reading: Entry = { kind: 'reading', id: 'r', on, meters: { engine: 5 } };
    expect(of(reading, reading)).toEqual(['mergedLogbooks']);
    expect(of(reading, { kind: 'done', id: 'r', on, tasks: ['t0'] })).toEqual(['mergedLogbooks']);
  });

  test('nothing more for readings of meters and what was done', () => {
    expect(of(...history(['2026-05-01', done('t0', { engine: 5 })]))).toEqual([]);
  });
});
