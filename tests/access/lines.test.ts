/** The lines of small walk-rounds, worked by hand: what stands in each, why each step is there, and which tasks are done at all. */
import { describe, expect, test } from 'vitest';
import { stanceOnRecord, walkRound, type WalkRoundOptions } from '../../src/access/plan-walk-round.js';
import { tasksToDo } from '../../src/access/tasks-to-do.js';
import type { WalkRound } from '../../src/access/walk-round.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';
import { uncheckedGraph } from './unchecked-graph.js';

const baler = uncheckedGraph([
  'supply grease "Grease" in g',
  'supply rag "Rag" each',
  'position engine stopped, running',
  'position guard shut, open',
  'position panel fitted, off',
  'at rest engine stopped, guard shut, panel fitted',
  'at work engine running',
  'place seat "The seat"',
  'place side "The left side"',
  'walk seat to side 20 s',
  'step start "Start the engine" engine stopped to running while guard shut takes 4 s at seat back "Stop the engine" reason "It turns all else"',
  'step swing "Swing the guard up" guard shut to open takes 6 s at side caution "Heavy" reason "Nobody reaches in"',
  'step take-off "Take the panel off" panel fitted to off while guard open takes 30 s at side back "Fit the panel" needs "Socket 13" do "Two bolts"',
  'never "Guard up with the engine running" guard open and engine running',
  'task knives with panel off at side takes 2 min uses 5 g grease, 1 rag tighten "Bolts" to 40 N·m reason "Blunt knives tear"',
  'task chain with guard open at side takes 1 min uses 7 g grease calls for qualified mechanic',
  'task lamps takes 10 s',
]);

function shown(walk: WalkRound): readonly unknown[] {
  return walk.lines.map(({ title, place, seconds, total }) => [title, place, seconds, total]);
}

function lineOf(walk: WalkRound, title: string): WalkRound['lines'][number] | undefined {
  return walk.lines.find((line) => line.title === title);
}

