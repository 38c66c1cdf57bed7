import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Entry } from '../../src/history/entry.js';
import { readTimeline } from '../../src/history/read-timeline.js';
import { dayOf } from '../../src/values/civil.js';
import { parseTime } from '../../src/values/moment.js';
import type { Day, Moment } from '../../src/values/moment.js';
import { tractor } from './machine-model.js';

function at(text: string): Moment {
  const [date = '', time] = text.split(' ');
  return { day: dayOf(date) ?? (0 as Day), minute: time === undefined ? null : parseTime(time) };
}

const now = at('2026-12-31');

function read(entries: readonly Entry[], when = now) {
  return readTimeline(entries, tractor, when);
}

/** A reading of the engine meter; the id is what the tests call it by. */
function engine(id: string, when: string, hours: number): Entry {
  const [on = '', time] = when.split(' ');
  return { kind: 'reading', id, on, ...(time === undefined ? {} : { at: time }), meters: { engine: hours } };
}

function points(entries: readonly Entry[], meter = 'engine') {
  return read(entries)
    .meters.get(meter)
    ?.points.map(({ entry, total, shown }) => [entry, total / 36_000, shown]);
}

describe('what counts', () => {
  const [a, b] = [engine('a', '2026-05-01', 100), engine('b', '2026-05-02', 110)];
  test('entries after now are not seen, those of its day are', () => {
    expect(
      read([a, b], at('2026-05-01'))
        .meters.get('engine')
        ?.points.map((point) => point.entry),
    ).toEqual(['a']);
    expect(read([engine('c', '2026-05-01 10:00', 1)], at('2026-05-01 09:59')).meters.get('engine')?.points).toEqual([]);
    expect(read([engine('c', '2026-05-01 10:00', 1)], at('2026-05-01')).meters.get('engine')?.points).toHaveLength(1);
  });
  test('the same entry twice is one; two that differ under one id are both set aside', () => {
    expect(read([a, { ...a }])).toEqual(read([a]));
    const clash = read([a, b, { ...a, on: '2026-05-03' }]);
    expect(clash.meters.get('engine')?.points.map((point) => point.entry)).toEqual(['b']);
    expect(clash.strays).toEqual([{ entry: 'a', what: 'Two different entries have this id; neither is used' }]);
  });
  test('a void takes an entry out; a void of the void brings it back', () => {
    const first: Entry = { kind: 'void', id: 'v1', on: '2026-05-03', entry: 'a' };
    const second: Entry = { kind: 'void', id: 'v2', on: '2026-05-03', entry: 'v1' };
    const third: Entry = { kind: 'void', id: 'v0', on: '2026-05-03', entry: 'v2' };
    expect(points([a, b, first])?.map(([id]) => id)).toEqual(['b']);
    expect(points([a, b, first, second])?.map(([id]) => id)).toEqual(['a', 'b']);
    expect(points([a, b, first, second, third])?.map(([id]) => id)).toEqual(['b']);
    expect(read([a, first], at('2026-05-02')).meters.get('engine')?.points).toHaveLength(1);
  });
  test('a void taken back twice over stays taken back when only one of the two is', () => {
    const voids: readonly Entry[] = [
      { kind: 'void', id: 'v1', on: '2026-05-03', entry: 'a' },
      { kind: 'void', id: 'v2', on: '2026-05-03', entry: 'v1' },
      { kind: 'void', id: 'v3', on: '2026-05-03', entry: 'v1' },
      { kind: 'void', id: 'v4', on: '2026-05-03', entry: 'v3' },
    ];
    expect(points([a, ...voids])?.map(([id]) => id)).toEqual(['a']);
  });
  test('a void that is taken back twice over is settled once: what else names its entry still has its say', () => {
    const voids = (...pairs: readonly (readonly [id: string, entry: string])[]): readonly Entry[] =>
      pairs.map(([id, entry]) => ({ kind: 'void', id, on: '2026-05-03', entry }));
    // v4 and v5 take v3 back, which would have taken v2 back; v1 does, and so a stands.
    const entries = [a, b, ...voids(['v1', 'v2'], ['v2', 'a'], ['v3', 'v2'], ['v4', 'v3'], ['v5', 'v3'])];
    expect(points(entries)?.map(([id]) => id)).toEqual(['a', 'b']);
  });
  test('voids in a circle and voids of nothing are reported and do nothing', () => {
    const timeline = read([
      a,
      { kind: 'void', id: 'v1', on: '2026-05-03', entry: 'v2' },
      { kind: 'void', id: 'v2', on: '2026-05-03', entry: 'v1' },
      { kind: 'void', id: 'v3', on: '2026-05-03', entry: 'nowhere' },
      { kind: 'confirm', id: 'v4', on: '2026-05-03', entry: 'nowhere' },
    ]);
    expect(timeline.strays.map((stray) => stray.entry)).toEqual(['v1', 'v2', 'v3', 'v4']);
    expect(timeline.meters.get('engine')?.points).toHaveLength(1);
  });
});

