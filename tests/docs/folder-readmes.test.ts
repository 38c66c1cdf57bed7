/** Each folder of src/ says what it is for, in a README.md that names what is there and nothing that is not. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { describe, expect, test } from 'vitest';
import { arrows } from '../architecture/arrows.js';

const root = new URL('../../', import.meta.url);
const isThere = (path: string): boolean => existsSync(new URL(path, root));
const foldersIn = (path: string): readonly string[] =>
  readdirSync(new URL(path, root), { withFileTypes: true }).flatMap((entry) => (entry.isDirectory() ? [`${path}${entry.name}/`] : []));

/** The houses, and each adapter. */
const folders = [...foldersIn('src/'), ...foldersIn('src/adapters/')];

const readmeOf = (folder: string): string => readFileSync(new URL(`${folder}README.md`, root), 'utf8');

/** Every file or folder that a page names: in backticks with an ending or a slash at its end, or as a link. */
function namedIn(page: string): readonly string[] {
  const quoted = [...page.matchAll(/`([\w./-]+(?:\.[a-z]+|\/))`/g)].map(([, path = '']) => path);
  const linked = [...page.matchAll(/\]\((?!https?:)([^)#\s]+)[^)]*\)/g)].map(([, path = '']) => path);
  return [...quoted, ...linked];
}

/** Names that stand in a folder's page and are neither below that folder nor below the repository's root. */
function missingFrom(folder: string, page: string): readonly string[] {
  return namedIn(page).filter((path) => !isThere(posix.join(folder, path)) && !isThere(path));
}

/** Functions and classes on the line that names the door, as far as it calls them or sets them apart as classes. */
function doorsIn(page: string): readonly string[] {
  const [line = ''] = /^\*\*Door\*\*.*$/m.exec(page) ?? [];
  return [...line.matchAll(/`(\w+)\(|class `(\w+)`/g)].map(([, called, named]) => called ?? named ?? '');
}

function exportsOf(folder: string): readonly string[] {
  const files = readdirSync(new URL(folder, root), { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts'));
  return files.flatMap((file) =>
    [...readFileSync(new URL(`${folder}${file}`, root), 'utf8').matchAll(/^export (?:async )?(?:function\*?|class|const) (\w+)/gm)].map(
      ([, name = '']) => name,
    ),
  );
}

describe.each(folders)('%sREADME.md', (folder) => {
  test('is there, and is short', () => {
    expect(isThere(`${folder}README.md`)).toBe(true);
    const lines = readmeOf(folder).split('\n').length;
    expect(lines).toBeGreaterThan(10);
    expect(lines).toBeLessThan(45);
  });

  test('says what comes in and goes out, what holds, where the tests are and how to add to it', () => {
    const page = readmeOf(folder);
    expect(['**In**', '**Out**', '**Door**', '**Holds here**', '**Tests**', '**To add'].filter((part) => !page.includes(part))).toEqual([]);
  });

  test('names nothing that is not there', () => {
    expect(missingFrom(folder, readmeOf(folder))).toEqual([]);
  });

  test('names doors that the folder has', () => {
    const exported = exportsOf(folder);
    expect(doorsIn(readmeOf(folder)).filter((door) => !exported.includes(door))).toEqual([]);
  });
});

test.each(foldersIn('src/'))('%s says which houses it may import from', (folder) => {
  const house = posix.basename(folder);
  const said = /^\*\*May import\*\* ([a-z, ]+?)(?: \(.*?\))?(?:\.|:)/m.exec(readmeOf(folder))?.[1] ?? '';
  expect(said === 'nothing' ? [] : said.split(', ')).toEqual(arrows[house]);
});

describe('the reader of pages', () => {
  test('sees files, folders and links', () => {
    expect(namedIn('`a.ts` and `b/`, not `c` or `f(x)`; [d](../d.md#e)')).toEqual(['a.ts', 'b/', '../d.md']);
  });

  test('finds what is gone', () => {
    expect(missingFrom('src/base/', '`span.ts`, `spam.ts`, `tests/base/`')).toEqual(['spam.ts']);
  });

  test('sees doors', () => {
    expect(doorsIn('**Door** `parse(text)`, the class `LiveParser`, not `tree`')).toEqual(['parse', 'LiveParser']);
  });
});
