import { describe, expect, test } from 'vitest';
import { assess } from '../../src/assess/assess.js';
import type { Assessment } from '../../src/assess/assessment.js';
import { renderDueList } from '../../src/render/due-list.js';
import { NO_PAINT, plainStyle } from '../../src/render/style.js';
import { readTimeline } from '../../src/history/read-timeline.js';
import { columns } from '../../src/render/wrap.js';
import { compileText } from '../support/compile-text.js';
import { done, type Happenings, history, meters, moment, reads } from '../support/history.js';

const graph = compileText(`
meter engine "Hour meter" counts h
dipstick level "Engine oil dipstick" low to full is 1.2 L
task oil "Change the engine oil and filter"  every 100 h of engine or 12 months, whichever first
task grease "Grease the pivots"  every 10 h of engine
task belt "Renew the belt"  every 400 h of engine
task paint "Touch up the paint"  every 24 months
task daily "Check the engine oil level"  before each day's work
  reads level  below low hold "Do not start the engine."  low to full fine  above full caution "Overfilled."
task bolts "Look at the bolts"  every 12 calendar months
`);
const entries = history(
  ['2026-03-02', done(['oil', 'grease', 'bolts'], { engine: 1200 })],
  ['2026-05-10', done('paint')],
  ['2026-05-13', meters({ engine: 1304 })],
);
const assessment = assess(graph, entries, moment('2026-05-14 07:00'), { intent: { outing: { hours: 3 } } });

