/** The programs of docs/embedding.md, bundled against the sources and run as they stand there. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { jsonText } from '../../src/adapters/cli/json-text.js';
import { compile, dayOf, type Entry, kindsOf, readEntries, type RuleGraph } from '../../src/index.js';
import { fencedFiles } from './fenced-files.js';

const root = new URL('../../', import.meta.url);
const pump = (name: string): string => readFileSync(new URL(`tests/cases/cli/files/${name}`, root), 'utf8');
const logbook = pump('water-pump.jsonl');
const today = { day: dayOf('2026-06-01'), minute: null };
const files = fencedFiles('embedding.md');

let folder = '';
let graph: RuleGraph;

beforeAll(async () => {
  // Inside the project, so that packages are found from there.
  const cache = new URL('node_modules/.cache/', root).pathname;
  mkdirSync(cache, { recursive: true });
  folder = mkdtempSync(join(cache, 'embedding-'));
  const compiled = compile('water-pump.due', (path) => (path === 'water-pump.due' ? pump(path) : undefined)).graph;
  if (compiled === null) throw new Error('the pump does not compile');
  graph = compiled;
  for (const [name, text] of files) writeFileSync(join(folder, name), text);
  writeFileSync(join(folder, 'pump.json'), jsonText(graph));
  writeFileSync(join(folder, 'logbook.json'), jsonText(readEntries(logbook).entries.filter(({ on }) => on < '2026-06-01')));
  await Promise.all([
    bundle('service.mjs', 'node'),
    bundle('job.mjs', 'node'),
    bundle('small.mjs', 'node'),
    bundle('written-here.mjs', 'node'),
    bundle('from-elsewhere.mjs', 'node'),
    bundle('proved-by-host.mjs', 'node'),
    bundle('in-words.mjs', 'node'),
    bundle('give-out.mjs', 'node'),
    bundle('page.js', 'browser'),
  ]);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function bundle(entry: string, platform: 'node' | 'browser'): Promise<void> {
  const sourceOf = (path: string): string => new URL(path, root).pathname;
  await build({
    entryPoints: [join(folder, entry)],
    outdir: join(folder, 'out'),
    bundle: true,
    platform,
    format: 'esm',
    outExtension: { '.js': entry.endsWith('.mjs') ? '.mjs' : '.js' },
    alias: {
      'duewright/engine': sourceOf('src/engine.ts'),
      'duewright/compiler': sourceOf('src/compiler.ts'),
      'duewright/reading': sourceOf('src/reading.ts'),
      'duewright/words': sourceOf('src/words.ts'),
      'duewright/exchange': sourceOf('src/adapters/exchange.ts'),
      'duewright/fleet': sourceOf('src/adapters/fleet.ts'),
    },
    logLevel: 'silent',
  });
}

async function load<T>(name: string): Promise<T> {
  return (await import(/* @vite-ignore */ pathToFileURL(join(folder, 'out', name)).href)) as T;
}

describe('the engine of a few kinds', () => {
  test('answers what it is made for, and says line by line what it is not', async () => {
    const { linesFor } = await load<{ linesFor: (graph: RuleGraph, entries: readonly Entry[], date: string) => readonly string[] }>(
      'small.mjs',
    );
    const text =
      'schedule s "S"\nlanguage 1\nmeter engine "Hours" counts h\ntask oil "Oil"\n  every 100 h of engine or 12 months, whichever first\n';
    const simple = compile('s.due', () => text).graph;
    if (simple === null) throw new Error('it does not compile');
    const done: Entry = { kind: 'done', id: 'd', on: '2026-05-01', tasks: ['oil'], meters: { engine: 5 } };
    expect(linesFor(simple, [done], '2026-06-01')).toEqual(['oil: clear']);
    expect(linesFor(simple, [done], '2027-06-01')).toEqual(['oil: overdue']);
    expect(kindsOf(simple, [done])).toEqual(['intervals', 'calendar']);
    const refused = linesFor(graph, [], '2026-06-01');
    expect(refused.length).toBeGreaterThan(2);
    for (const line of refused)
      expect(line).toMatch(/^Line \d+ of the schedule asks for `[\w-]+`, which this engine was not given\. Give /);
  });
});

