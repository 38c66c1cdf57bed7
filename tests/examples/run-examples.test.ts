import { describe, expect, test } from 'vitest';
import type { Asserted, ExamplesReport, Expectation } from '../../src/examples/report.js';
import { runExamples } from '../../src/examples/run-examples.js';
import { pump, pumpWith } from './compile-pump.js';

function run(lines: string): ExamplesReport {
  const report = runExamples(pumpWith(`example "x"\n${lines}\n`));
  if (report === null) throw new Error('does not compile');
  return report;
}

/** What failed in the last expectation of an example. */
function failed(lines: string): readonly Asserted[] | string {
  const last: Expectation | undefined = run(lines).examples[0]?.expectations.at(-1);
  if (last === undefined) throw new Error('nothing is expected');
  return last.about.kind === 'task' ? last.about.failed : last.holds ? [] : last.about.actual;
}

const oilDue = '2026-03-02 engine 1200 h done oil 2026-05-12 engine 1300 h expect oil due because';
const refitted = '2026-03-02 engine 100 h done nuts happens refit';

describe('the deciding part', () => {
  test.each([
    [`${oilDue} 100 h of engine`],
    // 6000 min are 100 h: amounts are compared, not words.
    [`${oilDue} 6000 min of engine`],
    ['2026-03-02 engine 1200 h done oil 2027-03-02 engine 1210 h expect oil due because 12 months'],
    ['2026-03-02 engine 1200 h done oil 2027-03-02 engine 1210 h expect oil due because 1 year'],
    [`${refitted} 2026-03-03 engine 101 h expect nuts due because 1 h of engine`],
    [`${refitted} 2026-03-03 engine 101 h expect nuts due because on refit`],
    [`${refitted} 2026-03-03 engine 101 h expect nuts due because refit`],
    ["2026-03-02 plans outing 2 h expect look due because before each day's work"],
    ['2026-03-02 heat reads 95 °C expect cool due because when heat above 90 °C'],
    ['2026-03-02 heat reads 95 °C expect cool due because when heat above 194 °F'],
    ['2026-03-02 sump reads -0.5 expect fill due because look'],
    ['2026-03-02 sump reads -0.5 expect fill due because sump'],
    ['2026-03-02 opens seep drops expect mend due because seep'],
  ])('is told by kind and amount: %s', (lines) => {
    expect(failed(lines)).toEqual([]);
  });

  test.each([
    [`${oilDue} 12 months`],
    // A part of its words is not the part that decided.
    [`${oilDue} 10 h of engine`],
    [`${oilDue} more than 100 h of engine`],
    [`${oilDue} multiple of 100 h of engine`],
    [`${oilDue} multiple of 3 months`],
    [`${oilDue} 100 h of work`],
    [`${oilDue} look`],
    ['2026-03-02 engine 1200 h done oil 2027-03-02 engine 1210 h expect oil due because 2 months'],
    [`${refitted} 2026-03-03 engine 101 h expect nuts due because 10 h of engine`],
    ['2026-03-02 plans outing 2 h expect look due because before each outing'],
    ['2026-03-02 heat reads 95 °C expect cool due because when heat above 91 °C'],
    ['2026-03-02 heat reads 95 °C expect cool due because heat'],
    ['2026-03-02 opens seep drops expect mend due because look'],
  ])('is not another one: %s', (lines) => {
    expect(failed(lines)).toEqual(['because']);
  });
});

describe('due points', () => {
  test.each([
    ['engine 1300 h', []],
    ['engine 78000 min', []],
    ['engine 1300 h or 2027-03-02', []],
    ['2027-03-02 or engine 1300 h', []],
    ['engine 1301 h', ['until']],
    // It takes part, but the hours decide.
    ['2027-03-02', ['until']],
    ['engine 1300 h or 2027-03-03', ['until']],
  ])('until %s', (until, expected) => {
    expect(failed(`2026-03-02 engine 1200 h done oil 2026-05-11 engine 1280 h expect oil clear until ${until}`)).toEqual(expected);
  });

  test('of an occasion are its day', () => {
    expect(failed('2026-03-02 plans outing 2 h expect look due until 2026-03-02')).toEqual([]);
    expect(failed('2026-03-02 plans outing 2 h expect look due until 2026-03-03')).toEqual(['until']);
  });
});

describe('the acts of a line', () => {
  test.each([
    ['states oil at 1190 h of engine 2026-03-02 engine 1200 h expect oil unknown'],
    ['states oil at 1190 h of engine 2026-05-02 engine 1300 h expect oil due because 100 h of engine until engine 1290 h'],
    // So much below the low mark: a volume is counted from there.
    ['sump reads -0.1 L expect fill due because sump'],
    ['heat reads 221.1 °F expect cool due because when heat above 90 °C'],
    ['heat reads 221.1 °F expect machine held'],
    ['opens seep drops closes seep expect mend clear'],
    ["done look 2026-03-02 outing 08:00 to 10:00 2026-03-03 plans outing 1 h expect look due because before each day's work"],
    ['engine 0 h enters service 2027-03-02 expect oil due because 12 months until 2027-03-02'],
  ])('2026-03-02 %s', (lines) => {
    expect(failed(`2026-03-02 ${lines}`)).toEqual([]);
  });

  test.each([
    ['heat reads 80 °C sump reads full', 'ready'],
    ['heat reads 106 °C sump reads full', 'held'],
    ['heat reads 80 °C sump reads -0.2', 'held'],
    ['heat reads 80 °C sump reads full opens seep drops', 'held'],
    ['sump reads full', 'cannot-tell'],
  ])('%s makes the machine %s', (acts, verdict) => {
    const about = run(`2026-03-02 engine 10 h enters service done oil ${acts} expect machine ${verdict}`).examples[0]?.expectations[0]
      ?.about;
    expect(about?.kind === 'machine' && about.actual).toBe(verdict);
  });
});

describe('a failure', () => {
  const report = runExamples(pump());
  const about = report?.examples[1]?.expectations[0]?.about;

  test('says which parts of the expectation failed, and keeps the explanation', () => {
    expect(report?.holds).toBe(false);
    expect(report?.examples.map(({ holds }) => holds)).toEqual([true, false, false]);
    if (about?.kind !== 'task') throw new Error('the expectation is about a task');
    expect(about.failed).toEqual(['state', 'because', 'until']);
    expect(about.expected).toEqual({ state: 'due', because: '12 months', until: ['engine 1304 h'] });
    expect(about.actual.state).toBe('coming-up');
    expect(about.actual.governing?.place.text).toBe('100 h of engine');
    expect(about.explanation?.state).toBe('coming-up');
  });

  test('of the machine says what holds it', () => {
    const machine = report?.examples[2]?.expectations[0]?.about;
    expect(machine?.kind === 'machine' && machine.holds.map(({ text }) => text)).toEqual(['Do not run it.']);
  });
});

test('a schedule with errors has no report', () => {
  const compiled = pump();
  expect(runExamples({ ...compiled, graph: null })).toBeNull();
});
