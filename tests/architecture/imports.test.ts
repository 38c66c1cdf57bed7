import { describe, expect, test } from 'vitest';
import { arrows, packages } from './arrows.js';
import { houseOf, type Import, importsIn, importsOf, resolveImport, sourceFiles } from './read-imports.js';

/** What is wrong with one import, or undefined. */
function complaint(file: string, { specifier, line }: Import): string | undefined {
  const from = houseOf(file);
  const place = `src/${file}:${line}`;
  if (specifier.startsWith('.')) {
    const to = resolveImport(file, specifier);
    if (!specifier.endsWith('.js')) return `${place} imports ${specifier} without its .js`;
    if (to.startsWith('..')) return `${place} reaches out of src/ to ${specifier}`;
    if (houseOf(to) === from || arrows[from]?.includes(houseOf(to)) === true) return undefined;
    return `${place}: ${from} must not import from ${houseOf(to)} (${specifier})`;
  }
  if (specifier.startsWith('node:')) return from === 'adapters' ? undefined : `${place}: only adapters/ may use ${specifier}`;
  return packages[from]?.includes(specifier) === true ? undefined : `${place}: ${from} must not import the package ${specifier}`;
}

/** The first cycle of imports that remain when compiled, as the files along it. */
function findCycle(files: readonly string[]): readonly string[] | undefined {
  const done = new Set<string>();
  const path: string[] = [];
  const visit = (file: string): readonly string[] | undefined => {
    const start = path.indexOf(file);
    if (start >= 0) return [...path.slice(start), file];
    if (done.has(file) || !files.includes(file)) return undefined;
    path.push(file);
    for (const { specifier, typeOnly } of importsOf(file)) {
      const cycle = typeOnly || !specifier.startsWith('.') ? undefined : visit(resolveImport(file, specifier));
      if (cycle !== undefined) return cycle;
    }
    path.pop();
    done.add(file);
    return undefined;
  };
  for (const file of files) {
    const cycle = visit(file);
    if (cycle !== undefined) return cycle;
  }
  return undefined;
}

describe('imports', () => {
  test('run one way, as DEVELOPERS.md draws them', () => {
    const complaints = sourceFiles().flatMap((file) => importsOf(file).map((each) => complaint(file, each)));
    expect(complaints.filter((each) => each !== undefined)).toEqual([]);
  });

  test('every house is known', () => {
    expect([...new Set(sourceFiles().map(houseOf))].filter((house) => arrows[house] === undefined)).toEqual([]);
  });

  test('the arrows themselves have no cycle', () => {
    const reach = (house: string, seen: readonly string[]): readonly string[] =>
      (arrows[house] ?? []).flatMap((to) => (seen.includes(to) ? [to] : [to, ...reach(to, [...seen, to])]));
    for (const house of Object.keys(arrows)) expect(reach(house, [house]), house).not.toContain(house);
  });

  test('no files import each other in a circle', () => {
    expect(findCycle(sourceFiles())).toBeUndefined();
  });
});

describe('the reader of imports', () => {
  const text = [
    "import { a } from '../a.js';",
    "import type { B } from '../b.js';",
    "export { c } from '../c.js';",
    "export type D = import('../d.js').D;",
    "export const e = () => import('../e.js');",
  ].join('\n');

  test('sees every way of importing', () => {
    expect(importsIn(text, 'x/y.ts').map(({ specifier, typeOnly, line }) => [specifier, typeOnly, line])).toEqual([
      ['../a.js', false, 1],
      ['../b.js', true, 2],
      ['../c.js', false, 3],
      ['../d.js', true, 4],
      ['../e.js', false, 5],
    ]);
  });

  test.each([
    ['base/span.ts', '../values/moment.js', /base must not import from values/],
    ['assess/assess.ts', 'node:fs', /only adapters/],
    ['assess/assess.ts', 'zod', /must not import the package zod/],
    ['engine.ts', './syntax/parse.js', /engine must not import from syntax/],
    ['syntax/parse.ts', './lexer', /without its .js/],
  ])('%s importing %s is refused', (file, specifier, message) => {
    expect(complaint(file, { specifier, typeOnly: false, line: 1 })).toMatch(message);
  });
});
