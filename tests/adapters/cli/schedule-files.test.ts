import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { scheduleFiles } from '../../../src/adapters/cli/schedule-files.js';

let folder = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'duewright-'));
  mkdirSync(join(folder, 'farm/parts'), { recursive: true });
  writeFileSync(join(folder, 'secret.due'), 'not for you');
  writeFileSync(join(folder, 'farm/tractor.due'), 'tractor');
  writeFileSync(join(folder, 'farm/parts/diesel.due'), 'diesel');
  writeFileSync(join(folder, 'farm/latin.due'), Buffer.from([0x64, 0xfc, 0x65]));
  symlinkSync(join(folder, 'secret.due'), join(folder, 'farm/leak.due'));
  symlinkSync(folder, join(folder, 'farm/up'));
  symlinkSync('parts/diesel.due', join(folder, 'farm/inside.due'));
  symlinkSync('circle.due', join(folder, 'farm/circle.due'));
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

const load = (path: string): string | undefined => scheduleFiles(join(folder, 'farm/tractor.due')).load(path);

describe('scheduleFiles', () => {
  test('reads files of the folder and below it, also through links that stay inside', () => {
    expect(load('parts/diesel.due')).toBe('diesel');
    expect(load('inside.due')).toBe('diesel');
  });

  test.each([
    'leak.due',
    'up/secret.due',
    '../secret.due',
    'parts/../../secret.due',
    'circle.due',
    'nothing.due',
    '',
    '.',
    'parts',
    'latin.due',
  ])('gives nothing for %s', (path) => {
    expect(load(path)).toBeUndefined();
  });

  test('gives nothing for an absolute path', () => {
    expect(load(join(folder, 'secret.due'))).toBeUndefined();
  });

  test('names the schedule within its folder, and files as the asker would', () => {
    const files = scheduleFiles('farm/tractor.due');
    expect(files.name).toBe('tractor.due');
    expect(files.shown('parts/diesel.due')).toBe('farm/parts/diesel.due');
  });
});
