import fc from 'fast-check';
import { expect, test } from 'vitest';
import { compile } from '../../src/compile/compile.js';
import { bent, edit, files, names } from './bent-texts.js';
import { holdToSchema } from './compile-files.js';

test(
  'whatever is written, compiling ends with a graph that fits the schema or with an error, and never throws',
  { timeout: 60_000 },
  () => {
    let graphs = 0;
    let errors = 0;
    fc.assert(
      fc.property(fc.constantFrom(...names), fc.array(edit, { minLength: 1, maxLength: 4 }), (name, edits) => {
        const text = bent(files.get(name) ?? '', edits);
        const { graph, diagnostics, sources } = compile(name, (path) => (path === name ? text : files.get(path)));
        if (graph === null) errors += 1;
        else graphs += 1;
        if (graph !== null) holdToSchema(graph);
        expect(graph === null).toBe(diagnostics.some(({ severity }) => severity === 'error'));
        for (const { at, message } of diagnostics) {
          expect(at.start <= at.end && at.end <= (sources[at.file]?.text.length ?? 0), message).toBe(true);
          expect(message).not.toMatch(/[\n]/);
        }
      }),
      { numRuns: 400 },
    );
    // Both ways have to be tried for this to say anything.
    expect(Math.min(graphs, errors) / (graphs + errors)).toBeGreaterThan(0.0125);
  },
);
