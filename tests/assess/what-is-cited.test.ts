/** What a record cites besides what it goes by: histories in which something came and went more than once, or did not count. */
import { describe, expect, test } from 'vitest';
import type { Observation } from '../../src/assess/assessment.js';
import { citedBy } from '../../src/assess/cited-by.js';
import { withEnds } from '../../src/assess/ended-spells.js';
import { indexGraph } from '../../src/assess/graph-index.js';
import type { World } from '../../src/assess/world.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';
import type { Entry } from '../../src/history/entry.js';
import { readTimeline } from '../../src/history/read-timeline.js';
import { compileText } from '../support/compile-text.js';
import { moment } from '../support/history.js';

const graph = compileText(`
meter engine "Hours" counts h
meter shaft "Turns" counts h
dipstick oil "Oil" low to full is 2 L
attachment mower "Mower"
attachment forks "Forks"
defect seep "Seep" classes wetness, drops
  drops hold "Do not work." then patch now
task by-engine "By the engine" every 100 h of engine
task by-shaft "By the shaft" every 100 h of shaft
task by-mower "After attaching" after attaching mower
task is-on "While it is on" when mower is on
task by-seep "While it seeps" when seep is open
task patch "Patch it" mends seep
task ahead "Before storage" before storage
task behind "After storage" after storage
task kept-out "Not in storage" every 20 days, not counting storage
task ahead-of-work "Before work" before each day's work
task sooner-oil "Sooner" sooner at half the time that oil takes to fall to low
`);

/** The first node of a kind, of those about a meter if one is told. */
function nodeOf(kind: string, about = ''): number {
  const found = graph.nodes.find((node) => node.kind === kind && JSON.stringify(node).includes(about));
  if (found === undefined) throw new Error(`no ${kind} about ${about}`);
  return found.id;
}

function worldOf(entries: readonly Entry[], of: RuleGraph = graph): World {
  const timeline = readTimeline(entries, of, moment('2026-06-30'));
  return { index: indexGraph(of), timeline } as unknown as World;
}

const seen = (node: number, ...entries: readonly string[]): Observation => ({ node, state: 'clear', entries });
const engine = nodeOf('interval', '"engine"');
const shaft = nodeOf('interval', '"shaft"');

describe('what keeps a cited reading from counting', () => {
  const reading = (id: string, on: string, meters: Record<string, number>): Entry => ({ kind: 'reading', id, on, meters });
  const world = worldOf([
    reading('a', '2026-05-01', { engine: 100, shaft: 40 }),
    reading('b', '2026-05-03', { engine: 90 }),
    reading('c', '2026-05-04', { shaft: 30 }),
    reading('d', '2026-05-05', { engine: 101 }),
  ]);
  const cited = (...record: readonly Observation[]): readonly string[] => [...citedBy(world, record)].sort();

  test('is cited with it where the rules speak of its meter', () => {
    expect(cited(seen(engine, 'd'))).toEqual(['d']);
    expect(cited(seen(engine, 'b'))).toEqual(['a', 'b']);
    expect(cited(seen(shaft, 'b'))).toEqual(['b']);
    expect(cited(seen(shaft, 'b'), seen(engine))).toEqual(['a', 'b']);
    expect(cited(seen(shaft, 'b', 'c'))).toEqual(['a', 'b', 'c']);
    expect(cited(seen(engine, 'b', 'd'), seen(shaft))).toEqual(['a', 'b', 'd']);
  });

  test('is cited with it where a level falls, which goes by hours of no meter in particular', () => {
    expect(cited(seen(nodeOf('sooner'), 'c'))).toEqual(['a', 'c']);
    expect(cited(seen(nodeOf('occasion', '"before"'), 'c'))).toEqual(['c']);
    expect(cited(seen(nodeOf('occasion', '"before"'), 'c'), seen(nodeOf('sooner')))).toEqual(['a', 'c']);
  });
});

