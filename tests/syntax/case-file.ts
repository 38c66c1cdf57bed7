/**
 * Golden cases as plain text. A case is `# name`, the input, a line `==>` and what is expected of it; `----` parts two cases.
 *
 * Expected lines beginning with `!` are diagnostics (with their help and fixes below, indented), others the outline of the tree.
 * A case may leave the outline out, the diagnostics never: no `!` line means that there must be none.
 */
import { readFileSync } from 'node:fs';
import { positionOf, sourceText } from '../../src/base/source-text.js';
import type { Diagnostic } from '../../src/diagnostics/diagnostic.js';

/** One case as written. */
export interface Case {
  readonly name: string;
  readonly input: string;
  readonly expected: readonly string[];
}

/** @throws Error when a case has no name, no input or asserts nothing. */
export function readCases(path: string): readonly Case[] {
  return readFileSync(path, 'utf8').trimEnd().split(/^----\n/m).map((text) => readCase(text, path)); // prettier-ignore
}

/** See {@link readCases}. */
export function readCase(text: string, path: string): Case {
  const found = /^# (.+)\n([\s\S]*?)^==>\n?([\s\S]*)$/m.exec(text);
  if (found === null || !text.startsWith('# ')) throw new Error(`${path}: not a case: ${text.slice(0, 60)}`);
  const [, name = '', input = '', rest = ''] = found;
  const expected = rest.split('\n').filter((each) => each.trim() !== '');
  if (input.trim() === '') throw new Error(`${path}: the case "${name}" has no input`);
  if (expected.length === 0) throw new Error(`${path}: the case "${name}" asserts nothing`);
  return { name, input, expected };
}

/** What an author would see, in the form in which cases expect it. */
export function showDiagnostics(input: string, diagnostics: readonly Diagnostic[]): readonly string[] {
  const source = sourceText('case', input);
  return diagnostics.flatMap((each) => {
    const { line, column } = positionOf(source, each.at.start);
    return [
      `! ${line}:${column} ${each.code} ${each.message}`,
      ...(each.help === undefined ? [] : [`    help: ${each.help}`]),
      ...each.fixes.map((fix) => `    ${fix.grade}: ${fix.title}`),
    ];
  });
}
