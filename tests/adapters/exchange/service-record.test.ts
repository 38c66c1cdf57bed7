import { describe, expect, it } from 'vitest';
import { readCsv } from '../../../src/adapters/exchange/csv.js';
import { serviceRecordCsv } from '../../../src/adapters/exchange/service-record-csv.js';
import { serviceRecordPage } from '../../../src/adapters/exchange/service-record-page.js';
import { serviceRecord } from '../../../src/adapters/exchange/service-record.js';
import type { Entry } from '../../../src/history/entry.js';
import { dayOf } from '../../../src/values/civil.js';
import { compileFile, compileText, header } from '../../support/compile-text.js';
import { done, history, meters, moment } from '../../support/history.js';

const TASKS = `meter engine "Hours" counts h
supply oil-15w40 "Oil" in L
task oil "Change the engine oil"
  every 100 h of engine or 12 months, whichever first
  allow 10 h late
  uses 6 L oil-15w40
task belt "Look at the belt"
  every 6 months`;
const graph = compileText(TASKS);
const UNTIL = moment('2026-12-31');

/** Task, timing, and how late. */
function timings(entries: readonly Entry[], editions: Parameters<typeof serviceRecord>[0] = [{ from: null, graph }]): readonly unknown[] {
  return serviceRecord(editions, entries, UNTIL).work.map(({ task, timing }) =>
    timing.is === 'late' ? [task, timing.is, timing.by] : [task, timing.is],
  );
}

describe('the service record', () => {
  // Worked by hand from docs/meaning.md §4.
  it('judges each doing by what the schedule said just before it', () => {
    const entries = history(
      ['2026-01-10', done('oil', { engine: 1200 })],
      ['2026-02-10', done('oil', { engine: 1290 })],
      ['2026-03-10', done('oil', { engine: 1400 })],
      ['2026-04-10', done('oil', { engine: 1510.1 })],
      ['2026-04-20', done('belt')],
      ['2026-10-20', done('belt')],
      ['2026-10-21', done('belt')],
    );
    expect(timings(entries)).toEqual([
      ['oil', 'first-on-record'],
      ['oil', 'on-time'],
      // 110 h after the last: 10 h past the due point, all of them allowed.
      ['oil', 'on-time'],
      ['oil', 'late', 10.1 * 36000],
      ['belt', 'first-on-record'],
      ['belt', 'on-time'],
      ['belt', 'on-time'],
    ]);
    expect(timings([...entries].reverse())).toEqual(timings(entries));
  });

  it('counts days on the calendar side', () => {
    expect(timings(history(['2026-01-31', done('belt')], ['2026-08-03', done('belt')]))).toEqual([
      ['belt', 'first-on-record'],
      ['belt', 'late', 3],
    ]);
  });

  it('uses the meter noted along with the work, and says so where none was ever read', () => {
    expect(timings(history(['2026-01-10', done('oil')], ['2026-02-10', done('oil')]))).toEqual([
      ['oil', 'first-on-record'],
      ['oil', 'cannot-tell'],
    ]);
    expect(
      timings(
        history(
          ['2026-01-10', done('oil', { engine: 100 })],
          ['2026-02-01', meters({ engine: 150 })],
          ['2026-02-10', done('oil', { engine: 230 })],
        ),
      ).at(-1),
    ).toEqual(['oil', 'late', 30 * 36000]);
  });

  it('strikes out what was voided, and judges what follows as if it had not been', () => {
    const entries: readonly Entry[] = [
      ...history(
        ['2026-01-10', done('oil', { engine: 100 })],
        ['2026-02-10', done('oil', { engine: 190 })],
        ['2026-03-10', done('oil', { engine: 250 })],
      ),
      { kind: 'void', id: 'v', on: '2026-03-11', entry: 'e2', note: 'wrong <machine>' },
    ];
    const record = serviceRecord([{ from: null, graph }], entries, UNTIL);
    expect(record.work.map(({ timing, voided }) => [timing.is, voided?.by])).toEqual([
      ['first-on-record', undefined],
      ['not-asked-for', 'v'],
      ['late', undefined],
    ]);
    const page = serviceRecordPage(record);
    expect(page).toContain('<del>2026-02-10</del>');
    expect(page).toContain('voided: wrong &lt;machine&gt;');
  });

  it('judges each doing by the edition in use on its day', () => {
    const second = compileFile(header.replace('edition 1', 'edition 2') + TASKS.replace('100 h', '50 h'));
    const entries = history(
      ['2026-01-10', done('oil', { engine: 100 })],
      ['2026-02-10', done('oil', { engine: 170 })],
      ['2026-03-10', done('oil', { engine: 240 })],
    );
    const editions: Parameters<typeof serviceRecord>[0] = [
      { from: dayOf('2026-03-01'), graph: second },
      { from: null, graph },
    ];
    expect(timings(entries, editions)).toEqual([
      ['oil', 'first-on-record'],
      ['oil', 'on-time'],
      ['oil', 'late', 20 * 36000],
    ]);
    const record = serviceRecord(editions, entries, UNTIL);
    expect(record.work.map((work) => work.edition)).toEqual([1, 1, 2]);
    expect(serviceRecordPage(record)).toMatch(/edition 1 of .*edition 2 of /s);
  });
});

