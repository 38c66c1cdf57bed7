import { readFileSync } from 'node:fs';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { compile } from '../../src/compile/compile.js';
import { runExamples } from '../../src/examples/run-examples.js';
import { inkOf } from '../format/scatter.js';

const text = readFileSync(new URL('../cases/examples/pump.due', import.meta.url), 'utf8');
const examples = text.indexOf('example "holds"');
const rules = text.slice(0, examples);
const words = inkOf(text.slice(examples));
const others = [...words, 'below-low', 'nuts', '3 L', '0 h', 'multiple of 3 months', '2026-02-30', '99 %', 'sump', 'reads'];
const RUNS = Number(process.env['DUEWRIGHT_RUNS'] ?? 400);

test('examples with any of their words replaced are reported or run, and never throw', () => {
  let ran = 0;
  const slip = fc.tuple(fc.nat(words.length - 1), fc.constantFrom(...others));
  fc.assert(
    fc.property(fc.array(slip, { minLength: 1, maxLength: 2 }), (slips) => {
      const changed = [...words];
      for (const [at, word] of slips) changed[at] = word;
      const compiled = compile('pump.due', () => `${rules}${changed.join(' ')}`);
      const report = runExamples(compiled);
      expect(report === null).toBe(compiled.graph === null);
      if (report !== null) ran += 1;
    }),
    { numRuns: RUNS, seed: 1127 },
  );
  expect(ran).toBeGreaterThan(RUNS / 20);
}, 60_000);
