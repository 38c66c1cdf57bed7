import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readEntries } from '../../src/history/read-entries.js';
import { validateEntry } from '../../src/history/validate-entry.js';
import { maybeEntry } from './entry-arbitrary.js';

const schema: unknown = JSON.parse(readFileSync(new URL('../../grammar/history-entry.schema.json', import.meta.url), 'utf8'));

/** What is said of the only thing wrong. */
function problem(value: unknown): string {
  const validated = validateEntry(value);
  return validated.kind === 'entry' ? 'fine' : validated.problems.map(({ path, message }) => `${path}: ${message}`).join('; ');
}

const reading = { kind: 'reading', id: 'r', on: '2026-05-01' };

describe('an entry', () => {
  test.each<[unknown, string]>([
    [reading, 'fine'],
    [{ ...reading, on: '2026-02-29' }, 'on: a day that exists, as YYYY-MM-DD'],
    [{ ...reading, at: '7:30' }, 'at: a time from 00:00 to 23:59, as HH:MM'],
    [{ ...reading, meters: { engine: -1 } }, 'meters.engine: at least 0'],
    [{ ...reading, meters: { engine: 'x' } }, 'meters.engine: a number'],
    [{ ...reading, meters: { engine: Number.NaN } }, 'meters.engine: a number'],
    [{ ...reading, meters: { engine: 2e10 } }, 'meters.engine: at most 10000000000'],
    [{ ...reading, readings: { oil: 'empty' } }, 'readings.oil: a number, or one of below-low, low, full, above-full'],
    [{ ...reading, id: '' }, 'id: not empty'],
    [{ kind: 'reading', on: '2026-05-01' }, 'id: missing: a string'],
    [{ ...reading, kind: 'done', tasks: [] }, 'tasks: not empty'],
    [{ ...reading, kind: 'storage', phase: 'x' }, 'phase: one of begins, ends'],
    [
      JSON.parse('{"kind":"reading","id":"r","on":"2026-05-01","meters":{"__proto__":1}}'),
      'meters.__proto__: a name other than `__proto__`',
    ],
    [{ ...reading, meters: { x: { y: { z: { a: {} } } } } }, 'meters.x.y.z.a: at most 4 levels deep'],
    [{ ...reading, meters: Object.fromEntries(Array.from({ length: 2001 }, (_, index) => [`m${index}`, 1])) }, ': at most 2000 values'],
    [null, ': a JSON object'],
    ['x', ': a JSON object'],
  ])('%j', (value, message) => {
    expect(problem(value)).toBe(message);
  });
  test('may hold 2000 values, and no name that reaches into the object that holds it', () => {
    const many = (count: number): object => ({
      ...reading,
      meters: Object.fromEntries(Array.from({ length: count }, (_, of) => [`m${of}`, 1])),
    });
    expect(problem(many(1996))).toBe('fine');
    expect(validateEntry(many(1997))).toEqual({ kind: 'problems', problems: [{ path: '', message: 'at most 2000 values' }] });
    expect(problem(JSON.parse('{"kind":"reading","id":"r","on":"2026-05-01","__proto__":1}'))).toBe(
      '__proto__: a name other than `__proto__`',
    );
    expect(problem({ ...reading, kind: 'done', tasks: ['__proto__'] })).toBe('tasks.0: a name other than `__proto__`');
    expect(validateEntry({ ...reading, id: 1 })).toEqual({ kind: 'problems', problems: [{ path: 'id', message: 'a string' }] });
  });
  test('of no known kind is told the kinds', () => {
    expect(problem({ ...reading, kind: 'raeding' })).toMatch(/^kind: one of machine, reading, done, outing, /);
  });
  test('agrees with the published JSON Schema', () => {
    const validate = new Ajv2020({ strict: false }).compile(schema as object);
    let [tried, right] = [0, 0];
    fc.assert(
      fc.property(maybeEntry, (entry) => {
        const ours = validateEntry(entry).kind === 'entry';
        expect({ entry, fine: ours }).toEqual({ entry, fine: validate(entry) });
        tried += 1;
        if (ours) right += 1;
      }),
      { numRuns: 3000 },
    );
    // It would prove little if nearly all were right, or nearly all wrong.
    expect(right / tried).toBeGreaterThan(0.2);
    expect(right / tried).toBeLessThan(0.9);
  });
  test('whatever comes in, nothing is thrown and every problem says something', () => {
    fc.assert(
      fc.property(fc.anything({ withNullPrototype: true, withBigInt: true, withDate: true }), (value) => {
        const validated = validateEntry(value);
        if (validated.kind === 'problems') expect(validated.problems.every(({ message }) => message.length > 3)).toBe(true);
      }),
    );
  });
});

describe('lines of JSON', () => {
  test('a broken line is reported and the rest is used', () => {
    const text = `\uFEFF${JSON.stringify(reading)}\r\n\n{"kind":"rea\n[]\n${JSON.stringify({ ...reading, id: 's' })}`;
    const read = readEntries(text);
    expect(read.entries.map(({ id }) => id)).toEqual(['r', 's']);
    expect(read.broken).toEqual([
      { line: 3, problems: [{ path: '', message: 'one JSON object on a line' }] },
      { line: 4, problems: [{ path: '', message: 'a JSON object' }] },
    ]);
  });
  test('a line of white space means nothing, and a byte order mark is one at the very start only', () => {
    expect(readEntries('  \t\r\n').broken).toEqual([]);
    const noted = { ...reading, note: 'a\uFEFFb' };
    expect(readEntries(JSON.stringify(noted)).entries).toEqual([noted]);
  });
  test('a line may have 200000 characters', () => {
    const room = 200_000 - JSON.stringify({ ...reading, more: '' }).length;
    expect(readEntries(JSON.stringify({ ...reading, more: 'x'.repeat(room) })).entries).toEqual([reading]);
    expect(readEntries(JSON.stringify({ ...reading, more: 'x'.repeat(room + 1) })).broken).toHaveLength(1);
  });
  test('a line without end is refused, not parsed', () => {
    expect(readEntries(`{"kind":"${'x'.repeat(200_000)}`).broken).toEqual([
      { line: 1, problems: [{ path: '', message: 'at most 200000 characters' }] },
    ]);
  });
});
