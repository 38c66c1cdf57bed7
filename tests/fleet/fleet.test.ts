import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { assess } from '../../src/assess/assess.js';
import { Fleet } from '../../src/fleet/fleet.js';
import { type FleetStates, STATES, VERDICTS } from '../../src/fleet/fleet-states.js';
import { LINE_CODES } from '../../src/fleet/line-problem.js';
import { entriesOfLine, type MachineLine } from '../../src/fleet/machine-line.js';
import { planColumns } from '../../src/fleet/plan-columns.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';
import { formatDate } from '../../src/values/civil.js';
import { type Day, onDay } from '../../src/values/moment.js';
import { scheduleText } from '../properties/random-schedule.js';
import { compiled } from '../properties/situation.js';
import { compileText } from '../support/compile-text.js';
import { moment } from '../support/history.js';
import { intervalSchedule, machineLine, START } from './random-fleet.js';

/** What a fleet says of one machine, in the words of an assessment. */
function said(fleet: Fleet, answer: FleetStates, machine: number): unknown {
  return {
    verdict: VERDICTS[answer.verdict[machine] ?? 0],
    tasks: fleet.plan.tasks.map(({ id, index }) => {
      const at = index * answer.stride + machine;
      const [left, governing] = [answer.left[at] ?? Number.NaN, answer.governing[at] ?? -1];
      return {
        task: id,
        state: STATES[answer.state[at] ?? 0],
        left: Number.isNaN(left) ? null : left,
        governing: governing < 0 ? null : governing,
      };
    }),
  };
}

/** The same of the ordinary assessor. */
function assessed(graph: RuleGraph, line: MachineLine, today: Day): unknown {
  const { verdict, tasks } = assess(graph, entriesOfLine(line), onDay(today));
  return { verdict, tasks: tasks.map(({ task, state, left, governing }) => ({ task, state, left, governing })) };
}

function compare(graph: RuleGraph, lines: readonly MachineLine[], today: Day): Fleet {
  const fleet = new Fleet(planColumns(graph), lines.length);
  for (const line of lines) expect(fleet.add(JSON.stringify(line))).toMatchObject({ ok: true });
  const answer = fleet.assess(today);
  lines.forEach((line, machine) => expect(said(fleet, answer, machine)).toEqual(assessed(graph, line, today)));
  return fleet;
}

const today = fc.integer({ min: START + 150, max: START + 420 }).map((each) => each as Day);
const parameters = { numRuns: 300 };

describe('a fleet', () => {
  test('says of interval rules what the ordinary assessor says, and needs it for none of them', () => {
    fc.assert(
      fc.property(intervalSchedule, fc.array(machineLine, { minLength: 1, maxLength: 8 }), today, ({ graph }, lines, now) => {
        const { plan } = compare(graph, lines, now);
        expect(plan.outside).toEqual([]);
      }),
      parameters,
    );
  });

  test('says the same of any schedule, with the ordinary assessor for what no column holds', () => {
    const anyGraph = scheduleText.map((text) => compiled(text)).filter((graph) => graph !== null);
    fc.assert(
      fc.property(anyGraph, fc.array(machineLine, { minLength: 1, maxLength: 3 }), today, (graph, lines, now) => {
        compare(graph, lines, now);
      }),
      { numRuns: 120 },
    );
  });

  test.each([
    'every 100 h of engine',
    'every more than 100 h of engine',
    'every more than 30 days',
    'every 100 h of engine allow 5 h late hold when overdue "Stop."',
    'every more than 100 h of engine or 30 days, whichever first',
    'every 30 days or more than 100 h of engine, whichever first',
    'every more than 30 days or 100 h of engine, whichever first',
  ])('of `%s` says the same at the due point, just before it and just after', (rule) => {
    const graph = compileText(`meter engine "Hour meter" counts h\ntask alpha "Alpha" ${rule}`);
    const dayText = (n: number): string => formatDate((START + n) as Day);
    // Read today and the day before, so that one limit is reached before, with or after the other.
    const lines = [99.9, 100, 100.1, 105, 105.1].flatMap((run) =>
      [169, 170, 171].flatMap((done) =>
        [199, 200].map((read): MachineLine => ({
          machine: `m-${run}-${done}-${read}`,
          on: dayText(read),
          meters: { engine: 1000 + run },
          done: { alpha: { on: dayText(done), meters: { engine: 1000 } } },
        })),
      ),
    );
    expect(compare(graph, lines, (START + 200) as Day).plan.outside).toEqual([]);
  });

  test('answers again on another day in the same columns', () => {
    fc.assert(
      fc.property(intervalSchedule, fc.array(machineLine, { minLength: 1, maxLength: 4 }), today, today, ({ graph }, lines, one, other) => {
        const fleet = new Fleet(planColumns(graph), lines.length);
        for (const line of lines) fleet.add(JSON.stringify(line));
        const answer = fleet.assess(other, fleet.assess(one));
        lines.forEach((line, machine) => expect(said(fleet, answer, machine)).toEqual(assessed(graph, line, other)));
      }),
      { numRuns: 50 },
    );
  });

  test('gives the history of a machine back as its line told it', () => {
    fc.assert(
      fc.property(intervalSchedule, machineLine, today, ({ graph }, line, now) => {
        const fleet = new Fleet(planColumns(graph), 1);
        fleet.add(JSON.stringify(line));
        expect(fleet.assessmentOf(0, now).tasks).toEqual(assess(graph, entriesOfLine(line), onDay(now)).tasks);
      }),
      { numRuns: 50 },
    );
  });
});

