/** What the check says of small machines whose faults can be seen by eye: where it leads, what blocks it, and what to do. */
import { describe, expect, test } from 'vitest';
import type { AccessFault } from '../../src/access/access-fault.js';
import { checkAccess } from '../../src/access/check-access.js';
import { deadEnds } from '../../src/access/dead-ends.js';
import { machineOf } from '../../src/access/machine.js';
import { machineSpace } from '../../src/access/machine-space.js';
import { outOfReach } from '../../src/access/out-of-reach.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';
import { uncheckedGraph } from './unchecked-graph.js';

/** Faults with the words of what they point at. */
function faults(graph: RuleGraph): readonly unknown[] {
  return checkAccess(graph).map(shown);
}

function shown(fault: AccessFault): unknown {
  const { at, rule, ...rest } = fault;
  return { ...rest, at: at.text, ...('rule' in fault ? { rule: rule && [rule.at.text, rule.text] } : {}) };
}

function kindsAndMessages(graph: RuleGraph): readonly string[] {
  return checkAccess(graph).map(({ kind, message }) => `${kind}: ${message}`);
}

const PIN = [
  'position pin fitted, out',
  'position lid shut, open',
  'at rest pin fitted, lid shut',
  'step drop-pin "Drop the pin" pin fitted to out one way',
  'step open-lid "Open the lid" lid shut to open while pin fitted',
];

describe('a dead end', () => {
  test('where the step back needs what can no longer be had names that step', () => {
    const fetch = 'step fetch-pin "Fetch the pin" pin out to fitted while lid open one way';
    expect(faults(uncheckedGraph([...PIN, fetch]))).toEqual([
      {
        kind: 'dead-end',
        at: 'step drop-pin "Drop the pin" pin fitted to out one way',
        message: 'After "Drop the pin" there is no way back to rest.',
        way: ['Drop the pin', 'blocked: Fetch the pin'],
        help: 'Let the step back be done in this stance, or keep the machine from getting into it.',
        rule: [fetch, '"Fetch the pin" cannot be done then'],
      },
    ]);
  });

  test('where the step back would break a rule names the rule, and the whole way there', () => {
    const never = 'never "Pin in under an open lid" pin fitted and lid open';
    const graph = uncheckedGraph([
      'position pin fitted, out',
      'position lid shut, open',
      'at rest pin fitted, lid shut',
      'step pull-pin "Pull the pin" pin fitted to out back "Push the pin fitted"',
      'step open-lid "Open the lid" lid shut to open while pin out one way',
      'step shut-lid "Shut the lid" lid open to shut while pin fitted one way',
      'never "Pin in and out" pin fitted and pin out',
      never,
    ]);
    expect(faults(graph)).toStrictEqual([
      {
        kind: 'dead-end',
        at: 'step open-lid "Open the lid" lid shut to open while pin out one way',
        message: 'After "Open the lid" there is no way back to rest.',
        way: ['Pull the pin', 'Open the lid', 'blocked: Push the pin fitted'],
        help: 'Let the step back be done in this stance, or keep the machine from getting into it.',
        rule: [never, 'the rule "Pin in under an open lid"'],
      },
    ]);
  });

  test('that nothing leads out of asks for a step, and is told once, by the shortest way into it', () => {
    const graph = uncheckedGraph([
      'position lamp off, on',
      'position seal whole, cut',
      'at rest lamp off, seal whole',
      'step light "Light the lamp" lamp off to on',
      'step cut "Cut the seal" seal whole to cut one way',
      'task look with lamp on, seal cut',
      'task read with lamp on or seal cut',
    ]);
    expect(faults(graph)).toStrictEqual([
      {
        kind: 'dead-end',
        at: 'step cut "Cut the seal" seal whole to cut one way',
        message: 'After "Cut the seal" there is no way back to rest.',
        way: ['Cut the seal'],
        help: 'Give the step a way back, or add a step that leads out of it.',
      },
    ]);
  });

  test('is not told of parts that were not gone through to the end', () => {
    const turns = ['p1', 'p2', 'p3', 'p4'].map((to, from) => `step to-${to} "Turn to ${to}" tap p${from} to ${to} one way`);
    const machine = machineOf(uncheckedGraph(['position tap p0, p1, p2, p3, p4', 'at rest tap p0', ...turns]));
    expect(deadEnds(machine, machineSpace(machine, [], 2), 100)).toEqual([]);
    expect(deadEnds(machine, machineSpace(machine, [], 5), 100)).toHaveLength(1);
  });

  test('looks that find what is in the way are shared evenly among the dead ends', () => {
    const pin = (name: string): readonly string[] => [
      `position pin-${name} fitted, out`,
      `position lid-${name} shut, open`,
      `step drop-${name} "Drop" pin-${name} fitted to out one way`,
      `step open-${name} "Open" lid-${name} shut to open while pin-${name} fitted`,
      `step fetch-${name} "Fetch" pin-${name} out to fitted while lid-${name} open one way`,
    ];
    const one = uncheckedGraph([...pin('a'), 'at rest pin-a fitted, lid-a shut']);
    const two = uncheckedGraph([...pin('a'), ...pin('b'), 'at rest pin-a fitted, lid-a shut, pin-b fitted, lid-b shut']);
    const blocked = (graph: RuleGraph, looks: number): number => {
      const machine = machineOf(graph);
      return deadEnds(machine, machineSpace(machine, [], 100), looks).filter(({ rule }) => rule !== undefined).length;
    };
    const enough = [1, 2, 3, 4, 5, 6, 7, 8].find((looks) => blocked(one, looks) === 1) ?? 0;
    expect(enough).toBeGreaterThan(1);
    expect(blocked(two, 2 * enough)).toBe(2);
    expect(blocked(two, 2 * enough - 1)).toBe(0);
  });
});