describe('the end of an earlier spell', () => {
  const day = (index: number): string => `2026-05-${String(index).padStart(2, '0')}`;
  const worn = (...ids: readonly string[]): readonly Entry[] =>
    ids.map((id, index) => ({ kind: id.startsWith('on') ? 'attached' : 'detached', id, on: day(index + 1), attachment: 'mower' }));
  const stored = (...ids: readonly string[]): readonly Entry[] =>
    ids.map((id, index) => ({ kind: 'storage', id, on: day(index + 1), phase: id.startsWith('in') ? 'begins' : 'ends' }));
  /** What the first observation of a record cites in the end. */
  const ends = (entries: readonly Entry[], node: number, own: readonly string[], besides: readonly string[] = []): readonly string[] =>
    withEnds(worldOf(entries), [seen(node, ...own), seen(engine, ...besides)])[0]?.entries ?? [];

  describe.each([['attaching'], ['attachment-is']])('of an attachment, for %s', (kind) => {
    const node = nodeOf(kind);
    const twice = worn('on1', 'off1', 'on2');

    test('is cited where its beginning is cited for something else', () => {
      expect(ends(twice, node, ['on2'])).toEqual(['on2']);
      expect(ends(twice, node, ['on2'], ['on1'])).toEqual(['on2', 'off1']);
      expect(ends(twice, node, ['on2', 'on1'])).toEqual(['on2', 'on1', 'off1']);
      expect(ends(twice, engine, ['on2', 'on1'])).toEqual(['on2', 'on1']);
    });

    test('is not cited again, nor of one that what is cited ended too, nor of the last', () => {
      expect(ends(twice, node, ['on2'], ['on1', 'off1'])).toEqual(['on2']);
      const thrice = worn('on1', 'off1', 'on2', 'off2', 'on3', 'off3');
      expect(ends(thrice, node, ['on3'], ['on1', 'on2'])).toEqual(['on3', 'off2']);
      expect(ends(thrice, node, ['on3'], ['on1'])).toEqual(['on3', 'off1']);
      expect(ends(thrice, node, ['on3'], ['on1', 'off2'])).toEqual(['on3']);
      expect(ends(thrice, node, ['on3'], ['on2', 'off1'])).toEqual(['on3', 'off2']);
      // What ended the last ended none before it.
      expect(ends(thrice, node, ['on3', 'off3'], ['on1'])).toEqual(['on3', 'off3', 'off1']);
    });

    test('on the day on which the one before ended may have come after that', () => {
      const [on1, off1, on2, off2, on3] = worn('on1', 'off1', 'on2', 'off2', 'on3').map((entry) =>
        entry.id === 'on2' ? { ...entry, on: day(2) } : entry,
      );
      const spells = [on1, off1, on2, off2, on3].flatMap((entry) => entry ?? []);
      expect(ends(spells, node, ['on3'], ['on2', 'off1'])).toEqual(['on3', 'off2']);
    });

    test('on the day on which the last began is not known to be before it', () => {
      const sameDay = worn('on1', 'off1', 'on2').map((entry, index) => (index === 2 ? { ...entry, on: day(2) } : entry));
      expect(ends(sameDay, node, ['on2'], ['on1', 'off1'])).toEqual(['on2', 'off1']);
    });
  });

  test('of storage is cited for what comes after it, and where none is now for what comes before', () => {
    const once = stored('in1', 'out1');
    expect(ends(once, nodeOf('occasion', '"before"'), [], ['in1'])).toEqual(['out1']);
    expect(ends(once, nodeOf('occasion', '"after"'), [], ['in1'])).toEqual([]);
    const again = stored('in1', 'out1', 'in2');
    expect(ends(again, nodeOf('occasion', '"before"'), ['in2'], ['in1'])).toEqual(['in2', 'out1']);
    expect(ends(again, nodeOf('occasion', '"after"'), ['in2'], ['in1'])).toEqual(['in2', 'out1']);
  });

  test('of storage is cited for nothing that has to do with work', () => {
    const before = graph.nodes.find((node) => node.kind === 'occasion' && node.of === 'day')?.id ?? -1;
    expect(ends(stored('in1', 'out1', 'in2'), before, [], ['in1', 'in2'])).toEqual([]);
  });

  test('of storage on the day on which it began again is not known to be before it', () => {
    const again = stored('in1', 'out1', 'in2').map((entry, index) => (index === 2 ? { ...entry, on: day(2) } : entry));
    expect(ends(again, nodeOf('occasion', '"before"'), ['in2'], ['in1', 'out1'])).toEqual(['in2', 'out1']);
  });

  test('of storage that does not count is cited for each whose beginning is, the last one too', () => {
    const limit = nodeOf('interval', '"standstill"');
    const twice = stored('in1', 'out1', 'in2', 'out2');
    expect(ends(twice, limit, ['x'], ['in1', 'in2'])).toEqual(['x', 'out1', 'out2']);
    expect(ends(twice, limit, ['x'], ['in2'])).toEqual(['x', 'out2']);
    expect(ends(twice, limit, ['x'])).toEqual(['x']);
    expect(ends(twice, engine, ['x'], ['in1', 'in2'])).toEqual(['x']);
    expect(ends(stored('in1'), limit, ['x'], ['in1'])).toEqual(['x']);
  });

  describe.each([['defect-is'], ['asked']])('of a defect, for %s', (kind) => {
    const node = nodeOf(kind, '"seep"');
    const opened = (id: string, on: string): Entry => ({ kind: 'defect-opened', id, on, defect: 'seep' });
    const closed = (id: string, on: string): Entry => ({ kind: 'defect-closed', id, on, defect: 'seep' });
    const patched = (id: string, on: string): Entry => ({ kind: 'done', id, on, tasks: ['patch'] });
    const twice = [opened('o1', day(1)), closed('c1', day(2)), opened('o2', day(5))];

    test('is cited where its beginning is', () => {
      expect(ends(twice, node, ['o2'])).toEqual(['o2']);
      expect(ends(twice, node, ['o2'], ['o1'])).toEqual(['o2', 'c1']);
    });

    test('is not needed where a mending between is cited, needed where that came before or after', () => {
      const mended = (on: string): readonly Entry[] => [...twice, patched('p', on)];
      expect(ends(mended(day(4)), node, ['o2'], ['o1', 'p'])).toEqual(['o2']);
      expect(ends(mended(day(4)), node, ['o2'], ['o1'])).toEqual(['o2', 'c1']);
      const early = [patched('p', day(1)), opened('o1', day(2)), closed('c1', day(3)), opened('o2', day(5))];
      expect(ends(early, node, ['o2'], ['o1', 'p'])).toEqual(['o2', 'c1']);
    });

    test('is cited where what told its class is', () => {
      const told: Entry = { kind: 'defect-opened', id: 'w1', on: day(2), defect: 'seep', class: 'wetness' };
      const entries = [opened('o1', day(1)), told, closed('c1', day(3)), opened('o2', day(5))];
      expect(ends(entries, node, ['o2'], ['w1'])).toEqual(['o2', 'c1']);
    });
  });
});
