import { describe, expect, test } from 'vitest';
import { sourceText } from '../../src/base/source-text.js';
import type { Diagnostic } from '../../src/diagnostics/diagnostic.js';
import { renderDiagnostics } from '../../src/render/diagnostics.js';
import { plainStyle } from '../../src/render/style.js';

const base: Diagnostic = {
  code: 'DW220',
  severity: 'error',
  message: 'There is no meter called `engin`.',
  at: { file: 0, start: 20, end: 25 },
  labels: [],
  fixes: [],
};

describe('rendering diagnostics', () => {
  test('place, sentence, line, marks, help and fix', () => {
    const source = sourceText('t.due', 'task a "A"\n  every engin\n');
    const shown = renderDiagnostics(
      [
        {
          ...base,
          at: { file: 0, start: 19, end: 24 },
          help: 'Did you mean `engine`?',
          fixes: [{ grade: 'likely', title: 'Write `engine`.', edits: [] }],
        },
      ],
      [source],
    );
    expect(shown).toBe(
      [
        't.due:2:9: error DW220: There is no meter called `engin`.',
        '     2 |   every engin',
        '       |         ^^^^^',
        '  help: Did you mean `engine`?',
        '  fix (likely): Write `engine`.',
        '',
      ].join('\n'),
    );
  });

  test('nothing from a schedule reaches the terminal as a command', () => {
    const source = sourceText('t\u001b[2J.due', 'a \u001b[31m\u202Eb\u0007 c');
    const shown = renderDiagnostics(
      [{ ...base, message: 'Bad \u001b]0;x\u0007 `\u009b1m`.', at: { file: 0, start: 2, end: 8 } }],
      [source],
    );
    // eslint-disable-next-line no-control-regex -- control characters are what this is about
    expect(shown).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202e]/);
  });

  test('marks line up under a line with tabs and signs of two code units', () => {
    const text = '\t\u{1F69C} x engin';
    const start = text.indexOf('engin');
    const lines = renderDiagnostics([{ ...base, at: { file: 0, start, end: start + 5 } }], [sourceText('t', text)]).split('\n');
    expect([...(lines[2] ?? '')].indexOf('^')).toBe([...(lines[1] ?? '')].join('').replace('\u{1F69C}', '?').indexOf('engin'));
  });

  test('a long line is cut around the words that are meant', () => {
    const text = `${'x '.repeat(500)}engin${' y'.repeat(500)}`;
    const lines = renderDiagnostics([{ ...base, at: { file: 0, start: 1000, end: 1005 } }], [sourceText('t', text)], plainStyle(80)).split(
      '\n',
    );
    expect(lines[1]?.length).toBeLessThanOrEqual(90);
    expect(lines[1]).toContain('engin');
  });

  test('a place outside the sources is shown as unknown', () => {
    expect(renderDiagnostics([{ ...base, at: { file: 7, start: 0, end: 1 } }], [])).toMatch(/^\?: error/);
  });
});
