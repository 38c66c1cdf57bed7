import ts from 'typescript';
import { beforeAll, describe, expect, test } from 'vitest';
import { inputTypes } from '../../../src/render/inputs/input-types.js';
import { scheduleGraph } from '../../access/schedule-graph.js';
import { compileText } from '../../support/compile-text.js';

const options: ts.CompilerOptions = {
  strict: true,
  exactOptionalPropertyTypes: true,
  noUncheckedIndexedAccess: true,
  noEmit: true,
  skipLibCheck: true,
  module: ts.ModuleKind.ESNext,
  moduleResolution: ts.ModuleResolutionKind.Bundler,
  target: ts.ScriptTarget.ES2023,
  types: [],
};

/** What the TypeScript compiler objects to, in files that lie side by side in tests/render/inputs/. */
function objections(files: Readonly<Record<string, string>>): readonly string[] {
  const folder = `${import.meta.dirname}/`;
  const disk = ts.createCompilerHost(options);
  const ours = (path: string): string | undefined => files[path.replace(folder, '')];
  const host: ts.CompilerHost = {
    ...disk,
    readFile: (path) => ours(path) ?? disk.readFile(path),
    fileExists: (path) => ours(path) !== undefined || disk.fileExists(path),
    getSourceFile: (path, language, ...rest) => {
      const text = ours(path);
      return text === undefined ? disk.getSourceFile(path, language, ...rest) : ts.createSourceFile(path, text, language);
    },
  };
  const program = ts.createProgram(
    Object.keys(files).map((name) => folder + name),
    options,
    host,
  );
  return ts.getPreEmitDiagnostics(program).map(({ file, start = 0, messageText }) => {
    const line = file === undefined ? '' : (file.text.slice(0, start).split('\n').length - 1).toString();
    return `${line}: ${ts.flattenDiagnosticMessageText(messageText, ' ').slice(0, 200)}`;
  });
}

/** A module that logs these entries, one a line from line 1 on, with the types of a schedule. */
function logging(...entries: readonly string[]): string {
  const lines = entries.map((entry) => `log({ id: 'e', on: '2026-05-13', ${entry} });`);
  return [`import type { Entry } from './inputs.js'; declare function log(entry: Entry): void;`, ...lines].join('\n');
}

describe('the types of the orchard tractor', () => {
  let types = '';
  beforeAll(() => (types = inputTypes(scheduleGraph('orchard-tractor.due'))));

  test('compile, take what is right, and refuse wrong names one by one', () => {
    const app = logging(
      `kind: 'done', tasks: ['change-engine-oil'], meters: { engine: 1304 }`,
      `kind: 'reading', readings: { 'engine-oil': 'below-low', coolant: 92 }`,
      `kind: 'outing', hours: 3, duties: [{ duty: 'tall-growth' }], attachments: ['flail-mower']`,
      `kind: 'done', tasks: ['change-engine-oli']`,
      `kind: 'reading', meters: { enigne: 4 }`,
      `kind: 'reading', readings: { coolant: 'low' }`,
      `kind: 'defect-opened', defect: 'hydraulic-seep', class: 'no-such-class'`,
      `kind: 'outing', duties: [{ duty: 'tall' }]`,
      `kind: 'done'`,
    );
    const found = objections({ 'inputs.ts': types, 'app.ts': app });
    expect(found.map((each) => each.split(':')[0])).toEqual(['4', '5', '6', '7', '8', '9']);
    expect(found[0]).toContain('change-engine-oli');
  });

  test('are entries of duewright, so that they can be handed to it as they are', () => {
    const handOver = `import type { Entry } from './inputs.js';
import type { Entry as Any } from '../../../src/history/entry.js';
export const handed = (entries: readonly Entry[]): readonly Any[] => entries;`;
    expect(objections({ 'inputs.ts': types, 'app.ts': handOver })).toEqual([]);
  });
});

test('words of an author cannot leave their comment', () => {
  const graph = compileText('meter engine "*/ export const harm = 1; /*" counts h\ntask look "Look */ now"\n  every 10 h of engine\n');
  expect(objections({ 'inputs.ts': `${inputTypes(graph)}\ndeclare const harm: string; export const fine: string = harm;` })).toEqual([]);
});

test('a schedule that has next to nothing has types too', () => {
  const types = inputTypes(compileText('task look "Look"\n  every 10 days\n'));
  const app = logging(`kind: 'done', tasks: ['look'], meters: {}`, `kind: 'reading', meters: { engine: 1 }`);
  expect(objections({ 'inputs.ts': types, 'app.ts': app }).map((each) => each.split(':')[0])).toEqual(['2']);
});