describe('meters', () => {
  test('the life total adds up over a replaced meter', () => {
    const entries: readonly Entry[] = [
      engine('a', '2026-05-01', 1300),
      { kind: 'meter-replaced', id: 'r', on: '2026-05-03', meter: 'engine', final: 1302, initial: 5 },
      engine('old', '2026-05-03', 1301),
      engine('new', '2026-05-03', 6),
      engine('b', '2026-05-04', 9.05),
    ];
    expect(points(entries)).toEqual([
      ['a', 1300, 1300],
      ['old', 1301, 1301],
      ['r', 1302, 5],
      ['new', 1303, 6],
      ['b', 1306.05, 9.05],
    ]);
    expect(read(entries).meters.get('engine')?.points.at(-1)?.alongside).toEqual(['r']);
    expect(read(entries).suspects).toEqual([]);
  });
  test('within a day readings come in order of value, unless both have minutes', () => {
    expect(
      points([engine('a', '2026-05-01', 102), engine('b', '2026-05-01 12:00', 101), engine('c', '2026-05-01', 100)])?.map(([id]) => id),
    ).toEqual(['c', 'b', 'a']);
    expect(read([engine('a', '2026-05-01 08:00', 102), engine('b', '2026-05-01 12:00', 101)]).suspects).toMatchObject([
      { entry: 'b', why: 'falls', against: 'a' },
    ]);
  });
  test('one that does not count cannot push the others of its day out of place', () => {
    const entries = [
      engine('w', '2026-04-30', 89),
      engine('d', '2026-05-01 08:00', 200),
      engine('c', '2026-05-01 09:00', 90),
      engine('b', '2026-05-01', 100),
    ];
    expect(points(entries)?.map(([id]) => id)).toEqual(['w', 'c', 'b']);
    expect(read(entries).suspects).toMatchObject([{ entry: 'd', why: 'rises-too-fast', against: 'w' }]);
  });
  test('an hour meter gains at most 24 h for each day, both included, or the minutes between', () => {
    expect(read([engine('a', '2026-05-01', 100), engine('b', '2026-05-02', 148)]).suspects).toEqual([]);
    expect(read([engine('a', '2026-05-01', 100), engine('b', '2026-05-02', 148.1)]).suspects).toMatchObject([
      { entry: 'b', shown: 148.1, against: 'a' },
    ]);
    expect(read([engine('a', '2026-05-01 10:00', 100), engine('b', '2026-05-01 10:30', 100.5)]).suspects).toEqual([]);
    expect(read([engine('a', '2026-05-01 10:00', 100), engine('b', '2026-05-01 10:30', 100.6)]).suspects).toHaveLength(1);
    const road = (id: string, on: string, km: number): Entry => ({ kind: 'reading', id, on, meters: { road: km } });
    expect(read([road('a', '2026-05-01', 100), road('b', '2026-05-01', 900)]).suspects).toEqual([]);
  });
  test('a suspect rise counts once confirmed, and is what later ones are held against', () => {
    const entries: readonly Entry[] = [engine('a', '2026-05-01', 100), engine('b', '2026-05-02', 400), engine('c', '2026-05-03', 402)];
    expect(read(entries).suspects.map(({ entry }) => entry)).toEqual(['b', 'c']);
    const confirmed = read([...entries, { kind: 'confirm', id: 'ok', on: '2026-05-04', entry: 'b' }]);
    expect(confirmed.suspects).toEqual([]);
    expect(confirmed.meters.get('engine')?.points.map(({ entry, alongside }) => [entry, alongside])).toEqual([
      ['a', []],
      ['b', ['ok']],
      ['c', ['b', 'ok']],
    ]);
  });
  test('a fall that is confirmed is a dial set back: the life total goes on', () => {
    const entries: readonly Entry[] = [
      engine('a', '2026-05-01', 100),
      engine('b', '2026-05-02', 3),
      engine('c', '2026-05-03', 5),
      { kind: 'confirm', id: 'ok', on: '2026-05-04', entry: 'b' },
    ];
    expect(points(entries)).toEqual([
      ['a', 100, 100],
      ['b', 100, 3],
      ['c', 102, 5],
    ]);
    expect(
      read(entries)
        .meters.get('engine')
        ?.points.map(({ alongside }) => alongside),
    ).toEqual([[], ['a', 'ok'], ['a', 'ok', 'b']]);
  });
  test('from a fall that is confirmed on a rise is measured anew, whatever was read at which minute before', () => {
    const entries: readonly Entry[] = [
      engine('a', '2026-05-01 23:59', 100),
      engine('b', '2026-05-02', 20),
      { kind: 'confirm', id: 'ok', on: '2026-05-03', entry: 'b' },
      engine('c', '2026-05-02 00:30', 25),
    ];
    expect(points(entries)).toEqual([
      ['a', 100, 100],
      ['b', 100, 20],
      ['c', 105, 25],
    ]);
  });
  test('a meter from outings adds up those that ended and those under way so far, an attachment’s those with it', () => {
    const out = (id: string, on: string, more: object): Entry => ({ kind: 'outing', id, on, ...more });
    const entries: readonly Entry[] = [
      out('a', '2026-05-01', { at: '08:00', until: '10:00', attachments: ['flail-mower'] }),
      out('b', '2026-05-02', { hours: 1.5 }),
      { kind: 'attached', id: 'on', on: '2026-05-03', attachment: 'flail-mower' },
      out('c', '2026-05-03', { hours: 1 }),
      out('d', '2026-05-04', { at: '08:00' }),
      { kind: 'reading', id: 'r', on: '2026-05-04', meters: { work: 99 } },
    ];
    expect(points(entries, 'work')).toEqual([
      ['a', 2, 2],
      ['b', 3.5, 3.5],
      ['c', 4.5, 4.5],
      ['d', 4.5, 4.5],
    ]);
    expect(points(entries, 'mower')).toEqual([
      ['a', 2, 2],
      ['c', 3, 3],
      ['d', 3, 3],
    ]);
    expect(read(entries).meters.get('mower')?.points.at(-1)?.alongside).toEqual(['on']);
    expect(read(entries).strays).toEqual([{ entry: 'r', what: '`work` counts from outings; a reading of it is not used' }]);
  });
});