describe('a stance out of reach', () => {
  const parts = ['position pin fitted, out', 'position lid shut, open', 'at rest pin fitted, lid shut'];
  const more = (part: string): readonly string[] => [`position ${part} off, on, hot`, `at rest pin fitted, lid shut, ${part} off`];

  test('behind a step whose own condition fails names the step, and how far one gets', () => {
    const open = 'step open-lid "Open the lid" lid shut to open while pin fitted and pin out';
    const graph = uncheckedGraph([
      ...parts,
      'step pull-pin "Pull the pin" pin fitted to out while lid shut',
      open,
      'task look with lid open, pin out',
    ]);
    expect(faults(graph)).toStrictEqual([
      {
        kind: 'out-of-reach',
        at: 'task look "Do look" every 50 h of hours with lid open, pin out',
        message: '`look` needs a stance that cannot be reached from rest: "Open the lid" cannot be done.',
        way: ['Pull the pin', 'blocked: Open the lid'],
        help: 'Change the rule or the step that blocks the way, or add a step that leads round it.',
        rule: [open, '"Open the lid" needs what cannot be had on the way'],
      },
    ]);
  });

  test('that a rule forbids names the rule; a rule about less of it does not', () => {
    const never = 'never "Lid open with the pin fitted" (lid open and pin fitted) or lamp hot';
    const graph = uncheckedGraph([
      ...parts.slice(0, 2),
      ...more('lamp'),
      'never "Lamp on under an open lid, pin out" lid open and lamp on and pin out',
      never,
      'task look with lid open, pin fitted',
    ]);
    expect(faults(graph)).toStrictEqual([
      {
        kind: 'out-of-reach',
        at: 'task look "Do look" every 50 h of hours with lid open, pin fitted',
        message: '`look` needs a stance that a rule forbids.',
        way: [],
        help: 'Ask for another stance, or change the rule.',
        rule: [never, 'the rule "Lid open with the pin fitted"'],
      },
    ]);
  });

  test('is missed in all its alternatives: where a rule forbids one of two, it is a step that is missing', () => {
    const either = 'task look with (lid open and pin fitted) or (lid open and pin out)';
    const [fault] = checkAccess(uncheckedGraph([...parts, 'never "Lid open, pin fitted" lid open and pin fitted', either]));
    expect(fault?.message).toBe('`look` needs a stance that no steps lead to.');
  });

  test('that asks for two positions of a part at a time says so', () => {
    expect(
      faults(uncheckedGraph([...parts, 'never "Lid open, pin fitted" lid open and pin fitted', 'task look with lid open, lid shut'])),
    ).toMatchObject([
      {
        message: '`look` needs a stance that no steps lead to.',
        help: 'No steps lead there from rest: it asks for two positions of one part at a time, or for a position that there is not.',
      },
    ]);
  });

  test('names the part that no step brings there, not one that is there or can be brought', () => {
    const graph = uncheckedGraph([
      ...parts.slice(0, 2),
      ...more('lamp'),
      'step pull "Pull" pin fitted to out',
      'task look with lid shut, pin out, not lamp off',
    ]);
    expect(faults(graph)).toMatchObject([{ help: 'No steps lead there from rest: no step brings `lamp` to `on`.' }]);
  });

  test('asks for a step where each part can be brought there, but not from where it rests', () => {
    const turn = 'step turn "Turn" lamp on to hot one way';
    const graph = uncheckedGraph([...parts.slice(0, 2), ...more('lamp'), turn, 'task look with lamp hot']);
    expect(faults(graph)).toMatchObject([
      { message: '`look` needs a stance that no steps lead to.', help: 'No steps lead there from rest: a step is missing.' },
    ]);
  });

  test('is none of a machine without parts', () => {
    const graph = uncheckedGraph(['task look']);
    expect(checkAccess({ ...graph, access: { ...graph.access, work: {} } })).toEqual([]);
    expect(checkAccess(graph)).toEqual([]);
  });

  test('may be the stance at work; it is shown at the first part', () => {
    const graph = uncheckedGraph([...parts, 'at work lid open', 'task look']);
    expect(faults(graph)).toStrictEqual([
      {
        kind: 'out-of-reach',
        at: 'position pin fitted, out',
        message: '`at work` needs a stance that no steps lead to.',
        way: [],
        help: 'No steps lead there from rest: no step brings `lid` to `open`.',
      },
    ]);
  });

  test('past so many looks is told without what blocks it; the looks are shared among the tasks that are lost', () => {
    const open = 'step open-lid "Open the lid" lid shut to open while pin fitted and pin out';
    const lost = (tasks: readonly string[], looks: number): readonly AccessFault[] => {
      const machine = machineOf(uncheckedGraph([...parts, open, 'task there with lid shut', ...tasks]));
      return outOfReach(machine, machineSpace(machine, [], 100), looks);
    };
    const [one, two] = [['task a with lid open'], ['task a with lid open', 'task b with lid open']];
    const enough = [1, 2, 3, 4, 5].find((looks) => lost(one, looks)[0]?.rule !== undefined) ?? 0;
    expect(enough).toBeGreaterThan(1);
    expect(lost(two, 2 * enough).filter(({ rule }) => rule !== undefined)).toHaveLength(2);
    expect(lost(two, 2 * enough - 1).map(shown)).toEqual(
      ['a', 'b'].map((task) => ({
        kind: 'out-of-reach',
        at: `task ${task} "Do ${task}" every 50 h of hours with lid open`,
        message: `\`${task}\` needs a stance that cannot be reached from rest.`,
        way: [],
        help: 'Ask for another stance, or change the rules and steps that lead there.',
      })),
    );
  });
});