describe('lines', () => {
  const options: WalkRoundOptions = { stance: { engine: 'running' }, place: 'seat', end: 'work' };
  const round = (): WalkRound => walkRound(baler, ['knives', 'chain', 'lamps'], options);

  test('follow one another in time, with the walks between them', () => {
    const walk = round();
    expect(shown(walk)).toEqual([
      ['Do lamps', 'seat', 10, 10],
      ['Stop the engine', 'seat', 4, 14],
      ['Go to: The left side', 'side', 20, 34],
      ['Swing the guard up', 'side', 6, 40],
      ['Do chain', 'side', 60, 100],
      ['Take the panel off', 'side', 30, 130],
      ['Do knives', 'side', 120, 250],
      ['Fit the panel', 'side', 30, 280],
      ['Bring the guard back to shut', 'side', 6, 286],
      ['Go to: The seat', 'seat', 20, 306],
      ['Start the engine', 'seat', 4, 310],
    ]);
    expect(walk.totals).toEqual({ seconds: 310, steps: 80, walking: 40, tasks: 190 });
    expect(walk.backFrom).toBe(8);
    expect(walk.lines.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
  });

  test('of steps say where the part goes, and what the step says', () => {
    const walk = round();
    expect(lineOf(walk, 'Take the panel off')).toEqual({
      kind: 'step',
      number: 6,
      title: 'Take the panel off',
      place: 'side',
      seconds: 30,
      total: 130,
      step: 'take-off',
      isBack: false,
      part: 'panel',
      from: 'fitted',
      to: 'off',
      reason: null,
      cautions: [],
      qualified: false,
      tools: ['Socket 13'],
      procedure: ['Two bolts'],
      stance: { engine: 'stopped', guard: 'open', panel: 'off' },
      leftOpen: [
        { part: 'guard', position: 'open' },
        { part: 'panel', position: 'off' },
      ],
      why: {
        enables: [
          { line: 7, by: 'condition', rule: 'panel off' },
          { line: 8, by: 'next-move', rule: '' },
        ],
        tasks: ['knives'],
        putsBack: false,
      },
    });
    expect(lineOf(walk, 'Swing the guard up')).toMatchObject({
      cautions: [{ text: 'Heavy' }],
      reason: 'Nobody reaches in',
    });
    expect(lineOf(walk, 'Stop the engine')).toMatchObject({ isBack: true, from: 'running', to: 'stopped', reason: null, step: 'start' });
    expect(walk.lines.at(-1)).toMatchObject({
      isBack: false,
      from: 'stopped',
      to: 'running',
      reason: 'It turns all else',
      leftOpen: [{ part: 'engine', position: 'running' }],
    });
  });

  test('of tasks say what they ask for and what they take', () => {
    const walk = round();
    expect(lineOf(walk, 'Do knives')).toMatchObject({
      kind: 'task',
      task: 'knives',
      needs: 'panel off',
      uses: [
        { supply: 'grease', amount: 5 },
        { supply: 'rag', amount: 1 },
      ],
      torques: [{ what: 'Bolts', written: '40 N·m' }],
      reason: 'Blunt knives tear',
      covers: [],
      broughtBy: null,
      qualified: false,
    });
    expect(lineOf(walk, 'Do lamps')).toMatchObject({
      needs: null,
      reason: null,
      torques: [],
      uses: [],
      place: 'seat',
      leftOpen: [{ part: 'engine' }],
    });
    expect(lineOf(walk, 'Go to: The left side')).toMatchObject({
      kind: 'walk',
      from: 'seat',
      cautions: [],
      qualified: false,
      tools: [],
      procedure: [],
    });
  });

  test('give a reason for each step: a condition, a rule, the next move of the part, the end', () => {
    const walk = round();
    const whys = walk.lines.flatMap((line) => (line.kind === 'step' ? [[line.number, line.why]] : []));
    expect(whys).toEqual([
      // Were the engine still running, the guard could not go up, and nothing behind it be done.
      [
        2,
        {
          enables: [
            { line: 4, by: 'never', rule: 'Guard up with the engine running' },
            { line: 5, by: 'never', rule: 'Guard up with the engine running' },
            { line: 6, by: 'never', rule: 'Guard up with the engine running' },
            { line: 7, by: 'never', rule: 'Guard up with the engine running' },
            { line: 8, by: 'never', rule: 'Guard up with the engine running' },
            { line: 11, by: 'next-move', rule: '' },
          ],
          tasks: ['knives', 'chain'],
          putsBack: false,
        },
      ],
      [
        4,
        {
          enables: [
            { line: 5, by: 'condition', rule: 'guard open' },
            { line: 6, by: 'condition', rule: 'guard open' },
            { line: 8, by: 'condition', rule: 'guard open' },
            { line: 9, by: 'next-move', rule: '' },
          ],
          tasks: ['knives', 'chain'],
          putsBack: false,
        },
      ],
      [
        6,
        {
          enables: [
            { line: 7, by: 'condition', rule: 'panel off' },
            { line: 8, by: 'next-move', rule: '' },
          ],
          tasks: ['knives'],
          putsBack: false,
        },
      ],
      [8, { enables: [], tasks: [], putsBack: true }],
      [9, { enables: [{ line: 11, by: 'condition', rule: 'guard shut' }], tasks: [], putsBack: true }],
      [11, { enables: [], tasks: [], putsBack: true }],
    ]);
  });

  test('add up to what the whole round takes along', () => {
    const walk = round();
    expect(walk.supplies).toEqual([
      { supply: 'grease', amount: 12 },
      { supply: 'rag', amount: 1 },
    ]);
    expect(walk).toMatchObject({
      tools: ['Socket 13'],
      qualified: true,
      asked: ['knives', 'chain', 'lamps'],
      end: 'work',
      outcome: 'found',
      leftOut: [],
    });
    expect(walkRound(baler, ['lamps'])).toMatchObject({ qualified: false, tools: [], supplies: [] });
  });

  test('begin where one stands: nowhere in particular costs no first walk, and a place is told', () => {
    const nowhere = walkRound(baler, ['chain', 'lamps'], {});
    expect(shown(nowhere)).toEqual([
      ['Do lamps', null, 10, 10],
      ['Swing the guard up', 'side', 6, 16],
      ['Do chain', 'side', 60, 76],
      ['Bring the guard back to shut', 'side', 6, 82],
    ]);
    expect(nowhere.start).toEqual({ stance: { engine: 'stopped', guard: 'shut', panel: 'fitted' }, place: null, breaks: [] });
    expect(walkRound(baler, ['chain'], { place: 'seat' })).toMatchObject({
      start: { place: 'seat' },
      totals: { seconds: 92, walking: 20 },
      end: 'rest',
    });
    expect(walkRound(baler, [], { place: 'moon' })).toMatchObject({ start: { place: null }, lines: [], backFrom: 1, outcome: 'found' });
  });

  test('begin with the parts where the record left them', () => {
    const left = {
      positions: new Map([
        ['guard', { position: 'open' }],
        ['panel', { position: 'off' }],
      ]),
    };
    expect(stanceOnRecord(left)).toEqual({ guard: 'open', panel: 'off' });
    expect(walkRound(baler, [], { stance: stanceOnRecord(left) }).start.stance).toEqual({ engine: 'stopped', guard: 'open', panel: 'off' });
  });

  test('say which rules the machine breaks as it stands, and bring it out of that first', () => {
    const broken = walkRound(baler, ['lamps'], { stance: { engine: 'running', guard: 'open' }, place: 'side' });
    expect(broken.start.breaks).toEqual(['Guard up with the engine running']);
    expect(shown(broken)).toEqual([
      ['Bring the guard back to shut', 'side', 6, 6],
      ['Do lamps', 'side', 10, 16],
      ['Go to: The seat', 'seat', 20, 36],
      ['Stop the engine', 'seat', 4, 40],
    ]);
  });
});

describe('a task out of reach from where the machine stands', () => {
  const graph: RuleGraph = { ...baler, access: { ...baler.access, steps: baler.access.steps.filter(({ id }) => id !== 'take-off') } };

  test('is left out, and the rest is planned; nothing leads there', () => {
    const walk = walkRound(graph, ['knives', 'lamps']);
    expect(walk.leftOut).toEqual([{ task: 'knives', because: 'out-of-reach', way: [], rule: null }]);
    expect(shown(walk)).toEqual([['Do lamps', null, 10, 10]]);
    expect(walk.asked).toEqual(['knives', 'lamps']);
  });

  const ladder = (...lines: readonly string[]): RuleGraph =>
    uncheckedGraph([
      'position key in-hand, turned',
      'position hatch shut, open',
      'at rest key in-hand, hatch shut',
      'step turn "Turn the key" key in-hand to turned while hatch shut',
      ...lines,
      'task look with hatch open, key turned',
      'task lamps',
    ]);

  test('behind a rule is told with the steps as far as they go and the rule', () => {
    const graph = ladder('step open "Open the hatch" hatch shut to open', 'never "Hatch open, key turned" hatch open and key turned');
    expect(walkRound(graph, ['look', 'lamps']).leftOut).toEqual([
      { task: 'look', because: 'out-of-reach', way: ['Turn the key', 'Open the hatch'], rule: 'Hatch open, key turned' },
    ]);
  });

  test('behind a step whose condition never holds is told with that step', () => {
    const open = 'step open "Open the hatch" hatch shut to open while key in-hand and key turned';
    expect(walkRound(ladder(open), ['look', 'lamps']).leftOut).toEqual([
      { task: 'look', because: 'out-of-reach', way: ['Turn the key', 'Open the hatch'], rule: open },
    ]);
  });

  test('though each can be reached, no order may be left: that is told as impossible', () => {
    const graph = uncheckedGraph([
      'position seal whole, cut',
      'at rest seal whole',
      'step cut "Cut the seal" seal whole to cut one way',
      'task look with seal cut',
    ]);
    expect(walkRound(graph, ['look'])).toMatchObject({ outcome: 'impossible', lines: [], leftOut: [], proof: null, backFrom: 1 });
  });
});

describe('tasks to do', () => {
  const graph = uncheckedGraph([
    'task warm "Warm the engine" takes 5 min',
    'task oil follows warm',
    'task filter follows oil',
    'task level',
    'task big covers level, filter follows warm',
    'task left',
    'task right',
    'task both "Both sides" met by left, right',
    'task sweep follows both',
  ]);
  const todo = (...asked: readonly string[]): unknown => {
    const { tasks, covered, broughtBy, after, unknown } = tasksToDo(graph, asked);
    return {
      tasks: tasks.map(({ id }) => id),
      covered: Object.fromEntries(covered),
      broughtBy: Object.fromEntries(broughtBy),
      after,
      unknown,
    };
  };
  const nothing = { covered: {}, broughtBy: {}, unknown: [] };

  test('are those asked for, in the order of the schedule', () => {
    expect(todo('right', 'left', 'moon')).toEqual({ ...nothing, tasks: ['left', 'right'], after: [[], []], unknown: ['moon'] });
  });

  test('bring along what must come first and has no timing of its own', () => {
    expect(todo('oil')).toEqual({ ...nothing, tasks: ['warm', 'oil'], broughtBy: { warm: 'oil' }, after: [[], [0]] });
    // The oil has its own: it comes first only where it is asked for.
    expect(todo('filter')).toEqual({ ...nothing, tasks: ['filter'], after: [[]] });
    expect(todo('filter', 'oil', 'warm')).toEqual({ ...nothing, tasks: ['warm', 'oil', 'filter'], after: [[], [0], [1]] });
  });

  test('leave out what another covers, which then stands in its place in the order', () => {
    expect(todo('big', 'level', 'filter', 'oil')).toEqual({
      ...nothing,
      tasks: ['warm', 'oil', 'big'],
      covered: { big: ['level', 'filter'] },
      broughtBy: { warm: 'big' },
      after: [[], [0], [0]],
    });
  });

  test('leave out what is met by others only where all of those are done', () => {
    expect(todo('both', 'left', 'right', 'sweep')).toEqual({
      ...nothing,
      tasks: ['left', 'right', 'sweep'],
      covered: { left: ['both'], right: ['both'] },
      after: [[], [], [0, 1]],
    });
    expect(todo('both', 'left')).toEqual({ ...nothing, tasks: ['left', 'both'], after: [[], []] });
  });
});