describe('outings', () => {
  const outing = (more: object, when = now) => read([{ kind: 'outing', id: 'o', on: '2026-05-01', ...more }], when).outings[0];
  test.each([
    [{ at: '08:00', until: '10:30' }, '2026-05-01 10:30', 2.5],
    [{ at: '22:00', until: '01:00' }, '2026-05-02 01:00', 3],
    [{ at: '22:00', until: '23:00', untilOn: '2026-05-02' }, '2026-05-02 23:00', 25],
    [{ at: '08:00', hours: 2 }, '2026-05-01 10:00', 2],
    [{ hours: 2 }, '2026-05-01', 2],
    [{ until: '10:00' }, '2026-05-01 10:00', 0],
    [{ until: '10:00', hours: 3 }, '2026-05-01 10:00', 3],
  ])('%j ends at %s after %d h', (more, end, hours) => {
    expect(outing(more)).toMatchObject({ end: at(end), ticks: hours * 36_000 });
  });
  test('is under way without end and hours, and as long as its end is to come', () => {
    expect(outing({ at: '08:00' })?.end).toBeNull();
    expect(outing({ at: '08:00', until: '10:00' }, at('2026-05-01 09:00'))).toMatchObject({ end: null, ticks: 36_000 });
    expect(outing({ at: '08:00', hours: 1.02 }, at('2026-05-01 09:01'))?.end).toEqual(at('2026-05-01 09:01'));
  });
  test('hours in a duty are those noted, else all of them; the reading was taken at the end', () => {
    const entry: Entry = {
      kind: 'outing',
      id: 'o',
      on: '2026-05-01',
      at: '08:00',
      until: '10:00',
      duties: [{ duty: 'tall-growth' }, { duty: 'nowhere', hours: 1 }],
      meters: { engine: 7 },
    };
    const timeline = read([entry]);
    expect(timeline.outings[0]?.duties).toEqual([{ duty: 'tall-growth', ticks: 72_000 }]);
    expect(timeline.outings[0]?.meters.get('engine')?.when).toEqual(at('2026-05-01 10:00'));
    expect(timeline.strays).toEqual([{ entry: 'o', what: 'There is no duty `nowhere` in this schedule' }]);
  });
  test('one that ends before it begins is reported', () => {
    expect(read([{ kind: 'outing', id: 'o', on: '2026-05-02', untilOn: '2026-05-01' }]).strays).toEqual([
      { entry: 'o', what: 'This outing ends before it begins' },
    ]);
  });
  test('what was read with one that ends before it begins was read at its start', () => {
    const { meters, outings } = read([
      { kind: 'outing', id: 'o', on: '2026-05-02', at: '08:00', untilOn: '2026-05-01', until: '09:00', meters: { engine: 105 } },
    ]);
    expect(outings).toEqual([]);
    expect(meters.get('engine')?.points).toMatchObject([{ entry: 'o', when: at('2026-05-02 08:00'), shown: 105 }]);
  });
});

