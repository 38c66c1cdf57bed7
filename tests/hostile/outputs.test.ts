/**
 * What goes out: nothing in a title or a note steers a terminal, runs in a spreadsheet, or writes lines of its own into a calendar.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import ICAL from 'ical.js';
import { afterAll, describe, expect, test } from 'vitest';
import { runCommandLine } from '../../src/adapters/cli/run-command-line.js';
import { writeCalendar } from '../../src/adapters/exchange/calendar-file.js';
import { readCsv } from '../../src/adapters/exchange/csv.js';
import { dueCalendar } from '../../src/adapters/exchange/due-calendar.js';
import { entriesFromCsv, entriesToCsv } from '../../src/adapters/exchange/entries-csv.js';
import { serviceRecordCsv } from '../../src/adapters/exchange/service-record-csv.js';
import { serviceRecord } from '../../src/adapters/exchange/service-record.js';
import { assess } from '../../src/assess/assess.js';
import { canonicalJson } from '../../src/graph/canonical-json.js';
import { memoryShell } from '../adapters/cli/memory-shell.js';
import type { Entry } from '../../src/history/entry.js';
import { compileText } from '../support/compile-text.js';
import { moment } from '../support/history.js';
import { steered } from './steered.js';

// Tabs, line feeds and our own colours aside: a terminal obeys all of these.
// eslint-disable-next-line no-control-regex -- control characters are what this is about
const STEERING = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/u;

const folder = mkdtempSync(join(tmpdir(), 'duewright-steered-'));
afterAll(() => rmSync(folder, { recursive: true }));
const { graph, entries } = steered();
const now = moment('2026-05-12');
const schedule = join(folder, 'steered.json');
const logbook = join(folder, 'steered.jsonl');
writeFileSync(schedule, canonicalJson(graph));
writeFileSync(logbook, entries.map((entry) => `${JSON.stringify(entry)}\n`).join(''));

// Tables are data, and are given out as they came in.
describe('no command writes to the terminal what would steer it', () => {
  const both = [schedule, logbook];
  test.each([
    ['due', ...both],
    ['due', ...both, '--work', '3 h'],
    ['why', ...both, 't'],
    ['why', ...both, 'u'],
    ['why', ...both, 'tt'],
    ['outing', ...both, '--work', '3 h from 08:00'],
    ['walk', ...both],
    ['walk', ...both, 't'],
    ['ahead', ...both],
    ['visits', ...both],
    ['supplies', ...both],
    ['supplies', ...both, 't'],
    ['rules', schedule, 't'],
    ['changes', schedule, schedule, logbook],
    ['verify', logbook],
    ['inputs', schedule, '--types'],
    ['record', ...both, 'done', '\u001b[2Jt'],
    ['check', '\u001b[2J\u202e.due'],
    ['due', '\u001b[2J.json', logbook],
    ['fleet', schedule, logbook],
    ['merge', logbook, '\u009b31m.jsonl'],
    ['explain', '\u001b[2JDW220'],
    ['\u001b[2J\u202e'],
  ])('%j', async (...args) => {
    const shell = memoryShell({ env: { LANG: 'en_GB.UTF-8', NO_COLOR: '1' } });
    await runCommandLine(args, shell);
    expect(shell.said.out + shell.said.err, 'it says something').not.toBe('');
    expect(shell.said.out).not.toMatch(STEERING);
    expect(shell.said.err).not.toMatch(STEERING);
  });
});

describe('a table', () => {
  const formulas = ['=1+1', '+1', '-1+1', '@SUM(A1)', '\t=1', '\r=1', "'=1", "=cmd|' /c calc'!A1"];
  const noted = formulas.map((note, index) => ({ id: `f${index}`, on: '2026-05-01', kind: 'finding' as const, text: 'x', note, by: note }));

  test.each([
    ['of entries', entriesToCsv(noted)],
    [
      'of the record',
      serviceRecordCsv(
        serviceRecord(
          [{ from: null, graph }],
          [...entries, { id: 'w', on: '2026-05-02', kind: 'done', tasks: ['t'], by: '=1+1', note: '@x' }],
          now,
        ),
      ),
    ],
  ])('%s has no cell that a spreadsheet would run', (_name, table) => {
    // As a spreadsheet reads it: what is quoted without its quotes, nothing taken off.
    const cells = table.replace(/^\uFEFF/, '').match(/"(?:[^"]|"")*"|[^,\r\n]+/g) ?? [];
    const run = cells.map((cell) => cell.replace(/^"/, '')).filter((cell) => /^[=+\-@\t\r]/.test(cell) && !/^-?[\d.]+"?$/.test(cell));
    expect(cells.length).toBeGreaterThan(10);
    expect(run).toEqual([]);
  });

  test('gives back what was put in', () => {
    expect(entriesFromCsv(entriesToCsv(noted)).entries).toEqual(noted);
    expect(readCsv('a,b\n1,2').rows).toEqual([
      ['a', 'b'],
      ['1', '2'],
    ]);
  });
});

test('a calendar has the events that it should have, and no line that a title wrote', () => {
  const injected = 'x\r\nEND:VEVENT\r\nBEGIN:VEVENT\r\nUID:evil\r\nATTACH:file:///etc/passwd\nX;Y:Z,\\n';
  const plain = compileText('task a "A" every 1 month  task b "B" every 1 year');
  const bent = {
    ...plain,
    tasks: plain.tasks.map((task) => ({ ...task, title: `${task.title}${injected}` })),
    schedule: { ...plain.schedule, title: injected },
  };
  const done: readonly Entry[] = [{ id: 'd', on: '2026-05-01', kind: 'done', tasks: ['a', 'b'] }];
  const items = dueCalendar(bent, assess(bent, done, now), 'machine');
  const text = writeCalendar(items, { stamp: '2026-05-12T08:30:00Z', name: injected });
  expect(items).toHaveLength(2);
  const calendar = new ICAL.Component(ICAL.parse(text) as unknown[]);
  const events = calendar.getAllSubcomponents('vevent');
  expect(events).toHaveLength(items.length);
  expect(events.map((event) => event.getFirstPropertyValue('uid'))).toEqual(items.map(({ uid }) => uid));
  expect(events.flatMap((event) => event.getAllProperties('attach'))).toEqual([]);
  for (const line of text.split('\r\n')) {
    expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
    // eslint-disable-next-line no-control-regex -- RFC 5545 §3.1 forbids them
    expect(line).not.toMatch(/[\u0000-\u0008\u000a-\u001f\u007f]/);
  }
});