describe('in words, and as files', () => {
  const text = `schedule s "Pump"
language 1
meter engine "Hour meter" counts h
task oil "Change the oil"
  every 100 h of engine or 12 months, whichever first
task filter "Renew the filter"
  every 2 years
`;
  const simple = compile('s.due', () => text).graph;
  const done: Entry = { kind: 'done', id: 'd', on: '2026-05-01', tasks: ['oil'], meters: { engine: 5 } };
  const read: Entry = { kind: 'reading', id: 'r', on: '2026-05-31', meters: { engine: 105 } };

  test('says the verdict, the tasks and the reasons as the command does', async () => {
    if (simple === null) throw new Error('it does not compile');
    const words = await load<{
      dueInWords: (graph: RuleGraph, entries: readonly Entry[], date: string) => readonly string[];
      whyInWords: (graph: RuleGraph, entries: readonly Entry[], date: string, task: string) => { text: string; headline: string };
    }>('in-words.mjs');
    expect(words.dueInWords(simple, [done, read], '2026-06-01')).toEqual([
      'Work due first',
      'Change the oil: due (every 100 h of engine)',
      'Renew the filter: unrecorded (no record that it was ever done)',
    ]);
    const why = words.whyInWords(simple, [done, read], '2026-06-01', 'oil');
    expect(why.headline).toMatch(/^Change the oil is due: the 100 h of engine/);
    expect(why.text.split('\n').every((line) => line.length <= 72)).toBe(true);
    expect(why.text).toContain('Once it is done it is clear.');
  });

  test('gives out a table, a record and a calendar', async () => {
    if (simple === null) throw new Error('it does not compile');
    const { giveOut } = await load<{
      giveOut: (graph: RuleGraph, entries: readonly Entry[], date: string, machine: string, stamp: string) => Record<string, string>;
    }>('give-out.mjs');
    const files = giveOut(simple, [done, read], '2026-06-01', 'north-17', '2026-06-01T08:30:00Z');
    expect(files['logbook.csv']).toContain('2026-05-01,done,oil,5,d');
    expect(files['record.csv']).toContain('Change the oil');
    expect(files['due.ics']).toMatch(/^BEGIN:VCALENDAR\r\n/);
  });
});

describe('the compiler of a few parts', () => {
  const header = 'schedule s "S"\nlanguage 1\nfits model "M"\nmeter engine "Hours" counts h\n';
  const task = 'task oil "Oil"\n  every 100 h of engine or 12 months, whichever first\n';
  const example = 'example "By hours"\n  2026-03-02 engine 100 h  expect oil due\n';
  const done: Entry = { kind: 'done', id: 'd', on: '2026-05-01', tasks: ['oil'], meters: { engine: 5 } };

  test('compiles what it is made for, and says what it is not, what is wrong, and what the engine is not made for', async () => {
    const { dueBy } = await load<{ dueBy: (text: string, entries: readonly Entry[], date: string) => readonly string[] }>(
      'written-here.mjs',
    );
    expect(dueBy(header + task + example, [done], '2026-06-01')).toEqual(['oil: clear']);
    expect(dueBy(`${header}${task}position guard closed, open\n`, [done], '2026-06-01')).toEqual([
      'Moving parts, places and steps are read by `access`, which this compiler was not given. Give `compilerWith` the part `access`, or use `compile`.',
    ]);
    expect(dueBy(header + task.replace('100 h', '100'), [done], '2026-06-01')).toEqual(['Expected a unit here, not `of`.']);
    expect(dueBy(`${header}${task}  only if date from 1 April to 1 May\n`, [done], '2026-06-01')[0]).toMatch(
      /^Line 5 of the schedule asks for `gate`, which this engine was not given\. Give /,
    );
  });
});

describe('the reader of a few kinds', () => {
  test('reads what it is made for, and says by its line what it is not', async () => {
    const { graphFrom } = await load<{ graphFrom: (text: string) => RuleGraph | string }>('from-elsewhere.mjs');
    const text = 'schedule s "S"\nlanguage 1\nmeter engine "Hours" counts h\ntask oil "Oil"\n  every 100 h of engine\n';
    const simple = compile('s.due', () => text).graph;
    const gauged = compile('s.due', () => `${text}gauge coolant "Coolant" reads °C\n`).graph;
    expect(graphFrom(JSON.stringify(simple))).toEqual(simple);
    expect(graphFrom(JSON.stringify(gauged))).toBe('line 6 of the schedule asks for `gauges`, which this reader was not given');
    expect(graphFrom('{')).toBe('it is not a JSON object');
  });

  test('leaves the proof to the host, and takes nothing that was changed', async () => {
    const { graphFrom } = await load<{ graphFrom: (text: string) => Promise<RuleGraph | string> }>('proved-by-host.mjs');
    const source = 'schedule s "Größe"\nlanguage 1\nmeter engine "Hours" counts h\ntask oil "Oil"\n  every 100 h of engine\n';
    const { graph: simple } = compile('s.due', () => source);
    const text = JSON.stringify(simple);
    expect(await graphFrom(text)).toEqual(simple);
    expect(await graphFrom(text.replace('"Oil"', '"Air"'))).toBe('it was changed since it was compiled');
    expect(await graphFrom(text.replace('"interval"', '"conjuring"'))).toMatch(/^it is not built as a rule graph is/);
  });
});

