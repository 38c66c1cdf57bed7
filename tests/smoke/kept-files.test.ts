/** What the command keeps between runs makes it quicker and changes no answer. */
import { chmodSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { layDownCode } from '../../.scripts/bundles.mjs';
import { cacheFolder } from '../../src/adapters/cli/kept-files.js';
import { buildCommand, type BuiltCommand } from '../adapters/cli/built-command.js';

const logbook = 'tests/cases/cli/files/water-pump.jsonl';
const text = readFileSync('tests/cases/cli/files/water-pump.due', 'utf8');

let built: BuiltCommand;
let folder = '';
beforeAll(async () => {
  built = await buildCommand();
  folder = mkdtempSync(join(tmpdir(), 'duewright-kept-'));
});
afterAll(() => {
  built.remove();
  rmSync(folder, { recursive: true, force: true });
});

/** A schedule and a cache of its own, so that no test sees what another left. */
function desk(name: string): {
  readonly schedule: string;
  readonly cache: string;
  readonly due: () => string;
  readonly kept: () => readonly string[];
} {
  const [schedule, cache] = [join(folder, `${name}.due`), join(folder, `${name}-cache`)];
  writeFileSync(schedule, text);
  return {
    schedule,
    cache,
    due: () => {
      const { out, err, code } = built.run(['due', schedule, logbook, '--on', '2026-06-01'], { env: { DUEWRIGHT_CACHE: cache } });
      return `${out}${err}${code}`;
    },
    kept: () => (existsSync(cache) ? readdirSync(cache) : []),
  };
}

const ends = (names: readonly string[], end: string): readonly string[] => names.filter((name) => name.endsWith(end));

describe('what is kept between runs', () => {
  test('gives the same answer, for this user alone, and nothing else is left behind', () => {
    const { due, kept, cache } = desk('same');
    const first = due();
    expect(first).toContain('Clean the suction strainer');
    expect(ends(kept(), '.graph')).toHaveLength(1);
    expect(ends(kept(), '.code')).toHaveLength(2);
    expect(kept()).toHaveLength(3);
    for (const name of kept()) expect(statSync(join(cache, name)).mode & 0o777).toBe(0o600);
    expect(due()).toBe(first);
  });

  test('is not used for a text that has changed, nor for one that has become wrong', () => {
    const { due, schedule } = desk('changed');
    due();
    writeFileSync(schedule, text.replace('Clean the suction strainer', 'Rinse the strainer'));
    expect(due()).toContain('Rinse the strainer');
    writeFileSync(schedule, `${text}\ntask half "A task without an end" every 10 h of nothing\n`);
    expect(due()).toMatch(/has errors and cannot be used[\s\S]*3$/);
  });

  test('is really used where the text is the same', () => {
    const { due, kept, cache } = desk('used');
    due();
    const [graph = ''] = ends(kept(), '.graph');
    const planted = readFileSync(join(cache, graph), 'utf8').replaceAll(/("title":")Clean the suction strainer/g, '$1Planted');
    writeFileSync(join(cache, graph), planted);
    expect(due()).toContain('Planted');
  });

  test('is not believed where others could have written it, nor where it is broken', () => {
    const { due, kept, cache } = desk('others');
    const first = due();
    for (const name of kept()) chmodSync(join(cache, name), 0o666);
    const [graph = ''] = ends(kept(), '.graph');
    writeFileSync(join(cache, graph), readFileSync(join(cache, graph), 'utf8').replaceAll('suction', 'planted'));
    expect(due()).toBe(first);
    for (const name of kept()) writeFileSync(join(cache, name), 'x');
    expect(due()).toBe(first);
    expect(due()).toBe(first);
  });

  test('is dropped by another build, and not kept at all where the variable is empty or the folder cannot be made', () => {
    const { due, cache, schedule } = desk('dropped');
    due();
    for (const old of ['0-1.graph', '0-v1.code']) writeFileSync(join(cache, old), '');
    writeFileSync(schedule, `${text}# more\n`);
    due();
    expect(readdirSync(cache).filter((name) => name.startsWith('0-'))).toEqual([]);
    const none = { env: { DUEWRIGHT_CACHE: '', HOME: folder } };
    expect(built.run(['due', schedule, logbook, '--on', '2026-06-01'], none).code).toBe(0);
    expect(existsSync(join(folder, '.cache'))).toBe(false);
    const blocked = { env: { DUEWRIGHT_CACHE: join(schedule, 'below-a-file') } };
    expect(built.run(['due', schedule, logbook, '--on', '2026-06-01'], blocked)).toMatchObject({ code: 0, err: '' });
  });

  test('a command that there is not leaves nothing', () => {
    const cache = join(folder, 'none-cache');
    expect(built.run(['dou'], { env: { DUEWRIGHT_CACHE: cache } }).code).toBe(2);
    expect(existsSync(cache)).toBe(false);
  });
});

describe('what the build lays down', () => {
  test('serves the first question, so that nothing of the kind is kept then, and changes no answer', () => {
    const without = desk('without-laid-down').due();
    const laid = join(dirname(built.script), 'code');
    layDownCode(`${dirname(built.script)}/`);
    const { due, kept } = desk('laid-down');
    expect(due()).toBe(without);
    expect(ends(kept(), '.code')).toEqual([]);
    expect(ends(readdirSync(laid), '.graph')).toEqual([]);
    for (const name of readdirSync(laid)) writeFileSync(join(laid, name), 'x');
    expect(due()).toBe(without);
    rmSync(laid, { recursive: true });
  });
});

test('the folder is the one that the system has for such things', () => {
  expect(cacheFolder({ HOME: '/home/ada' }, 'linux')).toBe('/home/ada/.cache/duewright');
  expect(cacheFolder({ HOME: '/home/ada', XDG_CACHE_HOME: '/tmp/ada' }, 'linux')).toBe('/tmp/ada/duewright');
  expect(cacheFolder({ HOME: '/Users/ada' }, 'darwin')).toBe('/Users/ada/Library/Caches/duewright');
  expect(cacheFolder({ LOCALAPPDATA: '/ada' }, 'win32')).toBe('/ada/duewright/cache');
  expect(cacheFolder({}, 'linux')).toBeNull();
  expect(cacheFolder({ HOME: '/home/ada', DUEWRIGHT_CACHE: '' }, 'linux')).toBeNull();
  expect(cacheFolder({ HOME: '/home/ada', DUEWRIGHT_CACHE: '/here' }, 'linux')).toBe('/here');
});
