import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { readLogbook } from '../../../src/adapters/logbook/read-logbook.js';
import { runCommandLine } from '../../../src/adapters/cli/run-command-line.js';
import { root } from './built-command.js';
import { memoryShell } from './memory-shell.js';

const PUMP = join(root, 'tests/cases/cli/files/water-pump.due');
let folder = '';
let path = '';
let count = 0;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'duewright-cli-'));
});
beforeEach(() => {
  path = join(folder, `${(count += 1)}.jsonl`);
});
afterAll(() => rm(folder, { recursive: true }));

interface Answer {
  readonly code: number;
  readonly out: string;
  readonly err: string;
  readonly asked: readonly string[];
}

/** Runs a command; with `answers`, somebody sits at the terminal and gives them in turn, then ends the input. */
async function run(args: readonly string[], answers?: readonly string[]): Promise<Answer> {
  const shell = memoryShell();
  const asked: string[] = [];
  const left = [...(answers ?? [])];
  const ask = (question: string): Promise<string | null> => {
    asked.push(question);
    return Promise.resolve(left.shift() ?? null);
  };
  const code = await runCommandLine(args, answers === undefined ? shell : { ...shell, ask });
  return { code, ...shell.said, asked };
}

const entries = async (): Promise<readonly unknown[]> => readLogbook(await readFile(path, 'utf8')).entries;

describe('duewright record', () => {
  it('writes an entry, and says what stands there now', async () => {
    const { code, out, err } = await run(['record', PUMP, path, 'hours', '88']);
    expect(code).toBe(0);
    expect(out).toMatch(/^2026-06-15 Engine 88 h\. \([0-9a-z]{9}-[0-9a-z]{7}\)\n$/);
    expect(err).toContain('the first entry of a new logbook');
    expect(await entries()).toMatchObject([{ kind: 'reading', on: '2026-06-15', at: '07:30', meters: { engine: 88 } }]);
  });

  it('refuses a name that the schedule does not have, with the nearest, and writes nothing', async () => {
    const { code, err } = await run(['record', PUMP, path, 'done', 'clean-strainr']);
    expect(code).toBe(2);
    expect(err).toContain('There is no task `clean-strainr`');
    await expect(readFile(path)).rejects.toThrow('ENOENT');
  });

  it('asks for what is missing where somebody is there', async () => {
    const { code, asked } = await run(['record', PUMP, path, 'found'], ['a wet hose']);
    expect([code, asked.length]).toEqual([0, 1]);
    expect(await entries()).toMatchObject([{ kind: 'finding', text: 'a wet hose' }]);
  });

  it('says what is missing where nobody is there, and writes nothing', async () => {
    const { code, err } = await run(['record', PUMP, path, 'found']);
    expect(code).toBe(2);
    expect(err).toContain('What was found?');
    await expect(readFile(path)).rejects.toThrow('ENOENT');
  });

  it('records nothing when the asking is broken off', async () => {
    expect((await run(['record', PUMP, path, 'found'], [])).code).toBe(2);
    await expect(readFile(path)).rejects.toThrow('ENOENT');
  });

  it('says at once that a reading will be set aside', async () => {
    await run(['record', PUMP, path, 'hours', '88', 'on', '2026-06-01']);
    const { code, err } = await run(['record', PUMP, path, 'hours', '80']);
    expect(code).toBe(0);
    expect(err).toContain('is less than what was read before');
  });

  it('says what stands in the way, and what to do', async () => {
    const { code, err } = await run(['record', PUMP, join(folder, 'nowhere', 'pump.jsonl'), 'hours', '88']);
    expect(code).toBe(3);
    expect(err).toContain('there is no folder');
  });

  it('does not go on after a change unless told to', async () => {
    await run(['record', PUMP, path, 'hours', '88']);
    await run(['record', PUMP, path, 'hours', '89']);
    await writeFile(path, (await readFile(path, 'utf8')).replace(':88}', ':78}'));
    const refused = await run(['record', PUMP, path, 'hours', '90']);
    expect([refused.code, refused.err]).toEqual([3, expect.stringContaining('at line 1')]);
    expect((await run(['record', PUMP, path, 'hours', '90', '--accept-changes'])).code).toBe(0);
    expect((await run(['verify', path])).out).toContain('accepted later');
  });
});