describe('spells', () => {
  const opened = (id: string, when: string, name?: string): Entry =>
    stamped({ kind: 'defect-opened', id, defect: 'seep', ...(name === undefined ? {} : { class: name }) }, when);
  const closed = (id: string, when: string): Entry => stamped({ kind: 'defect-closed', id, defect: 'seep' }, when);
  const seep = (entries: readonly Entry[]) =>
    read(entries)
      .defects.get('seep')
      ?.map(({ begin, end, class: noted }) => [begin.entry, end?.entry ?? null, noted?.name ?? null]);
  test('a defect opens, changes class and is closed by an entry or by what mends it', () => {
    const entries = [opened('a', '2026-05-01', 'wetness'), opened('b', '2026-05-03', 'drops-form'), opened('c', '2026-05-04')];
    expect(seep(entries)).toEqual([['a', null, 'drops-form']]);
    expect(seep([...entries, closed('d', '2026-05-05')])).toEqual([['a', 'd', 'drops-form']]);
    expect(seep([...entries, { kind: 'done', id: 'd', on: '2026-05-05', tasks: ['tighten-fitting'] }])).toEqual([['a', 'd', 'drops-form']]);
    expect(seep([...entries, { kind: 'done', id: 'd', on: '2026-05-05', tasks: ['overhaul'] }])).toEqual([['a', 'd', 'drops-form']]);
    expect(seep([...entries, { kind: 'done', id: 'd', on: '2026-05-05', tasks: ['change-oil'] }])).toEqual([['a', null, 'drops-form']]);
  });
  test('on one day without minutes: found and mended is closed, mended and found again is open', () => {
    expect(seep([opened('z', '2026-05-01'), closed('a', '2026-05-01')])).toEqual([['z', 'a', null]]);
    expect(seep([opened('z', '2026-05-01 10:00'), closed('a', '2026-05-01')])).toEqual([['z', 'a', null]]);
    expect(seep([opened('a', '2026-05-01'), closed('b', '2026-05-02'), opened('c', '2026-05-02')])).toEqual([
      ['a', 'b', null],
      ['c', null, null],
    ]);
    expect(seep([opened('a', '2026-05-01'), opened('c', '2026-05-02 09:00'), closed('b', '2026-05-02 10:00')])).toEqual([['a', 'b', null]]);
  });
  test('an outing puts an attachment on; another without it, or an entry, takes it off', () => {
    const out = (id: string, on: string, ...attachments: string[]): Entry => ({ kind: 'outing', id, on, hours: 1, attachments });
    const mower = (entries: readonly Entry[]) =>
      read(entries)
        .attachments.get('flail-mower')
        ?.map(({ begin, end }) => [begin.entry, end?.entry ?? null]);
    expect(mower([out('a', '2026-05-01', 'flail-mower'), out('b', '2026-05-02', 'flail-mower')])).toEqual([['a', null]]);
    expect(mower([out('a', '2026-05-01', 'flail-mower'), out('b', '2026-05-02')])).toEqual([['a', 'b']]);
    const on: Entry = { kind: 'attached', id: 'on', on: '2026-05-03', attachment: 'flail-mower' };
    const off: Entry = { kind: 'detached', id: 'off', on: '2026-05-04', attachment: 'flail-mower' };
    expect(mower([on, out('c', '2026-05-03'), off, out('d', '2026-05-04', 'flail-mower')])).toEqual([['on', 'off']]);
    expect(mower([out('a', '2026-05-01', 'flail-mower'), on])).toEqual([
      ['a', 'on'],
      ['on', null],
    ]);
  });
  test('what has no minute stands before the first minutes of its day', () => {
    const spellsOf = (...entries: readonly Entry[]) =>
      read(entries)
        .attachments.get('flail-mower')
        ?.map(({ begin, end }) => [begin.entry, end?.entry ?? null]);
    const on = (at?: string): Entry => ({ kind: 'attached', id: 'on', on: '2026-05-03', ...(at && { at }), attachment: 'flail-mower' });
    const used = (at?: string): Entry => ({ kind: 'outing', id: 'a', on: '2026-05-03', ...(at && { at }), attachments: ['flail-mower'] });
    const [first, off] = [
      { kind: 'attached', id: 'first', on: '2026-05-01', attachment: 'flail-mower' },
      { kind: 'detached', id: 'off', on: '2026-05-03', attachment: 'flail-mower' },
    ] as const;
    expect(spellsOf(on(), used('00:00'))).toEqual([['on', null]]);
    expect(spellsOf(first, off, used('00:00'), on())).toEqual([
      ['first', 'off'],
      ['a', 'on'],
      ['on', null],
    ]);
    // At the same minute the order of the ids decides.
    expect(spellsOf(on('08:00'), used('08:00'))).toEqual([
      ['a', 'on'],
      ['on', null],
    ]);
    expect(spellsOf(on('00:00'), used())).toEqual([
      ['a', 'on'],
      ['on', null],
    ]);
  });
  test('storage begins and ends', () => {
    const entries: readonly Entry[] = [
      { kind: 'storage', id: 'a', on: '2026-01-01', phase: 'begins' },
      { kind: 'storage', id: 'b', on: '2026-03-01', phase: 'ends' },
      { kind: 'storage', id: 'c', on: '2026-11-01', phase: 'begins' },
    ];
    expect(read(entries).storage.map(({ begin, end }) => [begin.entry, end?.entry ?? null])).toEqual([
      ['a', 'b'],
      ['c', null],
    ]);
  });
});

