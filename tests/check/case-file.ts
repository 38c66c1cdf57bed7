/**
 * Golden cases as plain text: what it is about, the files, and exactly what the author sees.
 *
 *     # A slip in the name of a meter.
 *     --- tractor.due
 *     schedule tractor "Tractor" …
 *     ==>
 *     tractor.due:7:17: error DW220: …
 *
 * To write the expectations anew, run the tests with UPDATE_CASES=1 and read what changed.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';

export interface Case {
  readonly name: string;
  readonly about: string;
  /** The first is the one that is checked. */
  readonly files: ReadonlyMap<string, string>;
  readonly first: string;
  readonly expected: string;
}

export const casesFolder = new URL('../cases/check/', import.meta.url);

export function readCases(): readonly Case[] {
  const names = readdirSync(casesFolder).filter((name) => name.endsWith('.txt'));
  return names.sort().map((name) => parseCase(name.replace(/\.txt$/, ''), readFileSync(new URL(name, casesFolder), 'utf8')));
}

export function writeExpected(each: Case, expected: string): void {
  const files = [...each.files].map(([path, text]) => `--- ${path}\n${text}`).join('');
  writeFileSync(new URL(`${each.name}.txt`, casesFolder), `# ${each.about}\n${files}==>\n${expected}`);
}

function parseCase(name: string, text: string): Case {
  const [input, expected] = splitOnce(text, '\n==>\n');
  const [about, rest] = splitOnce(input, '\n');
  const files = new Map<string, string>();
  for (const piece of `\n${rest}`.split('\n--- ').slice(1)) {
    const [path, body] = splitOnce(piece, '\n');
    files.set(path, `${body}\n`);
  }
  const [first] = files.keys();
  if (first === undefined || !about.startsWith('# ')) throw new Error(`${name}: a case begins with what it is about, and has a file`);
  return { name, about: about.slice(2), files, first, expected };
}

function splitOnce(text: string, by: string): readonly [string, string] {
  const at = text.indexOf(by);
  if (at < 0) throw new Error(`${JSON.stringify(by)} is missing`);
  return [text.slice(0, at), text.slice(at + by.length)];
}
