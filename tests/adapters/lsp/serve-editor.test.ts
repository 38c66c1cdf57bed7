import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { CodeAction, CodeLens, CompletionItem, Hover, Location, Position, PublishDiagnosticsParams, Range, SemanticTokens, TextEdit, WorkspaceEdit } from 'vscode-languageserver-protocol'; // prettier-ignore
import { buildCommand, root, type BuiltCommand } from '../cli/built-command.js';
import { startEditor, uri, type EditorClient } from './editor-client.js';

let built: BuiltCommand;
let editor: EditorClient;
let folder = '';
let tractor = '';
let mower = '';
let text = '';

beforeAll(async () => {
  built = await buildCommand();
  folder = mkdtempSync(join(tmpdir(), 'duewright-'));
  cpSync(`${root}schedules`, folder, { recursive: true });
  tractor = join(folder, 'orchard-tractor.due');
  mower = join(folder, 'attachments/flail-mower.due');
  text = readFileSync(tractor, 'utf8');
  editor = await startEditor(built.script, folder, ['--on', '2026-05-08 07:30', '--stdio']);
  editor.open(tractor, text);
  await editor.diagnostics(tractor, () => true);
}, 60_000);

afterAll(async () => {
  const code = await editor.leave();
  built.remove();
  rmSync(folder, { recursive: true, force: true });
  expect(code).toBe(0);
});

/** The place of some words in the tractor's schedule, so many letters on. */
function at(words: string, on = 0): Position {
  const offset = text.indexOf(words) + on;
  const before = text.slice(0, offset);
  expect(text).toContain(words);
  return { line: before.split('\n').length - 1, character: offset - before.lastIndexOf('\n') - 1 };
}

function ask<T>(method: string, more: object = {}, path = tractor): Promise<T> {
  return editor.connection.sendRequest<T>(method, { textDocument: { uri: uri(path) }, ...more });
}

function errors({ diagnostics }: PublishDiagnosticsParams): readonly string[] {
  return diagnostics.filter(({ severity }) => severity === 1).map(({ message }) => JSON.stringify(message));
}

