import { describe, expect, test } from 'vitest';
import { compile, runExamples } from '../../src/index.js';
import { authorsGuide, stagesOf } from './growing-schedule.js';

const guide = authorsGuide();
const stages = stagesOf(guide);

const compiled = (text: string): ReturnType<typeof compile> => compile('brush-cutter.due', () => text);

const failing = (report: ReturnType<typeof runExamples>): readonly string[] =>
  (report?.examples ?? []).filter(({ holds }) => !holds).map(({ title }) => title);

describe('docs/authors-guide.md', () => {
  test('grows a schedule', () => {
    expect(stages.length).toBe(8);
    expect(stages.map((stage) => compiled(stage).graph?.tasks.length)).toEqual([0, 1, 1, 4, 6, 9, 10, 10]);
  });

  test.each(stages.map((stage, index) => [index + 1, stage] as const))(
    'stage %i compiles, and check has nothing to put right',
    (_stage, text) => {
      expect(compiled(text).diagnostics.map(({ code, message }) => `${code} ${message}`)).toEqual([]);
    },
  );

  test('its examples hold', () => {
    const report = runExamples(compiled(stages.at(-1) ?? ''));
    expect(report?.examples.length).toBe(5);
    expect(failing(report)).toEqual([]);
  });

  test('an example that does not hold would be found', () => {
    const wrong = (stages.at(-1) ?? '').replace('expect machine held', 'expect machine ready');
    expect(failing(runExamples(compiled(wrong)))).toEqual(['oil below low holds the machine']);
  });
});
