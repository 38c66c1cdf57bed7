import { describe, expect, it } from 'vitest';
import { answer } from '../../../../src/adapters/logbook/recording/question.js';
import type { Question } from '../../../../src/adapters/logbook/recording/question.js';

const question = (changes: Partial<Question>): Question => ({
  slot: 'litres',
  ask: '?',
  wants: 'number',
  choices: [],
  needed: true,
  ...changes,
});

describe('an answer', () => {
  it.each([
    [question({ unit: 'L' }), '0.4', { litres: 0.4 }],
    [question({ unit: 'L' }), ' 0.4 L ', { litres: 0.4 }],
    [question({ slot: 'meters.engine', unit: 'h' }), '1304', { meters: { shaft: 1, engine: 1304 } }],
    [question({ slot: 'readings.flail.oil', wants: 'reading' }), 'below low', { readings: { 'flail.oil': 'below-low' } }],
    [question({ slot: 'tasks', wants: 'choice', choices: [{ value: 'a', title: 'A' }] }), 'a', { tasks: ['a'] }],
    [question({ slot: 'text', wants: 'text' }), 'a drop', { text: 'a drop' }],
  ])('%# goes to its place', (asked, said, expected) => {
    expect(answer({ kind: 'reading', meters: { shaft: 1 } }, asked, said)).toMatchObject({ kind: 'answered', draft: expected });
  });

  it.each([
    [question({}), 'much'],
    [question({}), '-1'],
    [question({ wants: 'choice', choices: [{ value: 'a', title: 'A' }] }), 'b'],
    [question({ wants: 'text' }), ' '],
    [question({ wants: 'reading' }), 'somewhere'],
  ])('%# is refused with what would do', (asked, said) => {
    expect(answer({ kind: 'reading' }, asked, said)).toMatchObject({
      kind: 'refused',
      problem: expect.stringContaining('Answer with') as string,
    });
  });
});