describe('duewright takeover', () => {
  it('asks step by step, records at once, and takes up where it was broken off', async () => {
    const first = await run(['takeover', PUMP, path], ['2024-03-01', '88']);
    expect(first.code).toBe(0);
    expect(first.asked.slice(0, 2)).toEqual([expect.stringContaining('enter service'), expect.stringContaining('What does it show now')]);
    expect(await entries()).toMatchObject([
      { kind: 'machine', inService: '2024-03-01' },
      { kind: 'reading', meters: { engine: 88 } },
    ]);
    const second = await run(['takeover', PUMP, path], ['', '', '', '', '']);
    expect(second.asked.join('')).not.toContain('enter service');
    expect(await entries()).toHaveLength(2);
  });

  it('keeps what is known as a statement; what is not, stays open', async () => {
    const { asked, out } = await run(['takeover', PUMP, path], ['', '88', 'long ago', '2026-01-10 60 h', '', '', '']);
    expect(asked[2]).toContain('When was it last done');
    // Not understood, so asked again.
    expect(asked[3]).toBe(asked[2]);
    expect(await entries()).toMatchObject([{ kind: 'reading' }, { kind: 'stated', doneBy: '2026-01-10', doneAt: { engine: 60 } }]);
    expect(out).toContain('left open. Run it again to go on.');
  });

  it('lists the questions where nobody is there to answer', async () => {
    const { code, out } = await run(['takeover', PUMP, path]);
    expect(code).toBe(1);
    expect(out).toContain('On which day did the machine enter service?');
  });
});

describe('duewright merge and verify', () => {
  it('takes over what the other copy has, once, and the chain holds', async () => {
    const other = `${path}.other`;
    await run(['record', PUMP, path, 'hours', '88', 'on', '2026-06-01']);
    await writeFile(other, await readFile(path));
    await run(['record', PUMP, other, 'refuelled', '4']);
    await run(['record', PUMP, path, 'found', 'a wet hose']);
    expect((await run(['merge', path, other])).out).toBe('1 appended; 3 entries now.\n');
    expect((await run(['merge', path, other])).out).toBe('Nothing appended; 3 entries now.\n');
    const { code, out } = await run(['verify', path]);
    expect([code, out]).toEqual([
      0,
      expect.stringMatching(/^Every chained line stands as it was written\.\n3 chained, 0 written by hand\.\nHead 3:[0-9a-f]{64}\n$/),
    ]);
  });

  it('keeps both of two entries under one id, and ends with 1', async () => {
    const other = `${path}.other`;
    await writeFile(path, '{"id":"a","on":"2026-06-01","kind":"reading","meters":{"engine":88}}\n');
    await writeFile(other, '{"id":"a","on":"2026-06-01","kind":"reading","meters":{"engine":98}}\n');
    const { code, err } = await run(['merge', path, other]);
    expect([code, err]).toEqual([1, expect.stringContaining('The id `a` stands for two different entries')]);
    expect(await entries()).toHaveLength(2);
  });

  it('takes over what no entry has as well: nothing that was written is lost', async () => {
    const other = `${path}.other`;
    await writeFile(path, '{"id":"a","on":"2026-06-01","kind":"reading","meters":{"engine":88},"from":"here"}\n');
    await writeFile(
      other,
      '{"id":"a","on":"2026-06-01","kind":"reading","meters":{"engine":98},"weather":"rain"}\n{"id":"b","on":"2026-06-02","kind":"finding","text":"wet","weather":"sun"}\n',
    );
    await run(['merge', path, other]);
    const text = await readFile(path, 'utf8');
    for (const member of ['"from":"here"', '"weather":"rain"', '"weather":"sun"']) expect(text).toContain(member);
  });

  it('shows an end cut off by a head noted before', async () => {
    for (const hours of ['88', '89']) await run(['record', PUMP, path, 'hours', hours]);
    const head = (await run(['verify', path])).out.trim().split(' ').at(-1) ?? '';
    await writeFile(path, `${(await readFile(path, 'utf8')).split('\n')[0] ?? ''}\n`);
    expect((await run(['verify', path])).code).toBe(0);
    expect(await run(['verify', path, '--head', head])).toMatchObject({
      code: 1,
      out: expect.stringContaining('lines are missing') as string,
    });
    expect((await run(['verify', path, '--head', 'abc'])).code).toBe(2);
    expect((await run(['verify', join(folder, 'none.jsonl')])).code).toBe(3);
  });
});

