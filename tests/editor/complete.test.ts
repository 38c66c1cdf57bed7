import { describe, expect, test } from 'vitest';
import { complete } from '../../src/editor/complete.js';
import { atCursor, machine } from './at-cursor.js';

/** Labels that are offered after the machine and this text. */
function offered(text: string): readonly string[] {
  const { view, offset } = atCursor(machine + text);
  return complete(view, offset).map(({ label }) => label);
}

describe('completion knows where it is', () => {
  test.each([
    [
      'a clause in a task',
      'task x "X"\n  |',
      ['every', 'before', 'reads', 'only', 'task', 'reason'],
      ['back', 'whichever', 'engine', 'low'],
    ],
    ['a clause in a step', 'step x "X" cover closed to open\n  |', ['while', 'back', 'one', 'takes'], ['every', 'reads']],
    ['a limit', 'task x "X"\n  every |', ['more', 'multiple', 'year'], ['engine', 'task', 'due']],
    ['a unit of a span', 'task x "X"\n  every 100 |', ['h', 'months', 'days', 'km'], ['°C', 'N·m', 'L']],
    ['a unit of a torque', 'task x "X"\n  tighten "Nuts" to 210 |', ['N·m', 'lbf·ft'], ['h', 'L', 'months']],
    ['a unit of a gauge', 'task x "X"\n  when coolant above 97 |', ['°C', '°F'], ['h', 'N·m']],
    ['a meter', 'task x "X"\n  every 100 h of |', ['engine', 'distance', 'mower.rotor', 'work'], ['oil', 'oil-change', 'coolant']],
    ['a duty', 'task x "X"\n  every 100 h of engine\n  in |', ['dusty'], ['engine', 'mower']],
    ['a task', 'task x "X"\n  covers |', ['oil-level', 'oil-change', 'mower.blades'], ['engine', 'seep']],
    ['a task after then', 'task x "X"\n  reads oil below low hold "Low." then |', ['top-up'], ['oil', 'engine']],
    ['a defect', 'task x "X"\n  mends |', ['seep'], ['oil-level']],
    ['an event, other work, or refuelling', 'task x "X"\n  on |', ['refit', 'oil-level', 'refuelling'], ['dusty', 'due']],
    ['what a time within which goes by', 'task x "X"\n  within 3 h |', ['after', 'before', 'of'], ['engine', 'each', 'every']],
    ['what it can be before', 'task x "X"\n  within 3 h before |', ['each'], ['storage', 'engine']],
    ['which of them', 'task x "X"\n  within 3 h before each |', ['shift', 'outing', "day's"], ['storage', 'work']],
    ['what can be read', 'task x "X"\n  reads |', ['oil', 'coolant', 'engine'], ['oil-level', 'motor']],
    ['a mark', 'task x "X"\n  reads oil below |', ['low', 'full'], ['normal', 'wet']],
    ['a band', 'task x "X"\n  when coolant above |', ['normal', 'high'], ['low', 'wet']],
    ['a position of the part named before', 'task x "X"\n  with cover |', ['open', 'closed', 'is'], ['running', 'stopped', 'wet']],
    ['a position after is', 'task x "X"\n  with cover is open, motor is |', ['stopped', 'running'], ['open', 'closed']],
    ['a class of the defect', 'task x "X"\n  unless seep worse than |', ['wet', 'drops-fall'], ['open', 'low']],
    [
      'the subject of a condition',
      'task x "X"\n  when |',
      ['coolant', 'oil', 'motor', 'seep', 'machine', 'date', 'not'],
      ['dusty', 'top-up'],
    ],
    ['a place', 'task x "X"\n  takes 1 min at |', ['seat', 'left'], ['motor']],
    ['a hazard', 'task x "X"\n  beware |', ['hot-oil'], ['seep']],
    ['a supply', 'task x "X"\n  uses 6.6 L |', ['engine-oil'], ['oil']],
    ['a part in a step', 'step x "X" |', ['cover', 'motor'], ['seat']],
    ['a position in a step', 'step x "X" cover closed to |', ['open', 'closed'], ['running']],
    ['an act in an example', 'example "E"\n  2026-03-02 |', ['engine', 'oil', 'done', 'expect', 'opens'], ['every', 'due']],
    ['what is expected', 'example "E"\n  2026-03-02 expect |', ['oil-change', 'machine'], ['engine', 'done']],
    ['a state', 'example "E"\n  2026-03-02 expect oil-change |', ['due', 'clear', 'overdue', 'resting', 'coming'], ['every', 'low']],
    ['a verdict', 'example "E"\n  2026-03-02 expect machine |', ['ready', 'held', 'cannot-tell'], ['low']],
    ['nothing where a title is due', 'task x |', [], ['every', 'before', 'task']],
    ['nothing in a text', 'task x "Look at the |', [], ['engine', 'every', 'task']],
    ['nothing in a comment', 'task x "X" # every |', [], ['engine', 'every', 'month']],
  ])('%s', (_, text, wanted, unwanted) => {
    const labels = offered(text);
    expect(labels).toEqual(expect.arrayContaining([...wanted]));
    expect(labels.filter((label) => unwanted.includes(label))).toEqual([]);
  });

  test('in the header, the clauses of a header', () => {
    const { view, offset } = atCursor('schedule x "X"\n  language 1\n  |\ntask a "A" every 1 days');
    const labels = complete(view, offset).map(({ label }) => label);
    expect(labels).toEqual(expect.arrayContaining(['edition', 'fits', 'use', 'for']));
    expect(labels).not.toContain('every');
  });

  test('in the middle of a word, the word is what is replaced', () => {
    const { view, offset } = atCursor(`${machine}task x "X"\n  every 100 h of eng|`);
    expect(complete(view, offset).find(({ label }) => label === 'engine')).toMatchObject({ start: offset - 3, end: offset, sort: 'meter' });
  });

  test('in the middle of a file, what comes later does not matter', () => {
    const { view, offset } = atCursor(machine.replace('every 100 h of engine or', 'every 100 h of | or'));
    expect(complete(view, offset).map(({ label }) => label)).toContain('engine');
  });

  test('in an attachment’s own file names go without the attachment', () => {
    const text =
      'schedule mower "Mower" language 1\n  for attachment\nmeter rotor "Rotor" counts h\ntask x "X" every 1 h of rotor\ntask y "Y" every 20 h of |';
    const { view, offset } = atCursor(text);
    expect(complete(view, offset).map(({ label }) => label)).toContain('rotor');
  });
});
