/** An engine that carries some kinds only answers as the whole one does, or refuses by name. */
import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { assess } from '../../src/assess/assess.js';
import type { DuePoint } from '../../src/assess/assessment.js';
import { engineWith } from '../../src/assess/engine-with.js';
import { everyKind } from '../../src/assess/every-kind.js';
import { type KindSetName, kindSets } from '../../src/assess/kind-sets.js';
import type { KindSet } from '../../src/assess/kinds.js';
import { kindsOf } from '../../src/assess/kinds-of.js';
import { calendar } from '../../src/assess/sets/calendar.js';
import { intervals } from '../../src/assess/sets/intervals.js';
import { compile } from '../../src/compile/compile.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';
import { type Entry, entryShape } from '../../src/history/entry.js';
import { readEntries } from '../../src/history/read-entries.js';
import { formatDate } from '../../src/values/civil.js';
import { anyTrial } from '../properties/differential.js';
import { moment } from '../support/history.js';

const now = moment('2026-05-08 07:30');
const sets: readonly KindSet[] = Object.values(kindSets);
const setsOf = (names: readonly KindSetName[]): readonly KindSet[] => names.map((name) => kindSets[name]);

function compiled(tasks: string): RuleGraph {
  const text = `schedule s "S"\nlanguage 1\nmeter engine "Hours" counts h\ngauge coolant "Coolant" reads °C\nevent wash "Washed"\n${tasks}`;
  const { graph, diagnostics } = compile('s.due', () => text);
  if (graph === null) throw new Error(JSON.stringify(diagnostics));
  return graph;
}

describe('the sets', () => {
  const tables = ['triggers', 'conditions', 'axes', 'aspects', 'facts'] as const;
  test.each(tables)('have all %s between them, each of them as the whole engine has it', (table) => {
    const together: object = Object.assign({}, ...sets.map((set) => set[table]));
    expect(Object.keys(together).sort()).toEqual(Object.keys(everyKind[table]).sort());
    for (const set of sets) expect(everyKind[table]).toMatchObject(set[table] ?? {});
  });

  test('read every kind of entry that not every engine reads', () => {
    const read = new Set([...sets.flatMap((set) => set.entries ?? []), 'machine', 'reading', 'done', 'finding']);
    expect([...read].sort()).toEqual([...Object.keys(entryShape.of), 'readings', 'sameId'].sort());
  });

  test('name no two things alike: what a schedule asks for is looked up by name alone', () => {
    const names = tables.flatMap((table) => Object.keys(everyKind[table]));
    expect(names.length).toBe(new Set(names).size);
  });
});

