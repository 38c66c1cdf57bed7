import { describe, expect, test } from 'vitest';
import { graphOfText, triggerOf, unfold } from './compile-files.js';

const meters = 'meter engine "Hour meter" counts h\n';

describe('tasks', () => {
  test('what a reading or a class asks for is a node in the asked task', () => {
    const graph = graphOfText(`${meters}
      dipstick oil "Oil" low to full is 1.2 L
      defect seep "Seep" classes wet, drops
        drops hold "Stop." then fill within 14 days
      task level "Level" before each day's work reads oil
        below low hold "Fill up." then fill now
        low to full fine
        above full caution "Overfilled." then drain within 5 h of engine
      task fill "Fill up" takes 5 min
      task drain "Draw off" takes 5 min`);
    expect(triggerOf(graph, 'fill')).toMatchObject({
      kind: 'any',
      parts: [
        { kind: 'asked', by: { is: 'reading', task: 'level', reads: 0, rule: 0 }, lead: { size: 0 } },
        {
          kind: 'asked',
          by: { is: 'defect', defect: 'seep', class: 'drops' },
          within: { on: 'calendar', unit: 'days', count: 14 },
          lead: { size: 1 },
        },
      ],
    });
    expect(triggerOf(graph, 'drain')).toMatchObject({ kind: 'asked', within: { on: 'meter', ticks: 180_000 } });
    expect(graph.tasks[0]?.reads[0]?.rules.map(({ range }) => range)).toEqual([
      { fromIncluded: false, to: 0, toIncluded: false },
      { from: 0, fromIncluded: true, to: 1, toIncluded: true },
      { from: 1, fromIncluded: false, toIncluded: false },
    ]);
  });

  test('covering is closed: biennial covers annual covers semiannual (as US Army services do)', () => {
    const graph = graphOfText(`task b "B" every 24 months covers a  task a "A" every 12 months covers s  task s "S" every 6 months`);
    expect(graph.tasks.map(({ id, covers }) => [id, covers])).toEqual([
      ['b', ['a', 's']],
      ['a', ['s']],
      ['s', []],
    ]);
  });

  test('a task that is named twice over is linked once', () => {
    const graph = graphOfText(
      'task a "A" every 6 months restarts b, b  follows c, b, c, b  task b "B" every 6 months  task c "C" every 6 months',
    );
    expect(graph.tasks[0]).toMatchObject({ restarts: ['b'], follows: ['c', 'b'] });
  });

  test('only if and unless are one gate', () => {
    const graph = graphOfText(
      `${meters}duty dusty "Dusty" task t "T" every 50 h of engine only if in dusty unless machine idle for 30 days`,
    );
    expect(unfold(graph, graph.tasks[0]?.gate ?? -1)).toMatchObject({
      kind: 'and',
      parts: [{ kind: 'duty-is' }, { kind: 'not', part: { kind: 'idle' } }],
    });
  });

  test("work: seconds, litres in the supply's unit, newton metres (1 lbf·ft = 1.355 817 9 N·m, NIST SP 811)", () => {
    const graph = graphOfText(`${meters}supply oil "Oil" in L supply filter "Filter" each hazard hot warning "Hot oil burns."
      task t "T" every 100 h of engine takes 1.5 min uses 6600 mL oil, 1 filter tighten "plug" to 100 lbf·ft beware hot calls for qualified mechanic do "Drain." needs "pan" reason "Soot." source "Handbook"`);
    const [task] = graph.tasks;
    expect(task?.site).toEqual({
      seconds: 90,
      under: [],
      cautions: [{ signal: 'warning', text: 'Hot oil burns.' }],
      qualified: true,
      tools: ['pan'],
      procedure: ['Drain.'],
    });
    expect(task?.uses).toEqual([
      { supply: 'oil', amount: 6.6 },
      { supply: 'filter', amount: 1 },
    ]);
    expect(task?.torques[0]?.newtonMetres).toBeCloseTo(135.58179, 5);
    expect(task?.torques[0]?.written).toBe('100 lbf·ft');
    expect(task).toMatchObject({ reason: 'Soot.', source: 'Handbook' });
  });

  test('an origin has its place and its words, folded, comments left out, quoted text kept', () => {
    const graph = graphOfText(`${meters}task t "T"\n  every 50 h # often\n    of engine\n  hold when overdue "No # work."`);
    expect(graph.nodes[0]?.origin).toEqual({ source: 0, line: 4, column: 9, text: '50 h of engine' });
    expect(graph.tasks[0]?.origin.text).toBe('task t "T" every 50 h of engine hold when overdue "No # work."');
  });

  test('whoever goes under a part says why that is meant, or nothing', () => {
    const graph = graphOfText(`position loader lowered, raised aloft, blocked aloft at rest loader lowered
      step raise "Raise" loader lowered to raised takes 1 min
      step block "Block" loader raised to blocked takes 1 min
      task a "A" every 6 months with loader lowered under loader
      task b "B" every 6 months with loader raised under loader meant "It rests on its stops."`);
    expect(graph.tasks.map(({ site }) => site.under)).toEqual([
      [{ part: 'loader' }],
      [{ part: 'loader', meant: 'It rests on its stops.' }],
    ]);
  });

  test('at work is as at rest where it says nothing else; a step can be undone unless it is one way', () => {
    const graph = graphOfText(`position engine stopped, running position guard closed, open
      at rest engine stopped, guard closed at work engine running
      step swing "Swing the guard" guard closed to open while engine stopped takes 1 min
      step start "Start" engine stopped to running one way takes 5 s
      step stop-it "Stop" engine running to stopped one way
      never "Guard open with the engine running" guard open and engine running`);
    expect(graph.access.work).toEqual({ engine: 'running', guard: 'closed' });
    expect(graph.access.steps.map(({ back }) => back !== undefined)).toEqual([true, false, false]);
  });
});
