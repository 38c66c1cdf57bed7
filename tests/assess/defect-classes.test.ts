/** Conditions on the class of an open defect (docs/meaning.md §6): one that nobody noted may be any that the defect has. */
import { describe, expect, test } from 'vitest';
import { ask } from '../support/ask.js';
import { history } from '../support/history.js';

const defects = `defect seep "Seep" classes wetness, drops-form, drops-fall
defect crack "Crack" classes open-crack
`;
const open = (defect: string, noted?: string) =>
  history(['2026-05-02', { kind: 'defect-opened', defect, ...(noted === undefined ? {} : { class: noted }) }]);
const state = (when: string, entries: ReturnType<typeof open>): string =>
  ask(`${defects}task t "Task" when ${when}`, entries, '2026-05-10').stands();

describe('that a defect is of a class', () => {
  test.each([
    ['drops-form', 'due 2026-05-02'],
    ['wetness', 'clear'],
    ['drops-fall', 'clear'],
    [undefined, 'unknown'],
  ])('%s', (noted, expected) => expect(state('seep is drops-form', open('seep', noted))).toBe(expected));

  test('needs no note where it has only one', () => expect(state('crack is open-crack', open('crack'))).toBe('due 2026-05-02'));
});

test('one that has no classes is open or not', () => {
  const leak = (entries: ReturnType<typeof open>): string =>
    ask('defect leak "Leak"\ntask t "Task" when leak is open', entries, '2026-05-10').stands();
  expect(leak(open('leak'))).toBe('due 2026-05-02');
  expect(leak([])).toBe('clear');
});

describe('that it is worse than a class', () => {
  test.each([
    ['wetness', 'clear'],
    ['drops-form', 'clear'],
    ['drops-fall', 'due 2026-05-02'],
    [undefined, 'unknown'],
  ])('%s', (noted, expected) => expect(state('seep worse than drops-form', open('seep', noted))).toBe(expected));

  test('is not so of the worst, whatever was noted', () => expect(state('seep worse than drops-fall', open('seep'))).toBe('clear'));
});
