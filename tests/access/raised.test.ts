/** Who can be led under something that hangs in the air: the check, and what a walk-round lets anyone do. */
import { describe, expect, test } from 'vitest';
import { checkAccess } from '../../src/access/check-access.js';
import { clearOfAloft, machineOf, undersOf } from '../../src/access/machine.js';
import { walkRound } from '../../src/access/plan-walk-round.js';
import { holds } from '../../src/access/stance-set.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';
import { uncheckedGraph } from './unchecked-graph.js';

const LIFT = 'step lift "Lift" arm low to high';
const PROP = 'step prop "Prop" arm high to propped';

function loader(...more: readonly string[]): RuleGraph {
  return uncheckedGraph([
    'position lid shut, open',
    'position arm low, high aloft, propped',
    `at rest arm low, lid shut${more.some((line) => line.startsWith('position boom')) ? ', boom low' : ''}`,
    'place pit "The pit" under arm',
    'place bench "The bench"',
    'step open-lid "Open the lid" lid shut to open',
    'task look with lid open',
    'task rams with arm propped',
    ...more,
  ]);
}

function raised(graph: RuleGraph): readonly unknown[] {
  return checkAccess(graph).flatMap(({ kind, message, way, help, at }) =>
    kind === 'under-raised-part' ? [[message, way, help, at.text]] : [],
  );
}

const message = (id: string): string => `\`${id}\` can put a person under or in \`arm\` while it is raised and not blocked.`;
const ASK = 'Ask for `arm low` or `arm propped`; or, where it has to be so, say why: `under arm meant "…"`.';

