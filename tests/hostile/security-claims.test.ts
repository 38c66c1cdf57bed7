/** What docs/security.md promises and a test can prove. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { expect, test, vi } from 'vitest';
import { sourceFiles, srcFolder } from '../architecture/read-imports.js';
import { bundleEngine } from '../support/bundle-engine.js';

/** Each expression of the files that `wanted` names, as `file: words`. */
function expressions(files: readonly string[], wanted: (node: ts.Node) => boolean): readonly string[] {
  return files.flatMap((file) => {
    const source = ts.createSourceFile(file, readFileSync(join(srcFolder, file), 'utf8'), ts.ScriptTarget.Latest, true);
    const found: string[] = [];
    const visit = (node: ts.Node): void => {
      if (wanted(node)) found.push(`${file}: ${node.getText().slice(0, 80)}`);
      ts.forEachChild(node, visit);
    };
    visit(source);
    return found;
  });
}

function named(node: ts.Node, name: string): boolean {
  return ts.isIdentifier(node) && node.text === name;
}

const core = sourceFiles().filter((file) => !file.startsWith('adapters/'));

test('the core asks for no time, no dice, no locale, no network, and runs no text as code', () => {
  const found = expressions(core, (node) => {
    if (ts.isNewExpression(node))
      return ['Function', 'Date', 'XMLHttpRequest', 'WebSocket', 'Worker'].some((name) => named(node.expression, name));
    if (ts.isCallExpression(node))
      return (
        node.expression.kind === ts.SyntaxKind.ImportKeyword ||
        ['eval', 'fetch', 'Function', 'Date', 'require'].some((name) => named(node.expression, name))
      );
    if (!ts.isPropertyAccessExpression(node)) return false;
    const { expression, name } = node;
    return (
      named(expression, 'Intl') ||
      (named(expression, 'Date') && name.text === 'now') ||
      (named(expression, 'Math') && name.text === 'random') ||
      name.text.startsWith('toLocale') ||
      name.text === 'localeCompare'
    );
  });
  expect(found).toEqual([]);
});

test('no regular expression is made from a text: each is written out in the source', () => {
  const found = expressions(core, (node) => {
    if (ts.isNewExpression(node) || ts.isCallExpression(node))
      return named(node.expression, 'RegExp') && node.arguments?.some((each) => !ts.isStringLiteralLike(each)) === true;
    return false;
  });
  // The lexer's words, from the list of words of the language.
  expect(found.filter((each) => !each.startsWith('syntax/'))).toEqual([]);
});

test('a bundle of the engine holds nothing that runs text or reaches a network', async () => {
  const { text } = await bundleEngine();
  expect(text.length).toBeGreaterThan(10_000);
  const found = [/\beval\(/, /\bfetch\(/, /XMLHttpRequest/, /\bimport\(/, /WebSocket/, /new Function/].filter((each) => each.test(text));
  expect(found).toEqual([]);
});

test('checking an entry builds no code from text', async () => {
  const made: unknown[] = [];
  const counting = new Proxy(Function, {
    construct: (target, given: string[]) => {
      made.push(given);
      return new target(...given);
    },
  });
  vi.stubGlobal('Function', counting);
  const { validateEntry } = await import('../../src/history/validate-entry.js');
  const read = validateEntry({ id: 'a', on: '2026-05-12', kind: 'reading', meters: { engine: 1 } });
  expect(made).toEqual([]);
  // It would have been seen.
  Reflect.construct(globalThis.Function, ['']);
  vi.unstubAllGlobals();
  expect(read.kind).toBe('entry');
  expect(made).toHaveLength(1);
});