describe('what a total rests on', () => {
  const replaced = (id: string, on: string, final: number, initial = 0): Entry => ({
    kind: 'meter-replaced',
    id,
    on,
    meter: 'engine',
    final,
    initial,
  });
  const [first, second] = [replaced('r1', '2026-05-02', 100), replaced('r2', '2026-05-04', 50, 7)];

  test('of a dial put in place of another is every replacement before it, and not itself twice', () => {
    const entries = [engine('a', '2026-05-01', 90), first, engine('b', '2026-05-03', 20), second, engine('c', '2026-05-05', 9)];
    expect(
      read(entries)
        .meters.get('engine')
        ?.points.map(({ entry, total, alongside }) => [entry, total / 36_000, alongside]),
    ).toEqual([
      ['a', 90, []],
      ['r1', 100, []],
      ['b', 120, ['r1']],
      ['r2', 150, ['r1']],
      ['c', 152, ['r1', 'r2']],
    ]);
  });

  test('of a dial that was set back is what it fell from, the fall and its confirmation; of what that notes besides, not itself', () => {
    const confirm: Entry = { kind: 'confirm', id: 'c', on: '2026-05-04', entry: 'b', meters: { engine: 25 } };
    const entries = [engine('a', '2026-05-01', 100), engine('b', '2026-05-03', 20), confirm, engine('d', '2026-05-05', 30)];
    expect(
      read(entries)
        .meters.get('engine')
        ?.points.map(({ entry, total, alongside }) => [entry, total / 36_000, [...alongside].sort()]),
    ).toEqual([
      ['a', 100, []],
      ['b', 100, ['a', 'c']],
      ['c', 105, ['a', 'b']],
      ['d', 110, ['a', 'b', 'c']],
    ]);
  });

  test('is a confirmation too where that had a say in the order of the day, though the reading would count without', () => {
    const confirm = (entry: string): Entry => ({ kind: 'confirm', id: 'c', on: '2026-05-02', entry });
    const day = [engine('a', '2026-05-01', 100), engine('b', '2026-05-01 08:00', 103)];
    const rests = (...more: readonly Entry[]) =>
      read([...day, ...more])
        .meters.get('engine')
        ?.points.map(({ entry, alongside }) => [entry, alongside]);
    expect(rests()).toEqual([
      ['a', []],
      ['b', []],
    ]);
    expect(rests(confirm('b'))).toEqual([
      ['a', []],
      ['b', ['c']],
    ]);
    expect(rests(confirm('a'))).toEqual([
      ['a', ['c']],
      ['b', []],
    ]);
  });

  test('is no confirmation where all of the day have minutes, or none has, and it would count without', () => {
    const confirm: Entry = { kind: 'confirm', id: 'c', on: '2026-05-02', entry: 'b' };
    for (const [a, b] of [
      ['2026-05-01 07:00', '2026-05-01 08:00'],
      ['2026-05-01', '2026-05-01'],
    ] as const) {
      const { meters } = read([engine('a', a, 100), engine('b', b, 100.5), confirm]);
      expect(meters.get('engine')?.points.map(({ entry, alongside }) => [entry, alongside])).toEqual([
        ['a', []],
        ['b', []],
      ]);
    }
  });

  test('is told of what is stated on a dial that is not the first: the replacements, and not the readings in between', () => {
    const stated: Entry = { kind: 'stated', id: 's', on: '2026-05-06', task: 'change-oil', doneBy: '2026-05-03', doneAt: { engine: 18 } };
    const dials = (...entries: readonly Entry[]) => read([...entries, stated]).statements.get('change-oil')?.[0];
    expect(dials(first, engine('b', '2026-05-03', 20))).toMatchObject({
      doneAt: new Map([['engine', 118 * 36_000]]),
      dials: new Map([['engine', ['r1']]]),
    });
    expect(dials(first)).toMatchObject({ dials: new Map([['engine', ['r1']]]) });
    expect(dials(engine('b', '2026-05-03', 20))).toMatchObject({ dials: new Map() });
  });

  test('that rises too fast is held against the reading just before it where it can be, else against the one that leaves least room', () => {
    const against = (hours: number) =>
      read([engine('a', '2026-05-01', 100), engine('b', '2026-05-02', 145), engine('c', '2026-05-03', hours)]).suspects.map(
        (each) => each.against,
      );
    // Three days of 24 h since the first, two since the second, both days of each counted whole.
    expect([172, 173, 193, 194].map(against)).toEqual([[], ['a'], ['a'], ['b']]);
  });
});

