import { expect, test } from 'vitest';
import { sourceText } from '../../src/base/source-text.js';
import { checkGraph, spanOf } from '../../src/compile/graph-checks.js';
import { compile } from '../../src/compile/compile.js';

const text =
  'schedule t "T" language 1 fits model "x"\nmeter engine "E" counts h\ntask a "A"\n  every 50 h   # often\n     of  engine\ntask b "B # b" every 5 h of engine';
const { graph, sources } = compile('t.due', () => text);

test('the span of an origin is that of its words', () => {
  const spans = [...(graph?.nodes ?? []), ...(graph?.tasks ?? [])].map(({ origin }) => spanOf(sources, origin));
  expect(spans.map(({ start, end }) => text.slice(start, end))).toEqual([
    '50 h   # often\n     of  engine',
    '5 h of engine',
    'task a "A"\n  every 50 h   # often\n     of  engine',
    'task b "B # b" every 5 h of engine',
  ]);
});

test('an origin that fits no source is not followed off the end', () => {
  expect(spanOf([sourceText('x', 'abc')], { source: 0, line: 1, column: 1, text: 'abc def ghi' })).toEqual({ file: 0, start: 0, end: 3 });
});

test('what a check of the graph finds is a diagnostic at its place', () => {
  if (graph === null) throw new Error('no graph');
  const entry = { code: 'DW999', severity: 'error', title: 't', explanation: 'e', wrong: 'w', right: 'r' } as const;
  const [found] = checkGraph(graph, sources, [
    ({ tasks }) => tasks.slice(1).map(({ origin, id }) => ({ entry, message: `\`${id}\` cannot be reached.`, at: origin })),
  ]);
  expect(found).toMatchObject({
    code: 'DW999',
    severity: 'error',
    message: '`b` cannot be reached.',
    at: { file: 0, start: text.indexOf('task b') },
  });
});