describe('what cannot be worked with', () => {
  const lines = [
    'position lid shut, open',
    'at rest lid shut',
    'place seat "Seat"',
    'place nose "Nose"',
    'place rear "Rear"',
    'walk seat to rear 5 s',
    'step open-lid "Open the lid" lid shut to open while lid shut at seat',
    'never "Not with the lid open" lid open',
    'task look with lid shut at nose',
  ];
  const graph = uncheckedGraph(lines);
  /** A node that speaks of hours, not of positions. */
  const hours = graph.tasks[0]?.trigger ?? -1;
  const { access, tasks } = graph;
  const help = 'Say it with fewer alternatives, of positions alone.';
  const message = (name: string): string =>
    `The stance that \`${name}\` asks for cannot be worked with: it is too tangled, or speaks of more than positions.`;
  const noWalk = {
    kind: 'no-way-to-walk',
    at: 'task look "Do look" every 50 h of hours with lid shut at nose',
    message: 'No walk leads from `seat` to `nose`, where `look` is done.',
    way: [],
    help: 'State one: `walk seat to nose 10 s`. Nobody walks through a place that is under a part.',
  };

  test.each([
    ['a step', { access: { ...access, steps: access.steps.map((step) => ({ ...step, while: hours })) } }, 'open-lid', lines[6]],
    [
      'a never-rule',
      { access: { ...access, nevers: access.nevers.map((never) => ({ ...never, condition: hours })) } },
      'Not with the lid open',
      lines[7],
    ],
    ['a task', { tasks: tasks.map((task) => ({ ...task, stance: hours })) }, 'look', noWalk.at],
  ])('by %s is told first, and then where no walk leads', (_, change, name, at) => {
    const tangled = { kind: 'tangled-condition', at, message: message(name), way: [], help };
    // A rule that cannot be worked with forbids everything, so that the machine at rest breaks it too.
    const found = faults({ ...graph, ...change });
    expect(found[0]).toEqual(tangled);
    expect(found.at(-1)).toEqual(noWalk);
    expect(found.filter((fault) => (fault as AccessFault).kind === 'forbidden-from-the-start')).toHaveLength(
      name === 'Not with the lid open' ? 1 : 0,
    );
  });

  test('nothing of that is said where all of it can', () => {
    expect(kindsAndMessages(graph)).toEqual([`no-way-to-walk: ${noWalk.message}`, 'idle-step: `open-lid` can never be done.']);
  });
});