describe('duewright export and import', () => {
  const record = async (...lines: string[]): Promise<void> => {
    for (const line of lines) await run(['record', PUMP, path, ...line.split(' ')]);
  };

  it('prints the service record, with the head of the logbook', async () => {
    await record('done change-engine-oil at 40 on 2026-01-10', 'done change-engine-oil at 96 on 2026-06-01');
    const { code, out } = await run(['export', 'record', PUMP, path]);
    expect(code).toBe(0);
    expect(out).toContain('late by 6 h, due at 90 h of engine');
    expect(out).toMatch(/line 2, [0-9a-f]{64}/);
    expect((await run(['export', 'record-table', PUMP, path])).out).toContain('late by 6 h');
  });

  it('puts into the calendar what falls due on a day, and says what does not', async () => {
    await record('done change-engine-oil at 40 on 2026-01-10');
    const { out, err } = await run(['export', 'calendar', PUMP, path, '--on', '2027-01-05']);
    expect(out).toContain('BEGIN:VCALENDAR\r\n');
    expect(out).toContain('DTSTART;VALUE=DATE:20270110');
    expect(out).toContain('DTSTAMP:20270105T000000Z');
    expect(err).not.toContain('undefined');
  });

  it('puts what falls due by hours on its likeliest day, and says that it is an estimate', async () => {
    for (let week = 0; week < 20; week += 1)
      await record(`hours ${60 + week} on 2026-${week < 12 ? '01' : '02'}-${String(1 + 2 * (week % 12)).padStart(2, '0')}`);
    await record('done change-engine-oil at 79 on 2026-02-15');
    const { out, err } = await run(['export', 'calendar', PUMP, path, '--on', '2026-02-16']);
    expect(out.replaceAll('\r\n ', '')).toMatch(/An estimate from use so far: between 2026-\d\d-\d\d and 2026-\d\d-\d\d/);
    expect(err).not.toContain('not in the calendar');
  });

  it('gives out all entries as a table, and takes them in again elsewhere, once', async () => {
    await record('hours 88', 'done clean-strainer at 88 note -1', 'found something');
    const table = `${path}.csv`;
    await run(['export', 'entries', PUMP, path, '--to', table]);
    const [first, copy] = [await entries(), `${path}.copy`];
    expect((await run(['import', 'entries', PUMP, copy, table])).out).toBe('3 entries recorded, 0 there already.\n');
    expect((await run(['import', 'entries', PUMP, copy, table])).out).toBe('0 entries recorded, 3 there already.\n');
    expect(readLogbook(await readFile(copy, 'utf8')).entries).toEqual(first);
  });

  it('takes in a feed and frames', async () => {
    const feed = `${path}.xml`;
    await writeFile(
      feed,
      '<Fleet><Equipment><EquipmentHeader><SerialNumber>007</SerialNumber></EquipmentHeader><CumulativeOperatingHours datetime="2026-06-14T22:30:00Z"><Hour>88.5</Hour></CumulativeOperatingHours></Equipment></Fleet>',
    );
    expect((await run(['import', 'feed', PUMP, path, feed])).code).toBe(2);
    expect((await run(['import', 'feed', PUMP, path, feed, '--machine', '007', '--zone', 'Europe/Berlin'])).out).toBe(
      '1 entry recorded, 0 there already.\n',
    );
    expect((await run(['import', 'feed', PUMP, path, feed, '--machine', '008'])).code).toBe(1);
    const frames = `${path}.log`;
    await writeFile(frames, 'can0 18FEE500 [8] F4 06 00 00 FF FF FF FF\n');
    expect((await run(['import', 'frames', PUMP, path, frames])).out).toBe('1 entry recorded, 0 there already.\n');
    expect((await run(['import', 'frames', PUMP, path, frames])).out).toBe('0 entries recorded, 1 there already.\n');
    expect((await run(['import', 'feed', PUMP, path, feed, '--machine', '007', '--zone', 'Europe/Berlin'])).out).toBe(
      '0 entries recorded, 1 there already.\n',
    );
    expect(await entries()).toMatchObject([
      { on: '2026-06-15', at: '00:30', meters: { engine: 88.5 } },
      { on: '2026-06-15', at: '07:30', meters: { engine: 89 } },
    ]);
  });
});