describe('an engine of hours and days', () => {
  const { assess: ask, lacks } = engineWith([intervals, calendar]);
  const simple = compiled('task oil "Change the oil"\n  every 100 h of engine or 12 months, whichever first\n');
  const history: readonly Entry[] = [
    { kind: 'machine', id: 'm', on: '2026-01-01', inService: '2026-01-01' },
    { kind: 'done', id: 'd', on: '2026-02-01', tasks: ['oil'], meters: { engine: 50 } },
    { kind: 'reading', id: 'r', on: '2026-05-01', meters: { engine: 151 } },
  ];

  test('answers what it is made for, byte for byte', () => {
    const answer = ask(simple, history, now);
    expect(JSON.stringify(answer)).toBe(JSON.stringify({ kind: 'assessment', assessment: assess(simple, history, now) }));
    expect(answer).toMatchObject({ assessment: { tasks: [{ task: 'oil', state: 'overdue' }] } });
  });

  test('adds months and takes them away by day and month, days as such', () => {
    const limitOf = (margins: string) => {
      const graph = compiled(`task t "Task"\n  every 6 months\n  ${margins}\n`);
      const answer = ask(graph, [{ kind: 'done', id: 'd', on: '2025-11-30', tasks: ['t'] }], now);
      if (answer.kind === 'refused') throw new Error('refused');
      const limit = answer.assessment.record['t']?.[0]?.limit;
      const day = (point: DuePoint | null | undefined) => (point?.on === 'calendar' ? formatDate(point.day) : '');
      return [limit?.comingUpFrom, limit?.due, limit?.overdueAfter].map(day);
    };
    expect(limitOf('lead 3 months\n  allow 3 months late')).toEqual(['2026-02-28', '2026-05-30', '2026-08-30']);
    expect(limitOf('lead 90 days\n  allow 30 days late')).toEqual(['2026-03-01', '2026-05-30', '2026-06-29']);
  });

  test('refuses a schedule with a rule that it was not given, and says where', () => {
    const graph = compiled('task oil "Change the oil"\n  first at 50 h of engine\n  every 100 h of engine\n');
    expect(ask(graph, history, now)).toMatchObject({
      kind: 'refused',
      lacks: [
        {
          code: 'kind-not-carried',
          kind: 'first',
          origin: { line: 7 },
          entry: null,
          message: 'Line 7 of the schedule asks for `first`, which this engine was not given',
          help: 'Give `engineWith` the sets that `kindsOf` names, or ask `assess`.',
        },
        { kind: 'stages', origin: { line: 7 } },
      ],
    });
  });

  test('refuses it whatever the history is, before there is anything to judge', () => {
    const graph = compiled('task wash-off "Wash"\n  only if coolant above 90 °C\n  on wash\n');
    expect(lacks(graph).map(({ kind }) => kind)).toEqual(['gate', 'compare', 'event']);
    expect(ask(graph, [], now).kind).toBe('refused');
  });

  test('refuses a history with an entry that it cannot read, and names it', () => {
    const voided: Entry = { kind: 'void', id: 'v', on: '2026-05-02', entry: 'r' };
    const noted: Entry = { kind: 'reading', id: 'n', on: '2026-05-02', readings: { coolant: 80 } };
    expect(ask(simple, [...history, voided, noted], now)).toMatchObject({
      kind: 'refused',
      lacks: [
        { kind: 'void', origin: null, entry: 'v', message: 'Entry `v` asks for `void`, which this engine was not given' },
        { kind: 'readings', entry: 'n' },
      ],
    });
  });

  test('reads what every engine reads: machine, readings of meters, what was done, findings', () => {
    const found: Entry = { kind: 'finding', id: 'f', on: '2026-05-02', text: 'Paint is flaking.' };
    expect(ask(simple, [...history, found], now)).toEqual({ kind: 'assessment', assessment: assess(simple, [...history, found], now) });
  });

  test('names each kind once, by the first thing that asks for it', () => {
    const graph = compiled('task a "A"\n  on wash\ntask b "B"\n  on wash\n');
    expect(lacks(graph)).toMatchObject([{ kind: 'event', origin: { line: 7 } }]);
    const voided = (id: string): Entry => ({ kind: 'void', id, on: '2026-05-02', entry: 'r' });
    const noted = (id: string): Entry => ({ kind: 'reading', id, on: '2026-05-02', readings: { coolant: 80 } });
    expect(lacks(simple, [voided('v'), noted('n'), voided('w'), noted('o')])).toMatchObject([
      { kind: 'void', entry: 'v' },
      { kind: 'readings', entry: 'n' },
    ]);
  });

  test('refuses what belongs to an attachment: its meters and its tasks', () => {
    const machine = 'schedule s "S" language 1\nattachment mower "Mower" follows "mower.due"\n';
    const mower = 'schedule m "M" language 1 for attachment\nmeter rotor "Rotor" counts h\ntask belt "Belt" every 50 h of rotor\n';
    const { graph } = compile('s.due', (path) => (path === 's.due' ? machine : mower));
    if (graph === null) throw new Error('it does not compile');
    expect(lacks(graph).map(({ kind, origin }) => [kind, origin?.line])).toEqual([['attachment', 2]]);
  });

  test('refuses kinds that no engine has', () => {
    const hostile = { ...simple, nodes: simple.nodes.map((node) => ({ ...node, kind: 'constructor' })) } as unknown as RuleGraph;
    expect(ask(hostile, history, now)).toMatchObject({ kind: 'refused', lacks: [{ kind: 'constructor' }] });
    const odd = { kind: 'toString', id: 'x', on: '2026-05-02' } as unknown as Entry;
    expect(ask(simple, [odd], now)).toMatchObject({ kind: 'refused', lacks: [{ kind: 'toString', entry: 'x' }] });
  });

  test('refuses logbooks that were put together, in which an id comes twice', () => {
    expect(ask(simple, [...history, ...history], now)).toMatchObject({
      kind: 'refused',
      lacks: [{ kind: 'sameId', entry: 'm', message: 'Entry `m` asks for `sameId`, which this engine was not given' }],
    });
    const merged = engineWith([intervals, calendar, kindSets.mergedLogbooks]).assess(simple, [...history, ...history], now);
    expect(merged).toEqual({ kind: 'assessment', assessment: assess(simple, history, now) });
  });

  test('reports an unknown name, and suggests none', () => {
    const strange: readonly Entry[] = [{ kind: 'done', id: 'd', on: '2026-02-01', tasks: ['oik'] }];
    const whole = assess(simple, strange, now);
    expect(whole.setAside).toEqual([{ entry: 'd', why: 'There is no task `oik` in this schedule; did you mean `oil`?' }]);
    const setAside = [{ entry: 'd', why: 'There is no task `oik` in this schedule' }];
    expect(ask(simple, strange, now)).toEqual({ kind: 'assessment', assessment: { ...whole, setAside } });
    const withNames = engineWith([intervals, calendar, kindSets.suggestions]).assess(simple, strange, now);
    expect(withNames).toEqual({ kind: 'assessment', assessment: whole });
  });
});

