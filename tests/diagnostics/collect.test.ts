/**
 * Order and uniqueness of what an author is told.
 */
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { collect, compareDiagnostics, hasErrors } from '../../src/diagnostics/collect.js';
import type { Diagnostic } from '../../src/diagnostics/diagnostic.js';

const one = fc.record({
  code: fc.constantFrom('DW101', 'DW102'),
  severity: fc.constantFrom('error' as const, 'warning' as const, 'note' as const),
  message: fc.constantFrom('a', 'b'),
  at: fc.record({ file: fc.nat(1), start: fc.nat(3), end: fc.nat(3) }),
  labels: fc.constant([]),
  fixes: fc.constant([]),
});

test('the same set comes out the same, whatever order it came in, each once', () => {
  fc.assert(
    fc.property(fc.array(one), (list: readonly Diagnostic[]) => {
      const sorted = collect(list);
      const seen = (each: readonly Diagnostic[]) => each.map((d) => JSON.stringify([d.at, d.code, d.message]));
      expect(seen(collect([...list].reverse(), list))).toEqual(seen(sorted));
      expect(new Set(seen(list))).toEqual(new Set(seen(sorted)));
      sorted.forEach((each, index) => expect(index === 0 || compareDiagnostics(sorted[index - 1] ?? each, each) <= 0).toBe(true));
    }),
  );
});

test('warnings and notes keep nothing from being used', () => {
  const at = { file: 0, start: 0, end: 0 };
  const made = (severity: Diagnostic['severity']): Diagnostic => ({ code: 'DW101', severity, message: 'm', at, labels: [], fixes: [] });
  expect(hasErrors([made('warning'), made('note')])).toBe(false);
  expect(hasErrors([made('note'), made('error')])).toBe(true);
});
