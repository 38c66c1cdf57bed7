import { describe, expect, it } from 'vitest';
import { compile } from '../../src/compile/compile.js';
import { header } from '../support/compile-text.js';
import type { Expectation } from '../../src/examples/report.js';
import { runExamples } from '../../src/examples/run-examples.js';

const rules = `
meter engine "Hours" counts h
dipstick oil "Oil" low to full is 1 L
task change-oil "Change the oil"
  every 100 h of engine or 12 months, whichever first
task top-up "Top up"
event refit "Refitted"
task nuts "Torque the nuts"
  within 3 days after refit
task filter "Look at the filter"
  within 1 month after change-oil
task oil-level "Check the oil"
  before each outing
  reads oil
    below low    hold "Do not start."  then top-up now
    low to full  fine
    above full   fine
`;

/** What the example expects, each with whether it holds. */
function run(example: string): readonly Expectation[] {
  const compiled = compile('test.due', () => `${header}${rules}example "it"\n${example}`);
  const report = runExamples(compiled);
  if (report === null) throw new Error(compiled.diagnostics.map(({ message }) => message).join('\n'));
  return report.examples.flatMap(({ expectations }) => expectations);
}

const oilChanged = '2026-01-05 engine 1000 h  done change-oil\n';

describe('a worked example that does not hold is told', () => {
  it.each([
    ['a wrong state', '2026-03-01 engine 1099 h  expect change-oil due'],
    ['a wrong reason', '2026-03-01 engine 1100 h  expect change-oil due because 12 months'],
    ['a wrong meter point', '2026-03-01 expect change-oil clear until engine 1101 h'],
    ['a wrong day among two points', '2026-03-01 expect change-oil clear until engine 1100 h or 2027-01-06'],
    ['a wrong verdict', '2026-03-01 oil reads 0.5  expect machine held'],
    ['a span after something that is another', '2026-02-05 expect filter due because within 2 months after change-oil'],
    ['a span after something else', '2026-02-05 happens refit  expect filter due because within 3 days after refit'],
    ['a reason that is another task', '2026-03-01 oil reads below-low  expect top-up due because change-oil'],
  ])('%s', (_, line) => {
    expect(run(oilChanged + line).filter(({ holds }) => !holds)).toHaveLength(1);
  });

  it('says what was expected and what was found', () => {
    const [found] = run(`${oilChanged}2026-03-01 engine 1099 h  expect change-oil due`);
    expect(found?.place.text).toBe('expect change-oil due');
    expect(found?.about).toMatchObject({
      kind: 'task',
      expected: { state: 'due' },
      actual: { state: 'coming-up', due: { on: 'meter', meter: 'engine' }, governing: { place: { text: '100 h of engine' } } },
      failed: ['state'],
    });
  });
});

it('names the work that is due first, where the machine was to be ready', () => {
  const [found] = run(`${oilChanged}2026-03-01 engine 1100 h  oil reads 0.5  expect machine ready`);
  expect(found?.about).toMatchObject({ kind: 'machine', actual: 'work-due-first', due: [{ task: 'change-oil', state: 'due' }, {}] });
});

describe('a worked example that holds is silent', () => {
  it.each([
    ['a state and its reason', '2026-03-01 engine 1100 h  expect change-oil due because 100 h of engine'],
    ['both points of a dual limit', '2026-03-01 expect change-oil clear until engine 1100 h or 2027-01-05'],
    ['acts count only once they are told', '2026-03-01 engine 1100 h  expect change-oil due  done change-oil  expect change-oil clear'],
    ['a plan holds for its own line', '2026-03-01 plans outing 1 h  expect oil-level due\n2026-03-02 expect oil-level clear'],
    ['a span after an event', '2026-03-01 happens refit\n2026-03-04 expect nuts due because within 3 days after refit'],
    ['a span after a task', '2026-02-05 expect filter due because within 1 month after change-oil'],
    ['the span alone, and what it comes after', '2026-02-05 expect filter due because 1 month  expect filter due because on change-oil'],
    ['what a reading asks for', '2026-03-01 oil reads below-low  expect top-up due because oil  expect machine held'],
  ])('%s', (_, lines) => {
    const expectations = run(oilChanged + lines);
    expect(expectations.filter(({ holds }) => !holds)).toEqual([]);
    expect(expectations.length).toBeGreaterThan(0);
  });
});