describe('an editor that speaks the protocol', () => {
  test('is told what the server can do', () => {
    expect(editor.capabilities).toMatchObject({
      completionProvider: {},
      hoverProvider: true,
      definitionProvider: true,
      referencesProvider: true,
      renameProvider: { prepareProvider: true },
      documentSymbolProvider: true,
      foldingRangeProvider: true,
      documentFormattingProvider: true,
    });
  });

  test('hears of a mistake at the keystroke that makes it, and of its going at the one that mends it', async () => {
    const place = at('every 100 h of engine', 'every 100 h of engin'.length);
    editor.type(tractor, 2, [place.line, place.character, place.character + 1], 'x');
    const wrong = await editor.diagnostics(tractor, (found) => errors(found).length > 0);
    expect(wrong?.diagnostics.find(({ severity }) => severity === 1)).toMatchObject({
      code: 'DW220',
      source: 'duewright',
      range: { start: { line: place.line } },
    });
    editor.type(tractor, 3, [place.line, place.character, place.character + 1], 'e');
    expect(errors((await editor.diagnostics(tractor, (found) => errors(found).length === 0)) ?? { uri: '', diagnostics: [] })).toEqual([]);
  });

  test('hears in one file of a mistake that another, unsaved, has brought about', async () => {
    const words = readFileSync(mower, 'utf8');
    editor.open(mower, words);
    const line = words.split('\n').findIndex((each) => each.startsWith('place hood '));
    editor.type(mower, 2, [line, 'place '.length, 'place hood'.length], 'cover');
    const wrong = await editor.diagnostics(tractor, (found) => errors(found).length > 0);
    expect(errors(wrong ?? { uri: '', diagnostics: [] }).join('\n')).toContain('flail-mower.hood');
    editor.type(mower, 3, [line, 'place '.length, 'place cover'.length], 'hood');
    expect(errors((await editor.diagnostics(tractor, (found) => errors(found).length === 0)) ?? { uri: '', diagnostics: [] })).toEqual([]);
  });

  test('a part is judged within the schedule that uses it', async () => {
    const part = join(folder, 'parts/three-cylinder-diesel.due');
    editor.open(part, readFileSync(part, 'utf8'));
    const found = await editor.diagnostics(part, () => true);
    expect(errors(found ?? { uri: '', diagnostics: [] })).toEqual([]);
  });

  test('is offered what fits', async () => {
    const place = at('every 100 h of engine', 'every 100 h of '.length);
    const items = await ask<readonly CompletionItem[]>('textDocument/completion', { position: place });
    const labels = items.map(({ label }) => label);
    expect(labels).toEqual(expect.arrayContaining(['engine', 'shaft', 'work']));
    expect(labels).not.toContain('every');
    expect(items.find(({ label }) => label === 'engine')?.textEdit).toMatchObject({
      newText: 'engine',
      range: { start: place, end: place },
    });
  });

  test('is told what a task means and where it stands by the logbook beside the schedule', async () => {
    const found = await ask<Hover | null>('textDocument/hover', { position: at('task walk-round "', 6) });
    const words = JSON.stringify(found?.contents);
    expect(words).toContain("Due before each day's work");
    expect(words).toContain('By the logbook beside it');
  });

  test('is led from a use to its declaration, also in another file', async () => {
    const found = await ask<Location | null>('textDocument/definition', { position: at('flail-mower.hood', 'flail-mower.h'.length) });
    expect(found?.uri).toBe(uri(mower));
    expect(await ask('textDocument/definition', { position: at('whichever') })).toBeNull();
  });

  test('finds every use, and renames them all in every file', async () => {
    const position = at('flail-mower.hood', 'flail-mower.h'.length);
    const uses = await ask<readonly Location[]>('textDocument/references', { position, context: { includeDeclaration: true } });
    expect(new Set(uses.map((each) => each.uri))).toEqual(new Set([uri(tractor), uri(mower)]));
    const range = await ask<Range>('textDocument/prepareRename', { position });
    expect(range.end.character - range.start.character).toBe('hood'.length);
    const { changes = {} } = await ask<WorkspaceEdit>('textDocument/rename', { position, newName: 'cover' });
    expect(Object.values(changes).flat()).toHaveLength(uses.length);
    expect(
      Object.values(changes)
        .flat()
        .every(({ newText }) => newText === 'cover'),
    ).toBe(true);
    await expect(ask('textDocument/rename', { position, newName: 'every' })).rejects.toThrow(/word of the language/);
  });

  test('a name that is changed in an attachment’s own file is changed in the schedules that mount it', async () => {
    const words = readFileSync(mower, 'utf8').split('\n');
    const line = words.findIndex((each) => each.startsWith('place hood '));
    const { changes = {} } = await ask<WorkspaceEdit>('textDocument/rename', { position: { line, character: 7 }, newName: 'cover' }, mower);
    expect(Object.keys(changes)).toEqual(expect.arrayContaining([uri(tractor), uri(mower)]));
  });

  test('has an outline, folds and colours', async () => {
    const outline = await ask<readonly { readonly name: string }[]>('textDocument/documentSymbol');
    expect(outline.map(({ name }) => name)).toEqual(expect.arrayContaining(['orchard-tractor', 'shaft', 'walk-round', 'at rest']));
    const folds = await ask<readonly { readonly startLine: number; readonly endLine: number }[]>('textDocument/foldingRange');
    expect(folds.length).toBeGreaterThan(20);
    expect(folds.every(({ startLine, endLine }) => endLine > startLine)).toBe(true);
    const { data } = await ask<SemanticTokens>('textDocument/semanticTokens/full');
    expect(data.length % 5).toBe(0);
    expect(data.length / 5).toBeGreaterThan(500);
  });

  test('has the text laid out', async () => {
    const path = join(folder, 'untidy.due');
    editor.open(path, 'schedule   untidy "Untidy"\nlanguage 1 fits model "T"\ntask a "A" every    7 days\n');
    const edits = await ask<readonly TextEdit[]>('textDocument/formatting', { options: { tabSize: 2, insertSpaces: true } }, path);
    expect(edits).toHaveLength(1);
    expect(edits[0]?.newText).toMatch(/^schedule untidy "Untidy"\n {2}language 1\n/);
  });

  test('is offered fixes, and all sure ones at once', async () => {
    const path = join(folder, 'wrong.due');
    editor.open(path, 'schedule wrong "Wrong"\n  language 1\n  fits model "T"\ntask a "A"\n  evry 7 days\n');
    const range = { start: { line: 4, character: 3 }, end: { line: 4, character: 3 } };
    const found = await ask<readonly CodeAction[]>('textDocument/codeAction', { range, context: { diagnostics: [] } }, path);
    expect(found.map(({ title, kind }) => `${kind}: ${title}`)).toEqual([
      'quickfix: Write `every`',
      'source.fixAll: Put right all that is sure',
    ]);
    expect(Object.values(found[0]?.edit?.changes ?? {})[0]).toMatchObject([
      { newText: 'every', range: { start: { line: 4, character: 2 }, end: { line: 4, character: 6 } } },
    ]);
  });

  test('sees above each worked example whether it holds', async () => {
    const found = await ask<readonly CodeLens[]>('textDocument/codeLens');
    expect(found.length).toBe(text.match(/^example /gm)?.length);
    for (const { command, range } of found) {
      expect(text.split('\n')[range.start.line]).toMatch(/^example /);
      expect(command?.title).toMatch(/^holds/);
    }
  });
});