describe('how long a record is kept', () => {
  // 49 CFR 396.21(b)(1): fourteen months from the date of the report; 30 CFR 56.14100(d): until corrected.
  const kept = compileText(
    'task test "Test"\n  every 12 months\n  record kept 14 months or until mended, whichever last\ntask look "Look"\n  every 1 month',
  );
  const record = serviceRecord([{ from: null, graph: kept }], history(['2025-12-31', done('test')], ['2026-01-31', done('look')]), UNTIL);

  it('stands beside each doing, with the last day of a span', () => {
    const words = '14 months (to 2027-02-28) or until what it found is mended, whichever last';
    expect(record.work.map((work) => work.kept)).toEqual([words, null]);
    expect(serviceRecordPage(record)).toContain(`Record kept ${words}`);
    expect(readCsv(serviceRecordCsv(record)).rows.map((row) => row.at(-1))).toEqual(['kept', words, '']);
  });
});

describe('the printed record', () => {
  const entries: readonly Entry[] = [
    { kind: 'machine', id: 'm', on: '2026-01-01', model: '<b>Tarn</b> 55', serial: 1234, inService: '2024-03-01' },
    {
      kind: 'done',
      id: 'd',
      on: '2026-05-13',
      at: '07:40',
      tasks: ['oil'],
      meters: { engine: 1304 },
      used: { 'oil-15w40': 6.6 },
      by: 'Kim',
      note: '=1+1 "<script>"',
    },
  ];
  const record = serviceRecord([{ from: null, graph }], entries, UNTIL);

  it('is complete in itself, and no text from outside becomes part of the page', () => {
    const page = serviceRecordPage(record, { seq: 2, hash: 'ab'.repeat(32) });
    expect(page).not.toMatch(/<script|<b>|src=|href=|url\(/);
    expect(page).toContain('&lt;b&gt;Tarn&lt;/b&gt; 55');
    expect(page).toContain('late by 438 days, due on 2025-03-01');
    expect(page).toContain('6.6 L oil-15w40');
    expect(page).toContain(`line 2, ${'ab'.repeat(32)}`);
    expect(page).toContain('own manual');
  });

  it('says the same as CSV', () => {
    const [heading = [], row = []] = readCsv(serviceRecordCsv(record)).rows;
    expect(Object.fromEntries(heading.map((column, index) => [column, row[index]]))).toMatchObject({
      date: '2026-05-13 07:40',
      task: 'oil',
      title: 'Change the engine oil',
      meters: '1304 h of engine',
      timing: 'late',
      used: '6.6 L oil-15w40',
      by: 'Kim',
      edition: '1',
      entry: 'd',
      note: '=1+1 "<script>"',
    });
  });

  it('takes voids in a circle for none, and settles a chain of voids from its end', () => {
    const done: Entry = { id: 'd', on: '2026-01-02', kind: 'done', tasks: ['t'] };
    const voids = (...pairs: readonly (readonly [string, string])[]): readonly Entry[] =>
      pairs.map(([id, entry]) => ({ id, on: '2026-01-03', kind: 'void', entry }));
    const plain = compileText('task t "T" every 1 month');
    const isVoided = (entries: readonly Entry[]): boolean =>
      serviceRecord([{ from: null, graph: plain }], entries, moment('2026-02-01')).work[0]?.voided !== null;
    expect(isVoided([done])).toBe(false);
    expect(isVoided([done, ...voids(['a', 'd'])])).toBe(true);
    expect(isVoided([done, ...voids(['a', 'd'], ['b', 'a'])])).toBe(false);
    expect(isVoided([done, ...voids(['a', 'd'], ['b', 'a'], ['c', 'b'])])).toBe(true);
    expect(isVoided([done, ...voids(['a', 'd'], ['b', 'a'], ['a2', 'b'], ['b2', 'a2'])])).toBe(false);
    expect(isVoided([done, ...voids(['a', 'd'], ['x', 'a'], ['y', 'x'], ['x2', 'y'])])).toBe(false);
    expect(isVoided([done, ...voids(['a', 'd'], ['b', 'c'], ['c', 'b'])])).toBe(true);
  });
});
