/**
 * Schedules that stand in schedules/, with some of their words changed.
 */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';

const folder = new URL('../../schedules/', import.meta.url);
/** The published and the invented schedules, by path. */
export const files: ReadonlyMap<string, string> = new Map(
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.due'))
    .map((path) => [path, readFileSync(new URL(path, folder), 'utf8')]),
);
/** Those that are bent: the short ones. */
export const names = [...files.keys()]
  .filter((name) => name.startsWith('published/') || name.startsWith('attachments/') || name === 'irrigation-pump.due')
  .sort();
const pool = [...new Set([...files.values()].flatMap(tokens))].sort();

function tokens(text: string): readonly string[] {
  return text.match(/"[^"]*"|#[^\n]*|[^\s,()"]+|[,()]/g) ?? [];
}

/** One change of a text. */
export interface Edit {
  readonly at: number;
  readonly how: 'drop' | 'swap' | 'put' | 'repeat' | 'like';
  readonly word: string;
}

/** Any change. */
export const edit = fc.record<Edit>({
  at: fc.nat(100_000),
  how: fc.constantFrom<Edit['how'][]>('like', 'like', 'like', 'like', 'like', 'like', 'drop', 'swap', 'put', 'repeat'),
  word: fc.constantFrom(...pool, '0', '-1', '0.5', '1e9', '99999999999', '31', 'work', 'low'),
});

/** Words that can stand in each other's place for the grammar, more often than not. */
function shape(word: string): string {
  if (/^-?[\d.]+$/.test(word)) return 'number';
  if (/^"/.test(word)) return 'text';
  return /^[a-z][a-z0-9]*(-[a-z0-9]+)+$/.test(word) ? 'name' : word.length < 4 ? 'short' : 'word';
}

const alike = new Map<string, readonly string[]>(
  [...pool, '0', '-1', '0.5', '99999999999', '31'].reduce(
    (map, word) => map.set(shape(word), [...(map.get(shape(word)) ?? []), word]),
    new Map<string, string[]>(),
  ),
);

function edited(words: readonly string[], { at, how, word }: Edit): readonly string[] {
  const place = at % Math.max(1, words.length);
  const [before, here, after] = [words.slice(0, place), words[place] ?? '', words.slice(place + 1)];
  switch (how) {
    case 'drop':
      return [...before, ...after];
    case 'like': {
      const others = alike.get(shape(here)) ?? [word];
      return [...before, others[at % others.length] ?? word, ...after];
    }
    case 'put':
      return [...before, word, ...after];
    case 'repeat':
      return [...before, here, here, ...after];
    case 'swap':
      return [...before, after[0] ?? '', here, ...after.slice(1)];
  }
}

/** A text with its words changed, each on a line of its own. */
export function bent(text: string, edits: readonly Edit[]): string {
  return edits.reduce(edited, tokens(text)).join('\n');
}
