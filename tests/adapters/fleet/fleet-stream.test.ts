import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { assessFleet, type FleetOptions, type FleetProgress } from '../../../src/adapters/fleet/assess-fleet.js';
import { findMachine } from '../../../src/adapters/fleet/find-machine.js';
import { fleetBlocks } from '../../../src/adapters/fleet/fleet-blocks.js';
import { STATES } from '../../../src/fleet/fleet-states.js';
import { compileText } from '../../support/compile-text.js';
import { moment } from '../../support/history.js';

const graph = compileText(
  'meter engine "Hour meter" counts h\ntask oil "Oil" every 100 h of engine or 12 months, whichever first\ntask wash "Wash" every 7 days',
);
const today = moment('2026-06-15').day;
const line = (n: number): string =>
  `{"machine":"m-${n}","on":"2026-06-14","meters":{"engine":${1000 + n}},"done":{"oil":{"on":"2026-05-01","meters":{"engine":930}},"wash":{"on":"2026-06-${n % 2 === 0 ? '12' : '01'}"}}}`;
const many = (count: number): string => Array.from({ length: count }, (_, n) => `${line(n)}\n`).join('');

async function* chunks(text: string, size: number): AsyncGenerator<Uint8Array> {
  const bytes = new TextEncoder().encode(text);
  for (let at = 0; at < bytes.length; at += size) yield Promise.resolve(bytes.slice(at, at + size));
}

/** Machine → the states of its tasks. */
async function judged(text: string, options: Partial<FleetOptions> = {}): Promise<readonly string[]> {
  const said: string[] = [];
  for await (const { machines, state, stride, notes } of assessFleet(graph, chunks(text, 1000), { today, ...options })) {
    machines.forEach((name, m) => said.push(`${name} ${graph.tasks.map((_, t) => STATES[state[t * stride + m] ?? 0]).join(' ')}`));
    for (const note of notes) said.push(`${note.line}: ${note.what}`);
  }
  return said;
}

