import { describe, expect, test } from 'vitest';
import { styleFor } from '../../../src/adapters/cli/style-for.js';
import { memoryShell } from './memory-shell.js';

type Env = Readonly<Record<string, string | undefined>>;

const coloured = (env: Env, columns: number | undefined): boolean => {
  const text = 'x';
  return styleFor(memoryShell({ env, columns })).paint.strong(text) !== text;
};

describe('styleFor', () => {
  test.each<[string, Env, number | undefined, boolean]>([
    ['a terminal', {}, 80, true],
    ['a pipe', {}, undefined, false],
    ['a terminal with NO_COLOR', { NO_COLOR: '1' }, 80, false],
    ['a terminal with an empty NO_COLOR', { NO_COLOR: '' }, 80, true],
    ['a pipe with FORCE_COLOR', { FORCE_COLOR: '1' }, undefined, true],
    ['a terminal with FORCE_COLOR=0', { FORCE_COLOR: '0' }, 80, false],
    ['NO_COLOR against FORCE_COLOR', { NO_COLOR: '1', FORCE_COLOR: '1' }, 80, false],
    ['a dumb terminal', { TERM: 'dumb' }, 80, false],
  ])('%s: colour %#', (_name, env, columns, expected) => {
    expect(coloured(env, columns)).toBe(expected);
  });

  test('takes the width asked for, then the terminal, then 100', () => {
    expect(styleFor(memoryShell({ columns: 72 })).width).toBe(72);
    expect(styleFor(memoryShell({ columns: 72 }), { width: 50 }).width).toBe(50);
    expect(styleFor(memoryShell()).width).toBe(100);
    expect(styleFor(memoryShell({ columns: 12 })).width).toBe(40);
  });

  test.each<[Env, boolean]>([
    [{ LANG: 'en_GB.UTF-8' }, true],
    [{ LANG: 'C' }, false],
    [{ LANG: 'en_GB.UTF-8', LC_ALL: 'C' }, false],
    [{ LC_CTYPE: 'C.utf8', LANG: 'C' }, true],
    [{}, true],
  ])('%j: unicode %s', (env, expected) => {
    expect(styleFor(memoryShell({ env })).unicode).toBe(expected);
  });

  test('plain is neither colour nor unicode', () => {
    const style = styleFor(memoryShell({ columns: 80 }), { plain: true });
    expect(style.unicode).toBe(false);
    expect(style.paint.strong('x')).toBe('x');
  });
});
