import { expect, it } from 'vitest';
import { lookAhead } from '../../src/outlook/look-ahead.js';
import { suppliesAhead } from '../../src/outlook/supplies-ahead.js';
import { compileText } from '../support/compile-text.js';
import { done, history, moment } from '../support/history.js';

it('counts what comes round each day through a year, and the supplies of each time', () => {
  const graph = compileText(`supply grease "Grease" in g
task pins "Grease the pins"
  every 1 day
  uses 2 g grease`);
  const outlook = lookAhead(graph, history(['2026-01-01', done('pins')]), moment('2026-01-01'));
  // Due on 2 January and on each day after it, up to 1 January, a year on.
  expect(1 + (outlook.tasks[0]?.later.length ?? 0)).toBe(365);
  expect(suppliesAhead(graph, outlook).likely.supplies.map(({ needed }) => needed)).toEqual([730]);
});
