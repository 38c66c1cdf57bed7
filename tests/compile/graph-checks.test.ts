import { expect, test } from 'vitest';
import { sourceText } from '../../src/base/source-text.js';
import { checkGraph, spanOf } from '../../src/compile/graph-checks.js';
import { compile } from '../../src/compile/compile.js';
import type { Compiled } from '../../src/compile/graph-of.js';

const text =
  'schedule t "T" language 1 fits model "x"\nmeter engine "E" counts h\ntask a "A"\n  every 50 h   # often\n     of  engine\ntask b "B # b" every 5 h of engine';
const compiled = (): Compiled => compile('t.due', () => text);

test('the span of an origin is that of its words', () => {
  const { graph, sources } = compiled();
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
  const { graph, sources } = compiled();
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

/** What is told of the graph of a text: the place, the other places, and the help. */
function faults(text: string): readonly object[] {
  const { diagnostics } = compile('t.due', () => text);
  const words = ({ start, end }: { readonly start: number; readonly end: number }): string => text.slice(start, end);
  return diagnostics
    .filter(({ code }) => code.startsWith('DW4'))
    .map(({ code, at, labels, help }) => ({ code, at: words(at), labels: labels.map((label) => [label.text, words(label.at)]), help }));
}

const header = 'schedule t "T" language 1 fits model "x"';

test('a fault of access says how far one comes from rest, and which rule is in the way', () => {
  const never = 'never "Latch free" latch free and door shut';
  const task = 'task look "Look inside" every 10 days with door open';
  const swing = 'step swing "Swing the door" door shut to open while latch free takes 1 min';
  const parts =
    'position door shut, open\nposition latch held, free\nat rest door shut, latch held\nstep pull "Pull the latch" latch held to free';
  expect(faults([header, parts, swing, never, task].join('\n'))).toContainEqual({
    code: 'DW401',
    at: task,
    labels: [['the rule "Latch free"', never]],
    help: 'From rest: blocked: Pull the latch. Change the rule or the step that blocks the way, or add a step that leads round it.',
  });
});

test('a fault of places has no way from rest to tell; without parts and walks nothing is looked at', () => {
  const walk = 'walk front to back 10 s';
  const places = 'place front "Front"\nplace back "Back"\nplace side "Side"';
  const tasks = ['front', 'back', 'side'].map((place) => `task at-${place} "T" every 10 days at ${place}`).join('\n');
  const found = faults([header, places, walk, tasks].join('\n'));
  expect(found).toHaveLength(1);
  expect(found).toMatchObject([{ code: 'DW406', labels: [], help: expect.not.stringContaining('From rest') as string }]);
  expect(faults([header, places, tasks].join('\n'))).toEqual([]);
});

test('help and labels are told where there are any', () => {
  const { graph, sources } = compiled();
  if (graph === null) throw new Error('no graph');
  const entry = { code: 'DW999', severity: 'error', title: 't', explanation: 'e', wrong: 'w', right: 'r' } as const;
  const [first, second] = checkGraph(graph, sources, [
    ({ tasks }) =>
      tasks.map(({ origin: at, id }) => ({ entry, message: 'm', at, ...(id === 'a' ? { help: 'h', labels: [{ at, text: 'l' }] } : {}) })),
  ]);
  expect(first).toMatchObject({ help: 'h', labels: [{ text: 'l', at: { start: text.indexOf('task a') } }] });
  expect(second).toMatchObject({ labels: [] });
  expect(second).not.toHaveProperty('help');
});
