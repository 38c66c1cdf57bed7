import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { wholeExamination } from '../../src/check/whole-examination.js';
import { catalogue } from '../../src/diagnostics/catalogue.js';
import { checkCatalogue } from '../../src/diagnostics/catalogue/check.js';

const root = new URL('../../', import.meta.url);

describe('the catalogue', () => {
  test('no code stands twice', () => {
    const codes = catalogue.map(({ code }) => code);
    expect(new Set(codes).size).toBe(codes.length);
  });

  test('every entry is explained, with an example and the example put right', () => {
    for (const entry of Object.values(checkCatalogue)) {
      expect(entry.code).toMatch(/^DW2\d\d$/);
      expect(entry.title, entry.code).not.toMatch(/\.$/);
      expect(entry.explanation, entry.code).toMatch(/\.$/);
      expect(entry.wrong, entry.code).not.toBe(entry.right);
    }
  });

  test('every entry is reported by a rule, or by what brings the files together, and by no more than its source says', () => {
    const source = (folder: string): string =>
      readdirSync(new URL(folder, root), { encoding: 'utf8' })
        .filter((name) => name.endsWith('.ts'))
        .map((name) => readFileSync(new URL(`${folder}${name}`, root), 'utf8'))
        .join('\n');
    const loading = [...source('src/check/load/').matchAll(/diagnostic\('(\w+)'/g)].map((match) => match[1]);
    const used = new Set<string | undefined>([...wholeExamination.rules.flatMap(({ codes }) => codes), ...loading]);
    expect([...used].sort()).toEqual(Object.keys(checkCatalogue).sort());
  });

  test('docs/diagnostics.md is current (`node .scripts/diagnostics-doc.mjs`)', () => {
    expect(() =>
      execFileSync(process.execPath, ['.scripts/diagnostics-doc.mjs', '--check'], { cwd: fileURLToPath(root), stdio: 'pipe' }),
    ).not.toThrow();
  });
});
