import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { memoryLogbook } from '../../../src/adapters/logbook/memory-logbook.js';
import { mergeLogbooks } from '../../../src/adapters/logbook/merge-logbooks.js';
import { canonicalJson } from '../../../src/history/canonical-json.js';
import type { Entry } from '../../../src/history/entry.js';
import { steadyChance } from './support/fixtures.js';

const entries: fc.Arbitrary<Entry[]> = fc.uniqueArray(
  fc.record({
    kind: fc.constant('reading' as const),
    on: fc.constant('2026-05-12'),
    id: fc.constantFrom('a', 'b', 'c', 'd', 'e'),
    note: fc.constantFrom('x', 'y', 'z'),
  }),
  { selector: (entry) => entry.id },
);
const contents = (list: readonly Entry[]): string[] => list.map((entry) => canonicalJson({ ...entry, id: entry.id.slice(0, 1) })).sort();

describe('merging two copies', () => {
  it('loses nothing: the content of every entry of either copy is in the result', () => {
    fc.assert(
      fc.property(entries, entries, (ours, theirs) => {
        const merge = mergeLogbooks(ours, theirs);
        expect(new Set(contents(merge.entries))).toEqual(new Set([...contents(ours), ...contents(theirs)]));
        expect(new Set(merge.entries.map((entry) => entry.id)).size).toBe(merge.entries.length);
        expect([...ours, ...merge.toAppend]).toEqual(merge.entries);
      }),
    );
  });

  it('is the same facts either way round, and adds nothing the second time', () => {
    fc.assert(
      fc.property(entries, entries, (ours, theirs) => {
        const merge = mergeLogbooks(ours, theirs);
        expect(contents(mergeLogbooks(theirs, ours).entries)).toEqual(contents(merge.entries));
        expect(mergeLogbooks(merge.entries, theirs).toAppend).toEqual([]);
        expect(mergeLogbooks(merge.entries, ours).toAppend).toEqual([]);
      }),
    );
  });

  it('reports a conflict, and the void that might mean either', () => {
    const a: Entry = { kind: 'reading', on: '2026-05-12', id: 'a', meters: { engine: 1300 } };
    const voids: Entry = { kind: 'void', on: '2026-05-13', id: 'v', entry: 'a' };
    const merge = mergeLogbooks([a, voids], [{ ...a, meters: { engine: 1030 } }]);
    expect(merge.conflicts).toMatchObject([{ id: 'a', first: { meters: { engine: 1300 } }, second: { meters: { engine: 1030 } } }]);
    expect(merge.uncertain).toEqual([voids]);
  });

  it('is appended to the first copy, whose chain goes on', async () => {
    const ours = memoryLogbook(steadyChance());
    await ours.append([{ kind: 'reading', on: '2026-05-12', meters: { engine: 1300 } }]);
    const theirs = memoryLogbook(steadyChance(5), ours.text());
    await theirs.append([{ kind: 'refuelled', on: '2026-05-13', litres: 40 }]);
    await ours.append([{ kind: 'event', on: '2026-05-14', event: 'wheel-refit' }]);
    await ours.append(mergeLogbooks((await ours.read()).entries, (await theirs.read()).entries).toAppend);
    const read = await ours.read();
    expect(read.problems).toEqual([]);
    expect(read.entries.map((entry) => entry.kind)).toEqual(['reading', 'event', 'refuelled']);
  });
});
