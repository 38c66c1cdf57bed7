import { describe, expect, test } from 'vitest';
import { compile } from '../../src/compile/compile.js';
import type { ExamplesReport } from '../../src/examples/report.js';
import { runExamples } from '../../src/examples/run-examples.js';
import { compileSchedule, filesIn, textOf } from '../schedules/schedule-files.js';
import { pump, pumpWith } from './compile-pump.js';

/** The outcomes that some example shows, as `of: words: outcome`. */
function shown(lines: string): readonly string[] {
  return shownIn(runExamples(pumpWith(`example "x"\n${lines}\n`)));
}

function shownIn(report: ExamplesReport | null): readonly string[] {
  return (report?.coverage.items ?? []).flatMap(({ of, place, outcomes }) =>
    outcomes.flatMap(({ outcome, by }) => (by === null ? [] : [`${of}: ${place.text}: ${outcome}`])),
  );
}

describe('coverage', () => {
  test('asks for both sides of a limit, all that a condition can come to, and each occasion, band and class', () => {
    const items = runExamples(pumpWith(''))?.coverage.items ?? [];
    expect(
      items.map(({ kind, of, place, outcomes }) => `${kind} ${of} ${place.text}: ${outcomes.map(({ outcome }) => outcome).join(', ')}`),
    ).toEqual([
      'condition too-hot heat above 105 °C: true, false, unknown',
      'defect class seep wet: came up',
      'defect class seep drops: came up',
      'limit oil 100 h of engine: not reached, reached',
      'limit oil 12 months: not reached, reached',
      'limit nuts at 1 h, 10 h, 50 h of engine after refit: not reached, reached',
      "occasion look before each day's work: came up",
      'band look below low hold "Fill it first." then fill now: came up',
      'band look low to full fine: came up',
      'band look above full caution "Too much.": came up',
      'occasion fill then fill now: came up',
      'condition cool heat above 90 °C: true, false, unknown',
      'occasion mend then mend now: came up',
    ]);
  });

  test('counts only what an expectation looked at', () => {
    expect(shown('2026-03-02 engine 1200 h done oil 2026-05-12 engine 1300 h expect fill clear')).toEqual([]);
    expect(shown('2026-03-02 engine 1200 h done oil 2026-05-12 engine 1300 h expect oil due')).toEqual([
      'oil: 100 h of engine: reached',
      'oil: 12 months: not reached',
    ]);
  });

  test.each([
    ['heat reads 95 °C', 'true'],
    ['heat reads 85 °C', 'false'],
    ['engine 10 h', 'unknown'],
  ])('%s: the condition is %s', (act, truth) => {
    expect(shown(`2026-03-02 ${act} expect cool clear`)).toEqual([`cool: heat above 90 °C: ${truth}`]);
  });

  test.each([
    ['sump reads -1 expect fill due', ['look: below low hold "Fill it first." then fill now: came up', 'fill: then fill now: came up']],
    ['sump reads full expect look clear', ['look: low to full fine: came up']],
    ['opens seep wet expect mend clear', ['seep: wet: came up']],
  ])('%s', (acts, expected) => {
    expect(shown(`2026-03-02 ${acts}`)).toEqual(expected);
  });

  test('is told although examples fail', () => {
    const report = runExamples(pump());
    expect(report?.holds).toBe(false);
    expect(report?.coverage.covered).toBeGreaterThan(3);
  });
});

// The variant is left out: its rules are those of its base again, which takes long enough.
const schedules = [
  ...filesIn('', '.due').filter((path) => path !== 'orchard-tractor-narrow.due'),
  ...filesIn('attachments/', '.due'),
  ...filesIn('published/', '.due'),
];

describe.each(schedules)('examples proposed for %s', (path) => {
  const report = runExamples(compileSchedule(path), { propose: true });
  const proposals = report?.proposals ?? [];

  test('are there for whatever no example shows', () => {
    const missing = (report?.coverage.items ?? []).flatMap(({ outcomes }) => outcomes.filter(({ by }) => by === null));
    expect(proposals.length).toBe(missing.length);
    expect(proposals.filter(({ proposal }) => proposal === null)).toEqual([]);
  });

  test('hold when they are put into the schedule, and show what they were made for', () => {
    const added = proposals.flatMap(({ proposal }) => (proposal === null ? [] : [proposal.text])).join('\n');
    const compiled = compile(path, (asked) => (asked === path ? `${textOf(path)}\n${added}` : textOf(asked)));
    expect(compiled.diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
    const after = runExamples(compiled);
    expect(after?.examples.filter(({ holds }) => !holds).map(({ title }) => title)).toEqual([]);
    const promised = proposals.filter(({ proposal }) => proposal?.shows === true).length;
    expect(after?.coverage.covered).toBeGreaterThanOrEqual((report?.coverage.covered ?? 0) + promised);
    // The rest needs what only the author can think of.
    expect(promised).toBeGreaterThanOrEqual(Math.floor(proposals.length * 0.8));
  });
});

test('what comes after other work is proposed with that work done, and nothing that nobody notes', () => {
  const text = `schedule saw "Band saw" language 1 edition 1 of 2026-01-01 by "B" fits model "M"
meter engine "Engine hours" counts h
task renew-band "Renew the band" every 20 h of engine
task tighten-band "Tighten the new band" first at 1 h of engine after renew-band
task look-band "Look at the new band" on renew-band
`;
  const report = runExamples(
    compile('saw.due', () => text),
    { propose: true },
  );
  const asked = (item: number): string => report?.coverage.items[item]?.of ?? '';
  const acts = (report?.proposals ?? []).flatMap(({ item, proposal }) => {
    if (!['tighten-band', 'look-band'].includes(asked(item))) return [];
    const proposed = proposal?.text ?? '';
    return [[proposed.includes('done renew-band'), proposed.includes('happens')]];
  });
  expect(acts).toEqual([
    [true, false],
    [true, false],
    [true, false],
  ]);
});

test('limits on days of service are reached by that many days of work, of which there may be many', () => {
  const text = `schedule engine "Steam engine" language 1 edition 1 of 2026-01-01 by "B" fits model "M"
meter service "Days in service" counts service-days from outings
task wash "Wash the boiler out" every 31 service-days of service
task test-boiler "Test the boiler" first at 5 service-days of service every 1472 service-days of service
task inspect "Inspect it" every more than 92 service-days of service 2 times or 4 months, whichever first
`;
  const report = runExamples(
    compile('engine.due', () => text),
    { propose: true },
  );
  const unlike = (report?.proposals ?? []).filter(({ proposal }) => proposal?.shows !== true || !proposal.holds);
  expect(unlike).toEqual([]);
  expect(report?.proposals).toHaveLength(10);
});
