import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { listed } from '../../src/base/listed.js';
import { asSentence, counted, fullStop, inSentence } from '../../src/render/count-in-words.js';
import { dayInWords, momentInWords } from '../../src/render/dates-in-words.js';
import { pointInWords, pointOnAxis } from '../../src/render/amounts-in-words.js';
import { entryInWords } from '../../src/render/entry-in-words.js';
import { escapeHtml } from '../../src/render/escape-html.js';
import { safeText } from '../../src/render/safe-text.js';
import { STATES, stateMark } from '../../src/render/state-in-words.js';
import { plainStyle } from '../../src/render/style.js';
import { table } from '../../src/render/table.js';
import { columns, labelled, wrap } from '../../src/render/wrap.js';
import { moment } from '../support/history.js';

const anyText = fc.string({ unit: 'binary', maxLength: 200 });

describe('text from outside', () => {
  test('cannot drive a terminal', () => {
    expect(safeText('Oil\u001b[31m\u0007 filter\r\nnow')).toBe('Oil\ufffd[31m\ufffd filter now');
    expect(safeText('\u202Erefilt lio\u202C')).toBe('\ufffdrefilt lio\ufffd');
    expect(safeText('\u009b31mred')).toBe('\ufffd31mred');
  });

  test('keeps the letters of every language', () => {
    expect(safeText('Ölfilter wechseln, 油を替える, Смена масла')).toBe('Ölfilter wechseln, 油を替える, Смена масла');
  });

  test('holds no control character and no line break, whatever it was', () => {
    fc.assert(fc.property(anyText, (text) => !/[\p{Cc}\u2028\u2029\u202a-\u202e\u2066-\u2069]/u.test(safeText(text))));
  });

  test('cannot leave an element or an attribute', () => {
    expect(escapeHtml('<b onclick="x">Tom & Jerry\'s</b>')).toBe('&lt;b onclick=&quot;x&quot;&gt;Tom &amp; Jerry&#39;s&lt;/b&gt;');
    fc.assert(fc.property(anyText, (text) => !/[<>"']/.test(escapeHtml(text))));
  });
});

describe('lines', () => {
  test('are never wider than asked for, and lose nothing', () => {
    fc.assert(
      fc.property(fc.lorem({ maxCount: 40 }), fc.integer({ min: 20, max: 120 }), (text, width) => {
        const lines = wrap(text, width);
        expect(lines.every((line) => columns(line) <= width)).toBe(true);
        expect(lines.join(' ')).toBe(text);
      }),
    );
  });

  test('keep a number with its unit, and a date in one piece', () => {
    expect(wrap('it was read at 1304 h on 13 May 2026', 20)).toEqual(['it was read at', '1304 h on', '13 May 2026']);
  });

  test('count columns as a terminal does', () => {
    expect(columns('\u001b[1mÖl\u001b[22m')).toBe(2);
    expect(columns('油')).toBe(2);
    expect(columns('o\u0308l')).toBe(2);
  });

  test('stand beside their label', () => {
    expect(labelled('Rule', 'every 100 h of engine or 12 months', 30, 10)).toEqual([
      'Rule      every 100 h of',
      '          engine or 12 months',
    ]);
  });

  test('of a table fit its width, and no cell loses a word', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.lorem({ maxCount: 8 }), fc.lorem({ maxCount: 5 }), fc.lorem({ maxCount: 9 })), { minLength: 1, maxLength: 5 }),
        fc.integer({ min: 40, max: 120 }),
        (rows, width) => {
          const lines = table(rows, [40, 20, 40], width, plainStyle().paint);
          expect(Math.max(...lines.map(columns))).toBeLessThanOrEqual(width);
          const letters = (text: string): string => [...text.replace(/[\s;]/g, '')].sort().join('');
          expect(letters(lines.join(''))).toBe(letters(rows.flat().join('')));
        },
      ),
    );
  });
});

describe('numbers and dates', () => {
  test('are in the singular for one', () => {
    expect([counted(1, 'day'), counted(2, 'day'), counted(0, 'day'), counted(1, 'entry', 'entries')]).toEqual([
      '1 day',
      '2 days',
      '0 days',
      '1 entry',
    ]);
  });

  test('are written in one form', () => {
    expect(dayInWords(moment('2026-03-02').day)).toBe('2 March 2026');
    expect(dayInWords(moment('2024-02-29').day)).toBe('29 February 2024');
    expect(momentInWords(moment('2026-03-02 08:05'))).toBe('2 March 2026 at 08:05');
  });

  test('stand in sentences', () => {
    expect(listed(['a', 'b', 'c'])).toBe('a, b and c');
    expect(inSentence('Hour meter on the dash')).toBe('hour meter on the dash');
    expect(inSentence('PTO hour counter')).toBe('PTO hour counter');
    expect(asSentence('ölstand')).toBe('Ölstand');
    expect(fullStop('he said “Stop.”')).toBe('he said “Stop.”');
  });
});

describe('states', () => {
  test('each have a mark of their own, in ASCII too', () => {
    for (const unicode of [true, false]) {
      const marks = STATES.map((state) => stateMark(state, plainStyle(80, unicode)));
      expect(new Set(marks).size).toBe(STATES.length);
      expect(marks.every((mark) => columns(mark) === 2)).toBe(true);
      if (!unicode) expect(marks.join('')).toMatch(/^[\x20-\x7e]*$/);
    }
  });
});

describe('a machine as its entry names it', () => {
  const names = { meters: {}, gauges: {}, dipsticks: {}, duties: {}, events: {}, attachments: {}, defects: {}, tasks: {} };

  test.each([
    [{}, 'The machine was taken over.'],
    [{ inService: '2024-03-01' }, 'The machine entered service on 2024-03-01.'],
    [{ serial: 60 }, 'The machine, serial 60, was taken over.'],
    [{ model: 'Tarn 55', serial: 60, inService: '2024-03-01' }, 'The machine, “Tarn 55”, serial 60, entered service on 2024-03-01.'],
  ])('%j', (members, words) => {
    expect(entryInWords({ kind: 'machine', id: 'a', on: '2026-05-20', ...members }, names)).toBe(words);
  });
});

test('a due point that hours in a duty have put before the first hour of the meter is told so', () => {
  const names = { meters: {}, gauges: {}, dipsticks: {}, duties: {}, events: {}, attachments: {}, defects: {}, tasks: {} };
  expect(pointInWords({ on: 'meter', meter: 'engine', ticks: -36_000 }, names)).toBe('before 0 h of engine');
  expect(pointOnAxis({ on: 'meter', meter: 'engine', ticks: -36_000 }, names)).toBe('before 0 h');
  expect(pointInWords({ on: 'meter', meter: 'engine', ticks: 0 }, names)).toBe('0 h of engine');
});
