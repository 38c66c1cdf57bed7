import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readShelf } from '../../../src/adapters/cli/shelf-options.js';
import { compileText } from '../../support/compile-text.js';

const graph = compileText(
  'supply oil "Oil" in L\nsupply oil-filter "Filter" each\ntask look "Look" every 1 week uses 1 L oil, 1 oil-filter',
);
let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'duewright-shelf-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

function table(text: string): string {
  const path = join(folder, 'shelf.csv');
  writeFileSync(path, text);
  return path;
}

describe('what is on the shelf', () => {
  it.each([
    ['a heading, units and an empty row', 'supply,amount,unit\noil,10,L\n\noil-filter,2,\n'],
    ['neither heading nor units', 'oil,10\noil-filter,2'],
    ['as some spreadsheets write it', '\uFEFFsupply;amount\r\noil;9,5\r\noil;0,5\r\noil-filter;2\r\n'],
  ])('is read from a table: %s', (_, text) => {
    expect(readShelf({ shelf: table(text) }, graph)).toEqual({
      ok: true,
      value: new Map([
        ['oil', 10],
        ['oil-filter', 2],
      ]),
    });
  });

  it('adds up what is said and what is kept', () => {
    expect(readShelf({ have: '1 oil-filter, 2 L oil', shelf: table('oil,10') }, graph)).toEqual({
      ok: true,
      value: new Map([
        ['oil-filter', 1],
        ['oil', 12],
      ]),
    });
  });

  it('takes an amount in a unit that converts into the supply’s own', () => {
    expect(readShelf({ shelf: table('oil,1500,mL') }, graph)).toEqual({ ok: true, value: new Map([['oil', 1.5]]) });
  });

  it.each([
    ['supply,amount\noli,1', ':2: There is no supply `oli`: was `oil` meant?'],
    ['oil,1\noil-filter,a few', ':2: after `oil-filter` stands how much of it is there, as a number.'],
    ['oil,1\noil,', ':2: after `oil` stands how much of it is there, as a number.'],
    ['oil,-1', ':1: after `oil` stands how much of it is there, as a number.'],
    ['oil,1,kg', ':1: `oil` is counted in L, not in kg.'],
    ['oil,"1', ':1: a quoted cell is not closed.'],
  ])('refuses %j with its row', (text, problem) => {
    expect(readShelf({ shelf: table(text) }, graph)).toEqual({ ok: false, problem: expect.stringContaining(problem) as string });
  });
});
