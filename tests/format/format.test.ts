import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { format } from '../../src/format/format.js';

const text = readFileSync(new URL('../cases/format/layout.txt', import.meta.url), 'utf8');

interface LayoutCase {
  readonly name: string;
  readonly input: string;
  readonly expected: string;
}

/** Cases stand as `# name`, the input, `==>` and the layout; a comment of the input is told from a name by the empty line before the latter. */
function readCases(): readonly LayoutCase[] {
  const parts = text.split(/\n?^==>\n/m);
  const heads = parts
    .slice(0, -1)
    .map((part, index) => (index === 0 ? part : part.slice(part.lastIndexOf('\n\n# ', part.lastIndexOf('\nschedule ')) + 2)));
  return heads.map((head, index) => {
    const [name = '', ...input] = head.split('\n');
    const after = parts[index + 1] ?? '';
    const next = heads[index + 1];
    const expected = next === undefined ? after : after.slice(0, after.length - next.length - 1);
    return { name: name.replace(/^# /, ''), input: input.join('\n'), expected };
  });
}

describe('the layout', () => {
  test.each(readCases().map((each) => [each.name, each] as const))('%s', (_name, { input, expected }) => {
    expect(format(input)).toEqual({ text: expected });
    expect(format(expected)).toEqual({ text: expected });
  });

  test('all cases are read', () => {
    expect(readCases().length).toBe(text.split('\n==>\n').length - 1);
  });
});

test('a text with a mistake is left alone, and the mistake told', () => {
  const result = format('schedule pump "Pump" language 1 task oil "Oil" evry 100 h');
  expect('diagnostics' in result && result.diagnostics.map(({ code }) => code)).toEqual(['DW112']);
});

test('no header, no layout', () => {
  expect(format('')).toHaveProperty('diagnostics');
});

test('a line end of any kind becomes a plain one', () => {
  expect(format('schedule pump "Pump"\r\n\r\n# a\r\n\r\n\r\nlanguage 1\r\n')).toEqual({
    text: 'schedule pump "Pump"\n\n  # a\n\n  language 1\n',
  });
});

test('a long list does not take long', () => {
  const names = Array.from({ length: 950 }, (_, index) => `n${index}`);
  const result = format(`schedule pump "Pump" language 1 task t "T" covers ${names.join(',')}`);
  expect('text' in result && Math.max(...result.text.split('\n').map(({ length }) => length))).toBeLessThanOrEqual(120);
}, 10_000);