describe('the due list', () => {
  test('opens with the verdict, then goes from the gravest to the least', () => {
    expect(renderDueList(assessment, graph, plainStyle(96), { machine: 'The old one' })).toMatchInlineSnapshot(`
      "The old one: Test machine, on 14 May 2026 at 07:00

      Work due first.

      █ Overdue (2)
        Change the engine oil and      4 h past      1300 h of engine   every 100 h of engine
        filter
        Grease the pivots              94 h past     1210 h of engine   every 10 h of engine

      ■ Due (1)
        Check the engine oil level           14 May 2026 at 07:00  before each day's work

      ¿ Unrecorded (1)
        Renew the belt                                   no record that it was ever done

      2 clear."
    `);
  });

  test('says of a reading that is not believed what it showed, where the history is at hand, and else which entry it is', () => {
    const now = moment('2026-05-14 07:00');
    const risen = history(['2026-05-12', meters({ engine: 1300 })], ['2026-05-13', meters({ engine: 2300 })]);
    const told = (timeline?: ReturnType<typeof readTimeline>): string =>
      renderDueList(assess(graph, risen, now), graph, plainStyle(140), timeline === undefined ? {} : { timeline });
    expect(told(readTimeline(risen, graph, now))).toContain(
      '• Engine 2300 h on 13 May 2026: it rises faster than time passed, and it is not used until you confirm or void it. [e2]',
    );
    expect(told()).toContain('• e2: meter `engine` rises too fast');
  });

  test('stacks what does not fit beside each other', () => {
    expect(renderDueList(assessment, graph, plainStyle(44))).toMatchInlineSnapshot(`
      "Test machine, on 14 May 2026 at 07:00

      Work due first.

      █ Overdue (2)
        Change the engine oil and filter
            4 h past; 1300 h of engine; every
            100 h of engine
        Grease the pivots
            94 h past; 1210 h of engine; every
            10 h of engine

      ■ Due (1)
        Check the engine oil level
            14 May 2026 at 07:00; before each
            day's work

      ¿ Unrecorded (1)
        Renew the belt
            no record that it was ever done

      2 clear."
    `);
  });

  test('says why the machine is held before anything else', () => {
    const low = assess(
      graph,
      [...entries, ...history(['2026-05-14 06:30', reads({ level: 'below-low' })]).map((entry) => ({ ...entry, id: 'low' }))],
      moment('2026-05-14 07:00'),
    );
    const [, verdict = ''] = renderDueList(low, graph, plainStyle(80)).split('\n\n');
    expect(verdict).toBe('Held: do not work the machine.\n• “Do not start the engine.” (Engine oil dipstick)');
  });

  test('says of a caution which reading or defect it comes from', () => {
    const seeping = compileText(`
dipstick level "Engine oil dipstick" low to full is 1.2 L
defect seep "Seep at the sump"  classes wetness, drops
  wetness caution "Watch the level."
task daily "Check the engine oil level"  before each day's work
  reads level  below low hold "Do not start the engine."  low to full fine  above full caution "Overfilled."
`);
    const noted = assess(
      seeping,
      history(
        ['2026-05-14 06:30', reads({ level: 'above-full' })],
        ['2026-05-14 06:40', { kind: 'defect-opened', defect: 'seep', class: 'wetness' }],
      ),
      moment('2026-05-14 07:00'),
    );
    const [, verdict = ''] = renderDueList(noted, seeping, plainStyle(80)).split('\n\n');
    expect(verdict.split('\n').slice(1)).toEqual([
      '• Caution: “Watch the level.” (Seep at the sump, wetness)',
      '• Caution: “Overfilled.” (Engine oil dipstick)',
    ]);
  });

  test('says that hours were worked which nobody noted, where a check is called clear for want of them', () => {
    const told = (...more: Happenings): string => {
      const known = history(['2026-05-10', done(['daily', 'oil', 'grease'], { engine: 1200 })], ...more);
      const now = moment('2026-05-14 07:00');
      const timeline = readTimeline(known, graph, now);
      const answer = assess(graph, known, now, { intent: { outing: { hours: 3 } } });
      return renderDueList(answer, graph, plainStyle(400), { timeline });
    };
    const rise = ['2026-05-13', meters({ engine: 1204 })] as const;
    expect(told(rise)).toContain('The hour meter has risen by 4 h since 10 May 2026, but no work is on record since');
    expect(told()).not.toContain('has risen');
    expect(told()).not.toMatch(/\n\n\n|\n$/);
    expect(told(rise, ['2026-05-13', done('daily')])).not.toContain('has risen');
    expect(told(['2026-05-12', { kind: 'outing', hours: 4 }], rise)).not.toContain('has risen');
  });

  test('says what is not known when it cannot tell', () => {
    const blind = assess(
      graph,
      history(['2026-05-14 06:30', done(['daily', 'oil', 'grease', 'belt', 'paint', 'bolts'], { engine: 5 })]),
      moment('2026-05-14 07:00'),
    );
    expect(renderDueList(blind, graph, plainStyle(80))).toContain(
      'Cannot tell: something that nobody knows could be a reason to hold the machine.\n• “Do not start the engine.” (the engine oil dipstick has never been read)',
    );
  });

  test.each([40, 60, 80, 100, 140])('keeps to %i columns', (width) => {
    for (const line of renderDueList(assessment, graph, plainStyle(width)).split('\n')) expect(columns(line)).toBeLessThanOrEqual(width);
  });

  test('dresses words without changing a letter, and needs no colour to be understood', () => {
    const bold = (text: string): string => `\u001b[1m${text}\u001b[22m`;
    const painted = renderDueList(assessment, graph, {
      width: 96,
      unicode: true,
      paint: { ...NO_PAINT, strong: bold, state: (_state, text) => bold(text) },
    });
    expect(painted).toContain('\u001b[1m');
    // eslint-disable-next-line no-control-regex -- the escapes that the test put in
    expect(painted.replace(/\u001b\[\d+m/g, '')).toBe(renderDueList(assessment, graph, plainStyle(96)));
  });

  test('is ASCII where it has to be, but for the words of the author', () => {
    expect(renderDueList(assessment, graph, plainStyle(80, false)).replace(/[“”]/g, '"')).toMatch(/^[\x20-\x7e\n]*$/);
  });

  test('does not let a title drive the terminal', () => {
    const hostile: Assessment = { ...assessment, setAside: [{ entry: 'e\u001b]0;x\u0007', why: 'because\n\u001b[2J' }] };
    // eslint-disable-next-line no-control-regex -- what must not be there
    expect(renderDueList(hostile, graph, plainStyle(80))).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f]/);
  });
});
