/**
 * The diagrams are those of the grammar as it stands. To draw them anew: npx vitest run -u tests/grammar/railroad
 */
import { expect, test } from 'vitest';
import { readEbnf } from './ebnf.js';
import { railroadPage } from './railroad.js';

test('grammar/railroad.html is drawn from grammar/duewright.ebnf', async () => {
  await expect(railroadPage(readEbnf())).toMatchFileSnapshot('../../grammar/railroad.html');
});

test('every production that a diagram refers to is on the page', () => {
  const page = railroadPage(readEbnf());
  const links = [...page.matchAll(/href="#(\w+)"/g)].map((each) => each[1] ?? '');
  expect(links.length).toBeGreaterThan(100);
  expect(links.filter((each) => !page.includes(`id="${each}"`))).toEqual([]);
});
