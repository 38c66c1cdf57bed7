import { expect, test } from 'vitest';
import { titledLike } from '../../src/base/titled-like.js';

const things = [
  { id: 'change-oil', title: 'Change the engine oil and its filter' },
  { id: 'oil-level', title: 'Look at the oil level' },
  { id: 'clear-screen', title: 'Blow out the radiator screen' },
  { id: 'fluessig', title: 'Kühlmittel erneuern' },
];
const ids = (said: string): readonly string[] => titledLike(said, things).map(({ id }) => id);

test.each([
  ['radiator', ['clear-screen']],
  ['Radiator Screen', ['clear-screen']],
  ['screen-radiator', ['clear-screen']],
  ['oil', ['change-oil', 'oil-level']],
  ['oil filt', ['change-oil']],
  ['lev', ['oil-level']],
  ['vel', []],
  ['oil radiator', []],
  ['KÜHL', ['fluessig']],
  ['', []],
  ['-- !', []],
])('%j', (said, found) => {
  expect(ids(said)).toEqual(found);
});