describe('the service', () => {
  let server: Server;
  let address = '';
  beforeAll(async () => {
    const { createService } = await load<{ createService: (graph: string, logbook: string, clock: () => string) => Server }>('service.mjs');
    server = createService(jsonText(graph), logbook, () => '2026-06-01 07:30');
    await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
    address = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  });
  afterAll(() => new Promise((closed) => server.close(closed)));

  const ask = async (path: string, body?: string): Promise<readonly [number, unknown]> => {
    const response = await fetch(address + path, body === undefined ? {} : { method: 'POST', body });
    return [response.status, await response.json()];
  };

  test('says what is due, takes an entry once, and says so afterwards', async () => {
    const due = await ask('/due');
    expect(due).toMatchObject([200, { verdict: 'work-due-first', brokenLines: 0 }]);
    expect(JSON.stringify(due)).toContain('{"task":"clean-strainer","state":"overdue"}');
    const done = JSON.stringify({
      id: 'a',
      on: '2026-06-01',
      at: '07:00',
      kind: 'done',
      tasks: ['clean-strainer'],
      meters: { engine: 88 },
    });
    expect(await ask('/entries', done)).toEqual([201, { known: false }]);
    expect(await ask('/entries', done)).toEqual([200, { known: true }]);
    expect(JSON.stringify(await ask('/due'))).not.toContain('clean-strainer');
  });

  test('explains, and says what is wrong with a question', async () => {
    expect(await ask('/why/change-engine-oil')).toMatchObject([200, { format: 'duewright-explanation', state: 'coming-up' }]);
    expect(await ask('/why/no-such-task')).toMatchObject([404, {}]);
    expect(await ask('/entries', '{"kind":"done"}')).toMatchObject([422, {}]);
    expect(await ask('/entries', '{')).toMatchObject([400, {}]);
    expect(await ask('/nothing')).toMatchObject([404, {}]);
  });
});

describe('the job', () => {
  interface Answer {
    readonly machine?: string;
    readonly line?: number;
    readonly verdict?: string;
    readonly problem?: string;
    readonly open?: readonly string[];
  }
  type DueOver = (graph: RuleGraph, input: Readable, today: number) => AsyncIterable<Answer>;

  test('answers for each machine, and leaves none out', async () => {
    const { dueOver } = await load<{ dueOver: DueOver }>('job.mjs');
    const lines = [
      JSON.stringify({ machine: 'north', entries: readEntries(logbook).entries }),
      '{"machine":"east","on":"2026-06-01","meters":{"engine":70},"done":{"change-engine-oil":{"on":"2026-05-01","meters":{"engine":10}}}}',
      '{"machine":"empty"}',
      '{"machine":"wrong","entries":[{"kind":"done"}]}',
      'no JSON',
    ];
    const answers: Answer[] = [];
    for await (const answer of dueOver(graph, Readable.from([`${lines.join('\n')}\n`]), today.day ?? 0)) answers.push(answer);
    const of = (name: string): Answer | undefined => answers.find(({ machine }) => machine === name);
    expect(of('north')?.open).toContain('clean-strainer overdue');
    // Nothing is said of the strainer, which might be past its hard stop.
    expect(of('east')).toMatchObject({ verdict: 'cannot-tell' });
    expect(of('east')?.open).toContain('change-engine-oil overdue');
    expect(of('empty')?.open).toContain('change-engine-oil unrecorded');
    expect(answers.flatMap(({ line, problem }) => (problem === undefined ? [] : [line]))).toEqual([4, 5]);
  });
});

describe('the page', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await chromium.launch({ executablePath: process.env['CHROMIUM'] ?? '', args: ['--no-sandbox'] });
  }, 60_000);
  afterAll(() => browser.close());

  test('follows the hour meter, with cautions before the work', async () => {
    const page = await browser.newPage();
    const faults: string[] = [];
    page.on('pageerror', (error) => faults.push(error.message));
    // A module is not loaded from a file: the script goes into the page, as an inlining bundler would put it.
    const script = readFileSync(join(folder, 'out', 'page.js'), 'utf8').replaceAll('</script', '<\\/script');
    const html = (files.get('page.html') ?? '').replace(' src="page.js">', () => `>${script}`);
    const file = join(mkdtempSync(join(tmpdir(), 'duewright-page-')), 'page.html');
    writeFileSync(file, html);
    await page.goto(pathToFileURL(file).href);
    const tasks = page.locator('#tasks');
    expect(await tasks.innerText()).toContain('WARNING: Hot oil burns.');
    expect(await tasks.innerText()).toContain('Change the engine oil: coming up (line 21 of the schedule)');
    await page.locator('#hours').fill('91');
    expect(await tasks.innerText()).toContain('Change the engine oil: due');
    expect(await page.locator('#verdict').innerText()).toBe('Work is due first');
    expect(faults).toEqual([]);
    rmSync(join(file, '..'), { recursive: true });
  });
});
