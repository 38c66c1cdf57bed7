import { expect, test } from 'vitest';
import { check } from '../../src/check/check.js';
import type { Diagnostic, Fix } from '../../src/diagnostics/diagnostic.js';
import { readCases, type Case } from './case-file.js';

function checked(each: Case, first: string): readonly Diagnostic[] {
  return check(each.first, (path) => (path === each.first ? first : each.files.get(path))).diagnostics;
}

function applied(text: string, { edits }: Fix): string {
  const last = [...edits].sort((a, b) => b.at.start - a.at.start);
  return last.reduce((result, { at, text: by }) => result.slice(0, at.start) + by + result.slice(at.end), text);
}

const fixes = readCases().flatMap((each) => {
  const text = each.files.get(each.first) ?? '';
  const diagnostics = checked(each, text);
  return diagnostics.flatMap((diagnostic) =>
    diagnostic.fixes.flatMap((fix) =>
      diagnostic.at.file === 0 && fix.grade !== 'possible' ? [{ each, text, diagnostic, diagnostics, fix }] : [],
    ),
  );
});

test('there are fixes to try', () => expect(fixes.length).toBeGreaterThan(10));

test.each(fixes.map((one) => [`${one.each.name}: ${one.fix.title}`, one] as const))(
  '%s clears its diagnostic and brings no other',
  (_name, { each, text, diagnostic, diagnostics, fix }) => {
    const after = checked(each, applied(text, fix));
    const said = ({ code, message }: Diagnostic): string => `${code} ${message}`;
    expect(after.map(said)).not.toContain(said(diagnostic));
    const before = diagnostics.map(said);
    expect(after.map(said).filter((line) => !before.includes(line))).toEqual([]);
  },
);
