import { expect, test } from 'vitest';
import { check } from '../../src/check/check.js';
import { LiveCheck } from '../../src/check/live-check.js';

const tractor = `schedule tractor "Tractor"
  language 1
  fits model "Tarn 55"
  use "diesel"

task grease "Grease the pivots"
  every 50 h of engine
task oil "Change the oil"
  every 100 h of enigne
`;
const diesel = 'part diesel "Diesel"\nmeter engine "Hour meter" counts h\n';

const codes = (diagnostics: readonly { readonly code: string }[]): readonly string[] => diagnostics.map(({ code }) => code);

test('a missing file is told once, and once it is there a misspelt name is told, first time or following an edit', () => {
  const files = new Map([['tractor.due', tractor]]);
  const load = (path: string): string | undefined => files.get(path);
  const live = new LiveCheck();
  expect(codes(live.check('tractor.due', load).diagnostics)).toEqual(['DW201']);
  files.set('diesel.due', diesel);
  const there = live.check('tractor.due', load).diagnostics;
  expect(codes(there)).toEqual(['DW220']);
  expect(there).toEqual(check('tractor.due', load).diagnostics);
  files.delete('diesel.due');
  expect(codes(live.check('tractor.due', load).diagnostics)).toEqual(['DW201']);
});