describe('the example schedules', () => {
  test.each(['orchard-tractor', 'irrigation-pump', 'wood-chipper'])(
    '%s: its own kinds are enough, and none of them is too many',
    (name) => {
      const { graph } = compile(`${name}.due`, (path) => readFileSync(`schedules/${path}`, 'utf8'));
      if (graph === null) throw new Error('it does not compile');
      const lines = readFileSync(`schedules/${name}.logbook.jsonl`, 'utf8').split('\n').filter(Boolean);
      const { entries } = readEntries(
        lines.map((line, at) => JSON.stringify({ id: `l${at}`, ...(JSON.parse(line) as object) })).join('\n'),
      );
      holds(graph, entries, now);
    },
  );
});

/** The kinds that are named answer as the whole engine does; without any one of them there is no answer. */
function holds(graph: RuleGraph, entries: readonly Entry[], at: typeof now, intent = {}): readonly KindSetName[] {
  const names = kindsOf(graph, entries);
  const answer = engineWith([...setsOf(names), kindSets.suggestions]).assess(graph, entries, at, { intent });
  expect(JSON.stringify(answer)).toBe(JSON.stringify({ kind: 'assessment', assessment: assess(graph, entries, at, { intent }) }));
  for (const name of names) {
    const { kind } = engineWith(setsOf(names.filter((each) => each !== name))).assess(graph, entries, at, { intent });
    expect(kind, `without ${name}`).toBe('refused');
  }
  return names;
}

test('any schedule and any history: the kinds that are named answer as the whole engine does, and with one fewer there is no answer', () => {
  const seen = new Set<KindSetName>();
  fc.assert(
    fc.property(anyTrial, fc.array(fc.nat(20), { maxLength: 3 }), ({ graph, entries, looks }, again) => {
      // Now and then logbooks are put together: an entry stands twice, or otherwise under the same id.
      const twice = again
        .flatMap((index) => entries[index] ?? [])
        .map((entry, index) => (index === 0 ? { ...entry } : { ...entry, by: 'another' }));
      const merged = [...entries, ...twice];
      for (const { now: at, intent } of looks.slice(0, 2)) for (const name of holds(graph, merged, at, intent)) seen.add(name);
    }),
    { numRuns: 60 },
  );
  expect(Object.keys(kindSets).filter((name) => name !== 'suggestions' && !seen.has(name as KindSetName))).toEqual([]);
});