describe('a stream of machines', () => {
  let folder = '';
  let script = new URL('file:///');
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'fleet-worker-'));
    const outfile = join(folder, 'fleet-worker.mjs');
    await build({
      entryPoints: ['src/adapters/fleet/fleet-worker.ts'],
      bundle: true,
      platform: 'node',
      format: 'esm',
      outfile,
      logLevel: 'silent',
    });
    script = pathToFileURL(outfile);
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  test('is judged line by line, with the numbers of lines that are none', async () => {
    expect(await judged(`${line(29)}\nnonsense\n\n${line(31)}\r\n${line(30)}`)).toEqual([
      'm-29 coming-up overdue',
      'm-31 overdue overdue',
      'm-30 due clear',
      '2: it is not one JSON object',
    ]);
  });

  test('gives the same answers in the same order from worker threads, however the bytes are cut', async () => {
    const text = many(300);
    const alone = await judged(text);
    expect(alone).toHaveLength(300);
    expect(await judged(text, { workers: 2, script, lines: 7 })).toEqual(alone);
    expect(await judged(text, { lines: 1 })).toEqual(alone);
  });

  test('is read only as fast as the answers are taken', async () => {
    let read = 0;
    const endless = async function* (): AsyncGenerator<string> {
      for (; read < 100_000; read += 1) yield Promise.resolve(`${line(read)}\n`);
    };
    let taken = 0;
    for await (const _ of assessFleet(graph, endless(), { today, workers: 2, script, lines: 10 })) {
      taken += 1;
      expect(read).toBeLessThanOrEqual((taken + 2 * 2 + 1) * 10);
      if (taken === 20) break;
    }
    expect(taken).toBe(20);
  });

  test('tells how far it is', async () => {
    const told: FleetProgress[] = [];
    await judged(`${many(4)}oops\n`, { lines: 2, onProgress: (progress) => told.push(progress) });
    expect(told).toEqual([
      { lines: 2, machines: 2, refused: 0 },
      { lines: 4, machines: 4, refused: 0 },
      { lines: 5, machines: 4, refused: 1 },
    ]);
  });

  test('hands on the failure of a worker', async () => {
    const broken = new URL(`data:text/javascript,${encodeURIComponent('throw new Error("no such luck")')}`);
    await expect(judged(many(3), { workers: 1, script: broken })).rejects.toThrow('no such luck');
  });

  test('may be a table', async () => {
    const table =
      'machine,on,meters.engine,done.oil,done.oil.engine,done.wash\r\n"north, 1",2026-06-14,1031,2026-05-01,930,2026-06-12\r\nm-2,2026-06-14,many,,,\r\nm-3,,,2026-05-01,,\r\n';
    expect(await judged(table, { format: 'csv', lines: 2 })).toEqual([
      'north, 1 overdue clear',
      'm-3 unknown unrecorded',
      '3: `meters.engine` should be a number',
    ]);
  });

  test('as a table says once what is wrong with its heading', async () => {
    const table = 'machine,on,meters.engin,done.oill,colour,,meters.engine\nm-1,2026-06-14,5,2026-05-01,red,,1031\n';
    expect(await judged(table, { format: 'csv' })).toEqual([
      '1: the column `meters.engin` is not used: there is no meter `engin` in this schedule that is read; was `engine` meant?',
      '1: the column `done.oill` is not used: there is no task `oill` in this schedule; was `oil` meant?',
      '1: the column `colour` is not used',
      'm-1 unrecorded unrecorded',
    ]);
  });

  test.each([
    ['on,meters.engine\n2026-06-14,5\n', '1: there is no column `machine`'],
    ['machine,on,machine\na,2026-06-14,b\n', '1: there are two columns `machine`'],
    ['machine,"on\na,2026-06-14\n', '1: a quoted cell is not closed'],
  ])('as a table without a heading to go by is not read: %j', async (table, said) => {
    let closed = false;
    const source = (async function* (): AsyncGenerator<string> {
      try {
        yield await Promise.resolve(table);
        yield await Promise.resolve('never asked for\n');
      } finally {
        closed = true;
      }
    })();
    const notes = [];
    for await (const block of assessFleet(graph, source, { today, format: 'csv', lines: 2 })) notes.push(...block.notes);
    expect(notes.map(({ line: at, what }) => `${at}: ${what}`)).toEqual([said]);
    expect(notes[0]).toMatchObject({ code: 'wrong-heading', refused: true });
    expect(closed).toBe(true);
  });

  test('as a table loses no more than the row that is wrong', async () => {
    const rows = ['a,2026-06-14,"5', 'b,2026-06-14,6', '"c', 'd",2026-06-14,7', 'e,2026-06-14,8,9', 'f,2026-06-14,10'];
    const notes: string[] = [];
    const machines: string[] = [];
    for await (const block of assessFleet(graph, [`machine,on,meters.engine\n${rows.join('\n')}`], { today, format: 'csv' })) {
      machines.push(...block.machines.map((name, m) => `${block.at[m] ?? 0}: ${name}`));
      notes.push(...block.notes.map(({ line: at, what }) => `${at}: ${what}`));
    }
    expect(machines).toEqual(['3: b', '5: d"', '7: f']);
    expect(notes).toEqual([
      '2: something follows the closing quote of a cell',
      '4: a quoted cell goes on into the next line',
      '6: there are 4 cells under 3 columns',
    ]);
  });

  test('gives one machine for a closer look', async () => {
    const lines = `${line(1)}\nnonsense\n${line(2)}\n`;
    expect(await findMachine(graph, [lines], 'm-2', today)).toContainEqual(
      expect.objectContaining({ kind: 'reading', meters: { engine: 1002 } }),
    );
    expect(await findMachine(graph, [lines], 'm-3', today)).toBeNull();
    expect(await findMachine(graph, ['machine,serial\nm-1,12\n'], 'm-1', today, 'csv')).toMatchObject([{ serial: 12 }]);
  });

  test('of no lines at all says nothing', async () => {
    expect(await judged('')).toEqual([]);
    expect(await judged('', { format: 'csv' })).toEqual([]);
  });

  test('with letters that take more than one byte is cut between letters', async () => {
    const blocks = [];
    for await (const block of fleetBlocks(chunks('äöü\n€uro\n', 2), 1)) blocks.push(block.text);
    expect(blocks).toEqual(['äöü\n', '€uro\n']);
  });
});
