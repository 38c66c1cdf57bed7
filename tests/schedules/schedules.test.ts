import { describe, expect, it } from 'vitest';
import { runExamples } from '../../src/examples/run-examples.js';
import { compileSchedule, filesIn, graphOfSchedule } from './schedule-files.js';

const machines = filesIn('', '.due');
const published = filesIn('published/', '.due');

describe('the schedules of the repository', () => {
  it.each([...machines, ...filesIn('attachments/', '.due'), ...published])('%s compiles without an error or a warning', (path) => {
    const { diagnostics } = compileSchedule(path);
    expect(diagnostics.filter(({ severity }) => severity !== 'note').map(({ code, message }) => `${code} ${message}`)).toEqual([]);
  });

  it.each([...machines, ...published])('every worked example in %s holds', (path) => {
    const report = runExamples(compileSchedule(path));
    expect(report?.expectations).toBeGreaterThan(0);
    expect(report?.examples.flatMap(({ expectations }) => expectations.filter(({ holds }) => !holds))).toEqual([]);
  });

  it.each([
    ['orchard-tractor.due', 45],
    ['wood-chipper.due', 30],
    ['irrigation-pump.due', 30],
  ])('%s has at least %i tasks', (path, least) => {
    expect(graphOfSchedule(path).tasks.length).toBeGreaterThanOrEqual(least);
  });
});
