import { describe, expect, it } from 'vitest';
import { runExamples } from './run-examples.js';
import { compileSchedule, examplesOf, filesIn, graphOfSchedule, wordsOf } from './schedule-files.js';

const machines = filesIn('', '.due');
const published = filesIn('published/', '.due');

describe('the schedules of the repository', () => {
  it.each([...machines, ...filesIn('attachments/', '.due'), ...published])('%s compiles without an error or a warning', (path) => {
    const { diagnostics } = compileSchedule(path);
    expect(diagnostics.filter(({ severity }) => severity !== 'note').map(({ code, message }) => `${code} ${message}`)).toEqual([]);
  });

  it.each([...machines, ...published])('every worked example in %s holds', (path) => {
    const compiled = compileSchedule(path);
    const run = runExamples(graphOfSchedule(path), examplesOf(compiled), wordsOf(compiled));
    expect(run.expectations).toBeGreaterThan(0);
    expect(run.failures).toEqual([]);
  });

  it.each([
    ['orchard-tractor.due', 45],
    ['wood-chipper.due', 30],
    ['irrigation-pump.due', 30],
  ])('%s has at least %i tasks', (path, least) => {
    expect(graphOfSchedule(path).tasks.length).toBeGreaterThanOrEqual(least);
  });
});