describe('work under a raised part', () => {
  test.each([
    ['by a task that does not say how it stands', 'task pins under arm', ['Lift', 'Do pins']],
    [
      'by one that lets it be raised',
      'task pins with lid open and (arm high or arm propped) under arm',
      ['Open the lid', 'Lift', 'Do pins'],
    ],
  ])('is refused %s', (_, task, way) => {
    const graph = loader(LIFT, PROP, task);
    const [fault] = raised(graph) as [readonly [string, readonly string[], string, string]];
    expect([fault[0], fault[2]]).toEqual([message('pins'), ASK]);
    expect([...fault[1]].sort()).toEqual([...way].sort());
    expect(fault[1].at(-1)).toBe('Do pins');
    expect(raised(graph)).toHaveLength(1);
  });

  test.each([
    ['where the part must be down or propped', 'task pins with not arm high under arm'],
    ['where it is meant', 'task pins with arm high under arm meant "A pit with a steel roof"'],
    ['beside it', 'task pins with arm high at bench'],
  ])('is let pass %s', (_, task) => {
    expect(raised(loader(LIFT, PROP, task))).toEqual([]);
  });

  test('is let pass where the part can never be raised', () => {
    expect(raised(loader('step sink "Sink" arm low to propped', 'task pins under arm'))).toEqual([]);
  });

  test('is told by the place that is under it', () => {
    const at = 'task pins "Do pins" every 50 h of hours at pit';
    expect(raised(loader(LIFT, PROP, 'task pins at pit'))).toEqual([
      [
        message('pins'),
        ['Lift', 'Do pins'],
        'Ask for `arm low` or `arm propped`; `pit` is under it; or, where it has to be so, say why: `under arm meant "…"`.',
        at,
      ],
    ]);
    expect(raised(loader(LIFT, PROP, 'task pins at pit under arm meant "With a steel roof"'))).toEqual([]);
  });

  test('does not blame a place that is under another part', () => {
    const graph = loader(LIFT, PROP, 'position boom low, high aloft', 'place ditch "The ditch" under boom', 'task pins at ditch under arm');
    expect(raised(graph)).toEqual([
      [message('pins'), ['Lift', 'Do pins'], ASK, 'task pins "Do pins" every 50 h of hours at ditch under arm'],
    ]);
  });

  test('is refused to a step that moves another part', () => {
    const step = 'step catch "Set the catch" lid open to shut under arm one way';
    expect(raised(loader(LIFT, PROP, step))).toEqual([[message('catch'), ['Lift', 'Set the catch'], ASK, step]]);
    expect(raised(loader(LIFT, PROP, `${step} while arm low`))).toEqual([]);
    expect(raised(loader(LIFT, PROP, 'step catch "Set the catch" lid shut to open under arm while arm high'))).toEqual([
      [message('catch'), ['Lift', 'Set the catch'], ASK, 'step catch "Set the catch" lid shut to open under arm while arm high'],
    ]);
  });

  test('is refused to a step that moves the part itself to where it is raised, or from there', () => {
    expect(raised(loader(LIFT, `${PROP} under arm`))).toEqual([[message('prop'), ['Lift', 'Prop'], ASK, `${PROP} under arm`]]);
    expect(raised(loader(`${LIFT} under arm`, PROP))).toEqual([[message('lift'), ['Lift'], ASK, `${LIFT} under arm`]]);
    expect(raised(loader(`${LIFT} under arm meant "From the seat"`, PROP))).toEqual([]);
    expect(raised(loader(LIFT, PROP, 'step sink "Sink" arm low to propped under arm'))).toEqual([]);
  });

  test('is never planned: a person is under a part only where it is down or propped', () => {
    const graph = loader(LIFT, PROP, 'task pins at pit', 'task rods with arm high');
    const walk = walkRound(graph, ['pins', 'rods', 'rams']);
    const stands = walk.lines.flatMap((line) => (line.kind === 'task' ? [[line.task, line.stance['arm']]] : []));
    expect(Object.fromEntries(stands)).toMatchObject({ rods: 'high', rams: 'propped' });
    expect(Object.fromEntries(stands)['pins']).not.toBe('high');
    // From where it hangs it has to come down, or onto its props, first.
    expect(walkRound(graph, ['pins'], { stance: { arm: 'high' } }).lines.map(({ title }) => title)[0]).toBe('Bring the arm back to low');
  });

  test("is not planned by a step either, neither another part's nor its own", () => {
    const other = uncheckedGraph([
      'position arm low, high aloft',
      'position lid shut, open',
      'at rest arm low, lid shut',
      'at work arm high',
      LIFT,
      'step shut-lid "Shut the lid" lid open to shut under arm one way',
      'task look with lid open',
    ]);
    const round = walkRound(other, ['look'], { stance: { arm: 'high', lid: 'open' }, end: 'work' });
    expect(round.lines.map(({ title }) => title)).toEqual(['Bring the arm back to low', 'Do look', 'Shut the lid', 'Lift']);
    const own = loader(LIFT, `${PROP} under arm`);
    expect(walkRound(own, ['rams'])).toMatchObject({ leftOut: [{ task: 'rams', because: 'out-of-reach' }] });
    const up = loader(`${LIFT} under arm`, PROP, 'task rods with arm high');
    expect(walkRound(up, ['rods'])).toMatchObject({ leftOut: [{ task: 'rods', because: 'out-of-reach' }] });
    const sunk = loader(LIFT, PROP, 'step sink "Sink" arm low to propped under arm');
    expect(walkRound(sunk, ['rams']).lines[0]).toMatchObject({ title: 'Sink' });
    const meant = loader(LIFT, `${PROP} under arm meant "From the side"`);
    expect(walkRound(meant, ['rams'])).toMatchObject({ leftOut: [], outcome: 'found' });
  });
});

describe('what a site puts a person under', () => {
  const graph = loader(
    LIFT,
    PROP,
    'task a under arm at pit',
    'task b at pit',
    'task c at bench',
    'task d under arm meant "So" at pit',
    'task e under lid',
  );
  const site = (id: string) => graph.tasks.find((task) => task.id === id)?.site ?? graph.access.steps[0]?.site;

  test('is what it says and what its place lies under, once, without what is meant', () => {
    const unders = (id: string): readonly string[] => {
      const found = site(id);
      return found === undefined ? [] : undersOf(graph, found);
    };
    expect(['a', 'b', 'c', 'd', 'e'].map(unders)).toEqual([['arm'], ['arm'], [], [], ['lid']]);
  });

  test('is clear of it in every stance in which the part is down or propped', () => {
    const found = site('a');
    if (found === undefined) throw new Error('no such task');
    const clear = clearOfAloft(machineOf(graph), found);
    expect([0, 1, 2].map((arm) => holds(clear, [0, arm]))).toEqual([true, false, true]);
  });
});