const tractor = `meter engine "Hour meter" counts h
attachment mower "Mower"
duty dusty "Dust"
gauge coolant "Coolant" reads °C normal 75 to 90 high above 97
task oil "Change the oil" every 100 h of engine or 12 months, whichever first
task look "Look" before each day's work
task belt "Belt" every 50 h of engine in dusty every 20 h of engine
task hot "Radiator" when coolant above normal
task beat "Beat" every 50 h of engine count from due if late
`;

describe('a plan', () => {
  test('names what no column holds by the words of the schedule', () => {
    const plan = planColumns(compileText(tractor));
    expect(plan.tasks.map(({ id, outside }) => [id, outside])).toMatchInlineSnapshot(`
      [
        [
          "oil",
          null,
        ],
        [
          "look",
          "before each day's work",
        ],
        [
          "belt",
          "50 h of engine",
        ],
        [
          "hot",
          "when coolant above normal",
        ],
        [
          "beat",
          "50 h of engine",
        ],
      ]
    `);
  });
});

test('every code of a line is explained in docs/fleets.md', () => {
  const page = readFileSync('docs/fleets.md', 'utf8');
  expect(LINE_CODES.filter((code) => !page.includes(`| \`${code}\` |`))).toEqual([]);
});

describe('a line', () => {
  const fleetOf = (capacity = 3): Fleet => new Fleet(planColumns(compileText(tractor)), capacity);

  test('may be written with spaces, escapes and in any order', () => {
    const fleet = fleetOf();
    const text =
      '{ "done": {"oil": {"meters": {"engine": 1200.05}, "on": "2026-03-02"}}, "on": "2026-05-11", "meters" : {"engine":1.3e3}, "machine": "the \\"old\\" one" }';
    expect(fleet.add(text)).toEqual({ ok: true, machine: 0, strays: [] });
    expect(fleet.nameOf(0)).toBe('the "old" one');
    expect(fleet.entriesOf(0)).toMatchObject([
      { on: '2026-03-02' },
      { meters: { engine: 1300 } },
      { id: 'done:oil', meters: { engine: 1200.05 } },
    ]);
  });

  test('with names that the schedule does not have is taken in, and they are told', () => {
    expect(fleetOf().add('{"machine":"a","on":"2026-05-11","meters":{"engin":5},"done":{"oill":{"on":"2026-01-01"}}}')).toEqual({
      ok: true,
      machine: 0,
      strays: [
        'There is no meter `engin` in this schedule that is read; was `engine` meant?',
        'There is no task `oill` in this schedule; was `oil` meant?',
      ],
    });
  });

  test.each([
    ['', 'not-an-object', 'it is not one JSON object'],
    ['[1]', 'not-an-object', 'it is not one JSON object'],
    ['{"machine":"a"', 'not-an-object', 'it is not one JSON object'],
    ['{"on":"2026-01-01"}', 'no-name', '`machine` is not a name of 1 to 200 characters'],
    ['{"machine":"a","hours":5}', 'unknown-member', 'there is no member `hours`'],
    ['{"machine":"a","on":"2026-01-01","entries":[]}', 'unknown-member', 'beside `entries` nothing but `machine` can stand'],
    ['{"machine":"a","meters":{"engine":5}}', 'no-day', '`on`, the day on which the meters were read, is missing'],
    ['{"machine":"a","on":"2026-02-30","meters":{"engine":5}}', 'wrong-value', '`on` should be a day that exists, as YYYY-MM-DD'],
    ['{"machine":"a","inService":"06.04.2021"}', 'wrong-value', '`inService` should be a day that exists, as YYYY-MM-DD'],
    ['{"machine":"a","done":{"oil":{"on":"2026-13-01"}}}', 'wrong-value', '`done.oil.on` should be a day that exists, as YYYY-MM-DD'],
    ['{"machine":"a","done":{"oil":{}}}', 'wrong-value', '`done.oil.on` should be a day that exists, as YYYY-MM-DD'],
    ['{"machine":"a","on":"2026-02-03","meters":{"engine":-5}}', 'wrong-value', '`meters.engine` should be at least 0'],
    ['{"machine":"a","on":"2026-02-03","meters":{"engine":"5"}}', 'wrong-value', '`meters.engine` should be a number'],
    [
      '{"machine":"a","done":{"oil":{"on":"2026-01-01","meters":{"engine":"5"}}}}',
      'wrong-value',
      '`done.oil.meters.engine` should be a number',
    ],
    ['{"machine":"a","on":5}', 'wrong-value', '`on` should be a day that exists, as YYYY-MM-DD'],
    ['{"machine":"a","done":{"oil":"2026-01-01"}}', 'wrong-value', '`done.oil` is not an object with `on` and perhaps `meters`'],
    ['{"machine":"a","entries":[{"kind":"reading"}]}', 'wrong-value', '`entries.0` is no entry: `id` should be missing: a string'],
  ])('%s is refused', (text, code, problem) => {
    const fleet = fleetOf();
    const added = fleet.add(text);
    expect(added).toMatchObject({ ok: false, code, problem });
    expect(added.ok ? '' : added.help).toMatch(/^[A-Z].*\.$|\}\.$/);
    expect(fleet.count).toBe(0);
  });

  describe('that says what model it is', () => {
    const fitted = `schedule tarn "Tarn" language 1 edition 1 of 2026-01-01 by "A"
fits model "Tarn 55" serial 1200 to 1300 fits model "Tarn 60" serial 9000 to 9100
meter engine "Hour meter" counts h
task oil "Oil" every 100 h of engine`;
    const graph = compiled(fitted);
    const fleetOf55 = (): Fleet => new Fleet(planColumns(graph as RuleGraph), 2);

    test('is judged if the schedule fits it, and keeps it in its history', () => {
      const fleet = fleetOf55();
      expect(fleet.add('{"machine":"a","model":"Tarn 55","serial":1250}')).toMatchObject({ ok: true });
      expect(fleet.add('{"machine":"b", "\\u006dodel":"Tarn 60"}')).toMatchObject({ ok: true });
      expect([0, 1].map((machine) => fleet.entriesOf(machine)[0])).toMatchObject([{ model: 'Tarn 55' }, { model: 'Tarn 60' }]);
      expect(fleet.misfitOf(0)).toBeNull();
    });

    test('is refused if it is another', () => {
      const fleet = fleetOf55();
      const problem = 'it is a `Bison 9`, and this schedule fits `Tarn 55`, `Tarn 60`';
      expect(fleet.add('{"machine":"a","model":"Bison 9"}')).toMatchObject({ ok: false, code: 'other-model', problem });
      expect(fleet.count).toBe(0);
      expect(new Fleet(planColumns(compileText(tractor)), 1).add('{"machine":"a","model":"any"}')).toMatchObject({ ok: false });
    });

    test('is told of if its serial number is none that the schedule fits', () => {
      const fleet = fleetOf55();
      fleet.add('{"machine":"a","serial":1301}');
      expect(fleet.misfitOf(0)?.what).toBe('its serial number 1301 is none of those that this schedule fits: 1200 to 1300, 9000 to 9100');
    });
  });

  test('that was refused leaves nothing behind', () => {
    const fleet = fleetOf();
    fleet.add('{"machine":"a","on":"2026-02-03","meters":{"engine":5},"done":{"oil":{"on":"2026-01-01","meters":{"engine":1}}},"odd":1}');
    fleet.add('{"machine":"b"}');
    expect(fleet.entriesOf(0)).toEqual([{ kind: 'machine', id: 'machine', on: '0001-01-01' }]);
  });

  test('may bring a whole logbook instead', () => {
    const graph = compileText(tractor);
    const entries = [
      { kind: 'reading', id: 'r', on: '2026-05-11', meters: { engine: 1300 }, readings: { coolant: 95 } },
      { kind: 'done', id: 'd', on: '2026-03-02', tasks: ['oil'], meters: { engine: 1200 } },
    ];
    const fleet = new Fleet(planColumns(graph), 1);
    expect(fleet.add(JSON.stringify({ machine: 'a', entries }))).toMatchObject({ ok: true });
    const { day } = moment('2026-05-12');
    const { verdict, tasks } = assess(graph, entries as never, onDay(day));
    expect(said(fleet, fleet.assess(day), 0)).toEqual({
      verdict,
      tasks: tasks.map(({ task, state, left, governing }) => ({ task, state, left, governing })),
    });
    expect(tasks.find(({ task }) => task === 'hot')?.state).toBe('due');
  });

  test('that repeats a doing counts as JSON has it: the last one', () => {
    const fleet = fleetOf();
    fleet.add('{"machine":"a","done":{"oil":{"on":"2026-01-01","meters":{"engine":1}},"oil":{"on":"2026-01-02"}}}');
    expect(fleet.entriesOf(0).at(-1)).toEqual({ kind: 'done', id: 'done:oil', on: '2026-01-02', tasks: ['oil'], meters: {} });
  });

  test('beyond the capacity is refused', () => {
    const fleet = fleetOf(1);
    fleet.add('{"machine":"a"}');
    expect(fleet.add('{"machine":"b"}')).toMatchObject({ ok: false, code: 'no-room', problem: 'there is room for 1 machines' });
  });

  test('is read to the same bits as JSON.parse reads it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 99_999_999 }), fc.integer({ min: 0, max: 7 }), (digits, places) => {
        const fleet = fleetOf();
        const number = (digits / 10 ** places).toFixed(places);
        fleet.add(`{"machine":"a","on":"2026-02-03","meters":{"engine":${number}}}`);
        expect(fleet.entriesOf(0)[1]).toMatchObject({ meters: { engine: JSON.parse(number) } });
      }),
    );
  });
});