describe('the rest', () => {
  test('doings, statements, instruments, positions, events, top-ups and the machine', () => {
    const timeline = read([
      { kind: 'machine', id: 'm', on: '2026-01-01', model: 'Tarn 55', serial: 1200, inService: '2020-05-01' },
      {
        kind: 'done',
        id: 'd',
        on: '2026-05-01',
        tasks: ['change-oil', 'change-oil', 'chnage-oil'],
        meters: { engine: 50 },
        used: { oil: 6, tar: 1 },
      },
      { kind: 'stated', id: 's', on: '2026-05-01', task: 'change-oil', doneBy: '2025-01-01', doneAt: { engine: 12 } },
      { kind: 'reading', id: 'i', on: '2026-05-01', readings: { coolant: 80, 'engine-oil': 'below-low' } },
      { kind: 'reading', id: 'j', on: '2026-05-02', readings: { coolant: 'low', 'engine-oil': 0.5 } },
      { kind: 'stands', id: 'p', on: '2026-05-02', positions: { loader: 'raised', boom: 'up' } },
      { kind: 'stands', id: 'q', on: '2026-05-03', positions: { loader: 'sideways' } },
      { kind: 'event', id: 'e', on: '2026-05-03', event: 'wheel-refit' },
      { kind: 'topped-up', id: 't', on: '2026-05-03', dipstick: 'engine-oil', litres: 0.5 },
      { kind: 'refuelled', id: 'f', on: '2026-05-03' },
    ]);
    expect(timeline.machine).toEqual({ entry: 'm', model: 'Tarn 55', serial: 1200, inService: dayOf('2020-05-01') });
    expect(timeline.doings.get('change-oil')).toHaveLength(1);
    expect(timeline.doings.get('change-oil')?.[0]?.meters.get('engine')?.total).toBe(50 * 36_000);
    expect(timeline.statements.get('change-oil')?.[0]?.doneAt).toEqual(new Map([['engine', 12 * 36_000]]));
    expect(timeline.instruments.get('engine-oil')?.map(({ value }) => value)).toEqual([-Infinity, 0.5]);
    expect(timeline.instruments.get('coolant')?.map(({ value }) => value)).toEqual([80]);
    expect(timeline.positions.get('loader')).toMatchObject({ entry: 'p', position: 'raised' });
    expect([timeline.events.get('wheel-refit')?.length, timeline.topUps.length, timeline.refuellings.length]).toEqual([1, 1, 1]);
    expect(timeline.strays).toEqual([
      { entry: 'd', what: 'There is no supply `tar` in this schedule' },
      { entry: 'd', what: 'There is no task `chnage-oil` in this schedule; did you mean `change-oil`?' },
      { entry: 'j', what: '`coolant` is a gauge; `low` is a mark of a dipstick' },
      { entry: 'p', what: 'There is no moving part `boom` in this schedule' },
      { entry: 'q', what: 'There is no position of `loader` named `sideways` in this schedule' },
    ]);
  });
  test('names like those of object members are only names', () => {
    const entry = JSON.parse(
      '{"kind":"reading","id":"x","on":"2026-05-01","meters":{"__proto__":1,"constructor":2,"toString":3}}',
    ) as Entry;
    expect(read([entry]).strays.map(({ what }) => what.split('`')[1])).toEqual(['__proto__', 'constructor', 'toString']);
  });
});

