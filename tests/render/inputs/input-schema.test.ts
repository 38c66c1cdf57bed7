import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Entry } from '../../../src/history/entry.js';
import { readEntries } from '../../../src/history/read-entries.js';
import { readTimeline } from '../../../src/history/read-timeline.js';
import { validateEntry } from '../../../src/history/validate-entry.js';
import { inputSchema } from '../../../src/render/inputs/input-schema.js';
import { scheduleGraph } from '../../access/schedule-graph.js';
import { compileText } from '../../support/compile-text.js';
import { moment } from '../../support/history.js';

const ajv = new Ajv2020({ strict: true, allErrors: false });
const far = moment('2079-01-01');

const small = compileText(`
meter engine "Hours" counts h
meter mowing "Hours of mowing" counts h from outings
gauge coolant "Coolant" reads °C
dipstick oil "Oil" low to full is 1 L
duty dusty "Dust"
supply grease "Grease" in kg
defect leak "Leak"
  classes wet "Wet", drops "Drops"
defect squeak "It squeaks"
  classes faint "Faint", loud "Loud"
task look "Look"
  every 10 h of engine
`);

describe('what the schema of one schedule accepts', () => {
  const validate = ajv.compile(inputSchema(small));
  const common = { id: 'e', on: '2026-05-13' };

  test.each<readonly [string, object]>([
    ['a reading', { kind: 'reading', meters: { engine: 4 }, readings: { coolant: 80, oil: 'low' } }],
    ['work', { kind: 'done', tasks: ['look'], used: { grease: 0.2 }, minutes: 4 }],
    ['an outing', { kind: 'outing', hours: 2, duties: [{ duty: 'dusty', hours: 1 }] }],
    ['a defect with a class of its own', { kind: 'defect-opened', defect: 'squeak', class: 'loud' }],
    ['a defect without its class', { kind: 'defect-opened', defect: 'leak' }],
    ['a statement about a meter that nobody reads', { kind: 'stated', task: 'look', doneAt: { mowing: 3 } }],
    ['a void', { kind: 'void', entry: 'd' }],
  ])('%s', (_name, entry) => {
    expect(validate({ ...common, ...entry }), JSON.stringify(validate.errors?.[0])).toBe(true);
    expect(validateEntry({ ...common, ...entry }).kind).toBe('entry');
  });

  test.each<readonly [string, object]>([
    ['a meter that is not there', { kind: 'reading', meters: { enigne: 4 } }],
    ['a meter that counts from outings', { kind: 'reading', meters: { mowing: 4 } }],
    ['a mark of a dipstick for a gauge', { kind: 'reading', readings: { coolant: 'low' } }],
    ['a task that is not there', { kind: 'done', tasks: ['look', 'loook'] }],
    ['no task at all', { kind: 'done', tasks: [] }],
    ['a supply that is not there', { kind: 'done', tasks: ['look'], used: { oil: 1 } }],
    ['a duty that is not there', { kind: 'outing', duties: [{ duty: 'dust' }] }],
    ["another defect's class", { kind: 'defect-opened', defect: 'squeak', class: 'drops' }],
    ['a kind of thing of which there is none', { kind: 'event', event: 'look' }],
    ['an attachment, of which there is none', { kind: 'attached', attachment: 'mower' }],
    ['a part that does not move', { kind: 'stands', positions: { bonnet: 'open' } }],
    ['a day that does not exist', { kind: 'reading', on: '2026-02-30' }],
    ['a finding about a task that is not there', { kind: 'finding', task: 'loook', text: 'wet' }],
  ])('refuses %s', (_name, entry) => {
    expect(validate({ ...common, ...entry })).toBe(false);
  });
});

/** The logbooks of the examples, as their schedules read them. */
const logged = ['orchard-tractor', 'irrigation-pump', 'wood-chipper'].map((name) => {
  const lines = readFileSync(new URL(`../../../schedules/${name}.logbook.jsonl`, import.meta.url), 'utf8');
  return { name, graph: scheduleGraph(`${name}.due`), entries: readEntries(lines).entries };
});

describe.each(logged)('$name', ({ graph, entries }) => {
  const validate = ajv.compile(inputSchema(graph));
  const strays = (entry: Entry): readonly string[] => {
    const about = (what: string): boolean => !/ends before it begins|no entry/.test(what);
    return readTimeline([entry], graph, far)
      .strays.map(({ what }) => what)
      .filter(about);
  };

  test('its logbook: accepted is what leaves no stray name, entry by entry', () => {
    expect(entries.length).toBeGreaterThan(100);
    for (const entry of entries) expect(validate(entry), JSON.stringify([entry, validate.errors?.[0]])).toBe(strays(entry).length === 0);
  });

  test('a name that is changed is refused where it becomes a stray, and nowhere else', () => {
    const changed = fc.record({ entry: fc.constantFrom(...entries), pick: fc.nat(), letter: fc.constantFrom('q', '-x') });
    fc.assert(
      fc.property(changed, ({ entry, pick, letter }) => {
        const read = validateEntry(respell(entry, pick, letter));
        if (read.kind === 'entry') expect(validate(read.entry), JSON.stringify(read.entry)).toBe(strays(read.entry).length === 0);
      }),
      { numRuns: 300 },
    );
  });
});

/** The entry with one of the names in it spelled otherwise. */
function respell(entry: Entry, pick: number, letter: string): unknown {
  const text = JSON.stringify(entry);
  const names = [...text.matchAll(/"[a-z][a-z.-]*"/g)].filter(({ index }) => text[index - 1] !== '{' || index > 1);
  const chosen = names[pick % names.length];
  if (chosen === undefined) return entry;
  const end = chosen.index + chosen[0].length - 1;
  return JSON.parse(text.slice(0, end) + letter + text.slice(end));
}
