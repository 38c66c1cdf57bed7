import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { compile } from '../../src/compile/compile.js';
import { holdToSchema } from './compile-files.js';

const folder = new URL('../../schedules/', import.meta.url);
const files = new Map(
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.due'))
    .map((path) => [path, readFileSync(new URL(path, folder), 'utf8')]),
);
const names = [...files.keys()]
  .filter((name) => name.startsWith('published/') || name.startsWith('attachments/') || name === 'irrigation-pump.due')
  .sort();
const pool = [...new Set([...files.values()].flatMap(tokens))].sort();

function tokens(text: string): readonly string[] {
  return text.match(/"[^"]*"|#[^\n]*|[^\s,()"]+|[,()]/g) ?? [];
}

interface Edit {
  readonly at: number;
  readonly how: 'drop' | 'swap' | 'put' | 'repeat' | 'like';
  readonly word: string;
}

const edit = fc.record<Edit>({
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

test(
  'whatever is written, compiling ends with a graph that fits the schema or with an error, and never throws',
  { timeout: 60_000 },
  () => {
    let graphs = 0;
    let errors = 0;
    fc.assert(
      fc.property(fc.constantFrom(...names), fc.array(edit, { minLength: 1, maxLength: 4 }), (name, edits) => {
        const text = edits.reduce(edited, tokens(files.get(name) ?? '')).join('\n');
        const { graph, diagnostics, sources } = compile(name, (path) => (path === name ? text : files.get(path)));
        if (graph === null) errors += 1;
        else graphs += 1;
        if (graph !== null) holdToSchema(graph);
        expect(graph === null).toBe(diagnostics.some(({ severity }) => severity === 'error'));
        for (const { at, message } of diagnostics) {
          expect(at.start <= at.end && at.end <= (sources[at.file]?.text.length ?? 0), message).toBe(true);
          expect(message).not.toMatch(/[\n]/);
        }
      }),
      { numRuns: 400 },
    );
    // Both ways have to be tried for this to say anything.
    expect(Math.min(graphs, errors) / (graphs + errors)).toBeGreaterThan(0.0125);
  },
);