function stamped(entry: object, when: string): Entry {
  const [on, time] = when.split(' ');
  return { ...entry, on, ...(time === undefined ? {} : { at: time }) } as Entry;
}

describe('laws', () => {
  const day = fc.integer({ min: 1, max: 9 }).map((of) => `2026-05-0${of}`);
  const time = fc.option(fc.constantFrom('06:00', '09:30', '12:00', '18:00', '23:59'), { nil: undefined });
  const reading = fc.record({
    kind: fc.constant('reading'),
    on: day,
    at: time,
    meters: fc.record({ engine: fc.integer({ min: 0, max: 320 }) }),
  });
  const replaced = fc.record({
    kind: fc.constant('meter-replaced'),
    on: day,
    at: time,
    meter: fc.constant('engine'),
    final: fc.integer({ min: 0, max: 300 }),
    initial: fc.integer({ min: 0, max: 50 }),
  });
  const names = fc.constantFrom('e0', 'e1', 'e2', 'e3', 'e4', 'e5');
  const others = fc.oneof(
    fc.record({ kind: fc.constantFrom('void', 'confirm'), on: day, at: time, entry: names }),
    fc.record({ kind: fc.constantFrom('attached', 'detached'), on: day, at: time, attachment: fc.constant('flail-mower') }),
    fc.record({
      kind: fc.constant('defect-opened'),
      on: day,
      at: time,
      defect: fc.constant('seep'),
      class: fc.constantFrom('wetness', 'drops-form', 'x'),
    }),
    fc.record({ kind: fc.constant('defect-closed'), on: day, at: time, defect: fc.constant('seep') }),
    fc.record({
      kind: fc.constant('done'),
      on: day,
      at: time,
      tasks: fc.constantFrom(['change-oil'], ['overhaul', 'nowhere']),
      meters: fc.record({ engine: fc.integer({ min: 0, max: 300 }) }),
    }),
    fc.record({
      kind: fc.constant('outing'),
      on: day,
      at: time,
      until: time,
      hours: fc.constantFrom(1, undefined),
      attachments: fc.constantFrom(undefined, ['flail-mower']),
      meters: fc.record({ engine: fc.integer({ min: 0, max: 300 }) }),
    }),
  );
  const entries = fc
    .array(fc.oneof({ arbitrary: reading, weight: 3 }, replaced, { arbitrary: others, weight: 3 }), { maxLength: 14 })
    .map((list) => list.map((entry, index) => ({ ...entry, id: `e${index}` }) as Entry));

  test('the order of the entries does not matter', () => {
    fc.assert(
      fc.property(
        entries.chain((list) => fc.tuple(fc.constant(list), fc.shuffledSubarray(list, { minLength: list.length }))),
        ([list, shuffled]) => {
          expect(readTimeline(shuffled, tractor, at('2026-05-08'))).toEqual(readTimeline(list, tractor, at('2026-05-08')));
        },
      ),
      { numRuns: 500 },
    );
  });

  test('totals never fall, whatever is confirmed or replaced', () => {
    fc.assert(
      fc.property(entries, (list) => {
        const found = readTimeline(list, tractor, now).meters.get('engine')?.points ?? [];
        found.forEach((point, index) => {
          const before = found[index - 1];
          if (before !== undefined) expect(point.total).toBeGreaterThanOrEqual(before.total);
        });
      }),
      { numRuns: 500 },
    );
  });

  // Replacements shift everything after them, so a subset keeps them; and it keeps what a point says that it rests on.
  test('any part of the entries that count still counts, closed under what each rests on', () => {
    const some = fc.array(
      fc.oneof({ arbitrary: reading, weight: 4 }, fc.record({ kind: fc.constant('confirm'), on: day, at: time, entry: names })),
      { maxLength: 14 },
    );
    fc.assert(
      fc.property(some, fc.infiniteStream(fc.boolean()), (raw, keep) => {
        const list = raw.map((entry, index) => ({ ...entry, id: `e${index}` }));
        const found = readTimeline(list, tractor, now).meters.get('engine')?.points ?? [];
        const kept = new Set(found.filter(() => keep.next().value).flatMap(({ entry, alongside }) => [entry, ...alongside]));
        for (const point of found) if (kept.has(point.entry)) for (const other of point.alongside) kept.add(other);
        const again = readTimeline(
          list.filter(({ id }) => kept.has(id)),
          tractor,
          now,
        );
        const expected = found.filter(({ entry }) => kept.has(entry)).map(({ entry, total }) => [entry, total]);
        expect(again.meters.get('engine')?.points.map(({ entry, total }) => [entry, total])).toEqual(expected);
        expect(again.suspects).toEqual([]);
      }),
      { numRuns: 3000 },
    );
  });

  test('made-up histories cost little more than honest ones', () => {
    const on = '2026-05-01';
    const kinds: readonly ((index: number) => readonly Entry[])[] = [
      (index) => [{ kind: 'meter-replaced', id: `x${index}`, on, meter: 'engine', final: index, initial: index % 7 }],
      (index) => [engine(`x${index}`, on, index % 2 === 0 ? 500 : 3), { kind: 'confirm', id: `c${index}`, on, entry: `x${index}` }],
      (index) => [{ kind: index % 2 === 0 ? 'defect-opened' : 'defect-closed', id: `x${index}`, on, defect: 'seep' }],
      (index) => [{ kind: 'stated', id: `x${index}`, on, task: 'change-oil' }],
      (index) => [{ kind: 'void', id: `x${index}`, on, entry: `x${index + 1}` }],
      (index) => [{ kind: 'event', id: `x${index}`, on, event: `no-such-${index % 50}` }],
      (index) => [{ kind: 'outing', id: `x${index}`, on, hours: 1, attachments: index % 2 === 0 ? ['flail-mower'] : [] }],
    ];
    for (const kind of kinds) {
      const many = Array.from({ length: 5000 }, (_, index) => kind(index)).flat();
      const begin = performance.now();
      readTimeline(many, tractor, now);
      expect(performance.now() - begin).toBeLessThan(3000);
    }
  });

  test('ten thousand readings in well under a second', () => {
    const many = Array.from({ length: 10_000 }, (_, index) =>
      engine(`e${index}`, `20${20 + Math.floor(index / 2800)}-0${1 + (index % 9)}-1${index % 10}`, index / 100),
    );
    const begin = performance.now();
    readTimeline(many, tractor, now);
    expect(performance.now() - begin).toBeLessThan(2000);
  });
});
