import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readCsv, writeCsv } from '../../../src/adapters/exchange/csv.js';
import { entriesFromCsv, entriesToCsv } from '../../../src/adapters/exchange/entries-csv.js';
import type { Entry } from '../../../src/history/entry.js';

const cell = fc.oneof(
  fc.string(),
  fc.constantFrom('', '"', '""', 'a,b', 'a;b', '\r\n', '\n', '\r', '=1+1', "'=x", "'", '-5', '-x', '+1', '@a', '\tx', ' a '),
);

describe('CSV', () => {
  // RFC 4180 §2, the examples of rules 1, 2, 5, 6 and 7.
  it.each([
    [
      'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      'aaa,bbb,ccc\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'b\r\nbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    ['"aaa","b""bb","ccc"', [['aaa', 'b"bb', 'ccc']]],
    ['a,,c\n', [['a', '', 'c']]],
    ['a,b,\n', [['a', 'b', '']]],
  ])('reads %j', (text, rows) => {
    expect(readCsv(text)).toEqual({ rows, separator: ',', problem: null });
  });

  it('reads back what it wrote, whatever the cells hold', () => {
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1 }), fc.boolean(), (rows, mark) => {
        const heading = rows[0]?.map(() => 'h') ?? [];
        expect(readCsv(writeCsv([heading, ...rows], { mark })).rows).toEqual([heading, ...rows]);
      }),
    );
  });

  it('writes nothing that a spreadsheet would run (OWASP, CSV Injection), and leaves numbers numbers', () => {
    expect(writeCsv([['=HYPERLINK("http://x")', '+1+1', '-1+1', '@SUM(A1)', '\t=1', '-5', '-5.25', '7']])).toBe(
      `"'=HYPERLINK(""http://x"")",'+1+1,'-1+1,'@SUM(A1),'\t=1,-5,-5.25,7\r\n`,
    );
  });

  it('says where it stopped understanding', () => {
    expect(readCsv('a,b\n"c')).toMatchObject({ rows: [['a', 'b']], problem: { row: 2, what: 'a quoted cell is not closed' } });
    expect(readCsv('"a"b')).toMatchObject({ problem: { row: 1 } });
  });
});

const name = fc.stringMatching(/^[a-z][a-z0-9-]{0,8}(\.[a-z]{1,4})?$/);
const number = fc.integer({ min: 0, max: 1_000_000 }).map((tenths) => tenths / 10);
const words = fc.string({ minLength: 1, maxLength: 20 }).filter((text) => text !== '__proto__');
const common = {
  id: fc.uuid(),
  on: fc.constantFrom('2026-05-12', '2025-12-31'),
  at: fc.option(fc.constant('07:40'), { nil: undefined }),
  by: fc.option(words, { nil: undefined }),
  note: fc.option(words, { nil: undefined }),
  meters: fc.option(fc.dictionary(name, number, { minKeys: 1, maxKeys: 3 }), { nil: undefined }),
  readings: fc.option(
    fc.dictionary(name, fc.oneof(number, fc.constantFrom('below-low' as const, 'full' as const)), { minKeys: 1, maxKeys: 2 }),
    { nil: undefined },
  ),
};
const entry: fc.Arbitrary<Entry> = fc.oneof(
  fc.record({
    kind: fc.constant('done' as const),
    ...common,
    tasks: fc.array(fc.oneof(name, words), { minLength: 1, maxLength: 3 }),
    used: fc.option(fc.dictionary(name, number, { minKeys: 1, maxKeys: 2 }), { nil: undefined }),
    minutes: fc.option(number, { nil: undefined }),
  }),
  fc.record({
    kind: fc.constant('outing' as const),
    ...common,
    hours: fc.option(number, { nil: undefined }),
    duties: fc.option(fc.array(fc.record({ duty: fc.oneof(name, words), hours: number }), { minLength: 1, maxLength: 2 }), {
      nil: undefined,
    }),
  }),
  fc.record({
    kind: fc.constant('stated' as const),
    ...common,
    task: name,
    doneAt: fc.dictionary(name, number, { minKeys: 1, maxKeys: 2 }),
  }),
  fc.record({ kind: fc.constant('meter-replaced' as const), ...common, meter: name, final: number, initial: number }),
  fc.record({ kind: fc.constant('finding' as const), ...common, text: words }),
);

describe('entries as a table', () => {
  it('come back as they were', () => {
    fc.assert(
      fc.property(fc.uniqueArray(entry, { minLength: 1, maxLength: 6, selector: (each) => each.id }), (entries) => {
        const read = entriesFromCsv(entriesToCsv(entries));
        expect(read.problems).toEqual([]);
        expect(read.entries.map((each) => JSON.parse(JSON.stringify(each)) as unknown)).toEqual(
          entries.map((each) => expect.objectContaining(JSON.parse(JSON.stringify(each)) as object) as unknown),
        );
      }),
    );
  });

  it('may come from a spreadsheet with semicolons, decimal commas, and no ids', () => {
    const table =
      '\uFEFFon;kind;meters.engine;tasks;note\r\n2026-05-12;done;1300,5;change-oil;"hot; dusty"\r\n;;;;\r\n2026-05-13;reading;1301;;\r\n';
    const { entries, problems } = entriesFromCsv(table);
    expect(problems).toEqual([]);
    expect(entries).toMatchObject([
      { kind: 'done', on: '2026-05-12', meters: { engine: 1300.5 }, tasks: ['change-oil'], note: 'hot; dusty' },
      { kind: 'reading', on: '2026-05-13', meters: { engine: 1301 } },
    ]);
    expect(entriesFromCsv(table).entries).toEqual(entries);
  });

  it('says once what a heading that is none of entries lacks', () => {
    const { entries, problems } = entriesFromCsv('Datum;Stunden\n12.03.2026;380,5\n20.04.2026;400\n');
    expect(entries).toEqual([]);
    expect(problems).toEqual([{ row: 1, what: expect.stringMatching(/^the heading names no `on` and `kind`; /) as unknown }]);
    expect(entriesFromCsv('on,meters.engine\n2026-03-01,3').problems).toMatchObject([
      { row: 1, what: expect.stringContaining('no `kind`;') as unknown },
    ]);
    expect(entriesFromCsv('').problems).toEqual([]);
  });

  it('says by row what is no entry, and takes the rest', () => {
    const { entries, problems } = entriesFromCsv(
      'on,kind,meters.engine\n2026-02-30,reading,1\n2026-02-28,reading,many\n2026-03-01,reading,3',
    );
    expect(problems.map((problem) => problem.row)).toEqual([2, 3]);
    expect(entries).toHaveLength(1);
  });
});