describe('places with no walk between them', () => {
  test('are told once each, from the first place that is used', () => {
    const places = ['seat', 'nose', 'rear', 'roof'].map((place) => `place ${place} "The ${place}"`);
    const graph = uncheckedGraph([
      'position lid shut, open',
      'position tap shut, open',
      'at rest lid shut, tap shut',
      ...places,
      'walk seat to rear 5 s',
      'step open-tap "Open the tap" tap shut to open',
      'step open-lid "Open the lid" lid shut to open at rear',
      'task look with lid open at nose',
      'task again with tap open at nose',
      'task sit at seat',
      'task climb at roof',
    ]);
    expect(kindsAndMessages(graph)).toEqual([
      'no-way-to-walk: No walk leads from `rear` to `nose`, where `look` is done.',
      'no-way-to-walk: No walk leads from `rear` to `roof`, where `climb` is done.',
    ]);
  });
});

describe('a machine that breaks its own rule', () => {
  const lines = ['position lid shut, open', 'step open-lid "Open the lid" lid shut to open', 'task look with lid open'];

  test('at rest is told once where nothing is said of work', () => {
    expect(kindsAndMessages(uncheckedGraph([...lines, 'at rest lid shut', 'never "Lid shut" lid shut']))).toEqual([
      'forbidden-from-the-start: The machine at rest breaks the rule "Lid shut".',
    ]);
  });

  test('at work alone is told for that', () => {
    expect(kindsAndMessages(uncheckedGraph([...lines, 'at rest lid shut', 'at work lid open', 'never "Lid open" lid open']))).toEqual([
      'forbidden-from-the-start: The machine at work breaks the rule "Lid open".',
    ]);
  });
});

describe('more stances than are gone through', () => {
  /** Parts of `positions` positions each, one after the other; a rule ties them all together. */
  const chain = (parts: number, positions: number): readonly string[] => {
    const names = Array.from({ length: positions }, (_, index) => `p${index}`);
    const all = Array.from({ length: parts }, (_, part) => `v${part}`);
    return [
      'position hood shut, open',
      ...all.map((part) => `position ${part} ${names.join(', ')}`),
      `at rest hood shut, ${all.map((part) => `${part} p0`).join(', ')}`,
      ...all.flatMap((part) => names.slice(1).map((to, index) => `step ${part}-${to} "Turn ${part} to ${to}" ${part} p${index} to ${to}`)),
      `never "All at the end" ${all.map((part) => `${part} p${positions - 1}`).join(' and ')}`,
      'step open-hood "Open the hood" hood shut to open',
      'task look with hood open',
    ];
  };

  test.each([
    [6, 6, '`v0`, `v1`, `v2`, `v3`, `v4`, `v5`'],
    [7, 5, '`v0`, `v1`, `v2`, `v3`, `v4` and 2 more'],
  ])('are told with the parts that have them: %i parts', (parts, positions, named) => {
    expect(faults(uncheckedGraph(chain(parts, positions)))).toEqual([
      {
        kind: 'too-many-stances',
        at: 'position v0 p0, p1, p2, p3, p4' + (positions === 6 ? ', p5' : ''),
        message: `Of the moving parts, ${named} have more than 20,000 stances together: whether what needs them can be reached was not checked.`,
        way: [],
        help: 'Tie the parts together with `while` conditions, or leave out parts that no task asks about.',
      },
    ]);
  });
});
