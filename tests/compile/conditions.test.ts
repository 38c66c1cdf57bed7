import { describe, expect, test } from 'vitest';
import { graphOfText, triggerOf } from './compile-files.js';

const machine = `
meter engine "Hour meter" counts h
gauge coolant "Coolant temperature" reads °C
  normal 75 to 90
  warm above 90 to 97
dipstick oil "Engine oil" low to full is 1.2 L
defect seep "Seep" classes wet, drops
duty dusty "Dusty"
attachment mower "Mower"
event knock "Knock"
position guard closed, open
at rest guard closed
task other "Other" every 50 h of engine
`;

function when(condition: string): unknown {
  const node = triggerOf(graphOfText(`${machine}task t "T" when ${condition}`), 't') as { condition: unknown };
  return node.condition;
}

describe('conditions', () => {
  test('levels are in the unit of the gauge: 212 °F is 100 °C, and a rise of 18 °F is one of 10 °C (NIST SP 811 App. B)', () => {
    expect(when('coolant above 212 °F')).toEqual({
      kind: 'compare',
      instrument: { is: 'gauge', id: 'coolant' },
      range: { from: 100, fromIncluded: false, toIncluded: false },
    });
    expect(when('coolant climbs 18 °F within 20 min')).toMatchObject({ kind: 'trend', direction: 'climbs', by: 10, withinMinutes: 20 });
  });

  test('the name of a band stands for its edge', () => {
    expect(when('coolant above normal')).toMatchObject({ range: { from: 90, fromIncluded: false } });
    expect(when('coolant below normal')).toMatchObject({ range: { to: 75, toIncluded: false } });
    expect(when('coolant at least normal')).toMatchObject({ range: { from: 75, fromIncluded: true } });
    // What lies below `warm` includes 90, because `warm` does not.
    expect(when('coolant below warm')).toMatchObject({ range: { to: 90, toIncluded: true } });
    expect(when('coolant is normal')).toMatchObject({ range: { from: 75, fromIncluded: true, to: 90, toIncluded: true } });
  });

  test('on a dipstick low is 0 and full is 1; a volume is so much above low', () => {
    expect(when('oil below low')).toMatchObject({ range: { to: 0, toIncluded: false } });
    expect(when('oil at most 0.6 L')).toMatchObject({ range: { to: 0.5, toIncluded: true } });
  });

  test('on a meter a level is in ticks', () => {
    expect(when('engine at least 100 h')).toMatchObject({ range: { from: 3_600_000, fromIncluded: true } });
  });

  test('what a word means is told from its subject', () => {
    expect(when('guard open')).toEqual({ kind: 'position-is', part: 'guard', position: 'open' });
    expect(when('mower is on')).toEqual({ kind: 'attachment-is', attachment: 'mower', on: true });
    expect(when('seep is open')).toEqual({ kind: 'defect-is', defect: 'seep', open: true });
    expect(when('seep is drops')).toEqual({ kind: 'defect-is', defect: 'seep', open: true, class: 'drops' });
    expect(when('seep worse than wet')).toEqual({ kind: 'defect-is', defect: 'seep', open: true, worseThan: 'wet' });
    expect(when('in dusty')).toEqual({ kind: 'duty-is', duty: 'dusty' });
  });

  test('and binds tighter than or; not', () => {
    expect(when('in dusty or guard open and not mower is on')).toMatchObject({
      kind: 'or',
      parts: [{ kind: 'duty-is' }, { kind: 'and', parts: [{ kind: 'position-is' }, { kind: 'not' }] }],
    });
  });

  test('recent, age, idle, season', () => {
    expect(when('coolant read within 7 days')).toMatchObject({
      kind: 'recent',
      what: { is: 'read' },
      within: { on: 'calendar', unit: 'days', count: 7 },
    });
    expect(when('knock happened within 30 min')).toMatchObject({ within: { on: 'calendar', unit: 'minutes', count: 30 } });
    expect(when('other done within 10 h of engine')).toMatchObject({
      what: { is: 'done', task: 'other' },
      within: { on: 'meter', ticks: 360_000 },
    });
    expect(when('machine older than 10 years')).toMatchObject({ kind: 'age', span: { unit: 'months', count: 120 } });
    expect(when('machine idle for 48 h')).toMatchObject({ kind: 'idle', span: { unit: 'minutes', count: 2880 } });
    expect(when('date from 1 November to 28 February')).toMatchObject({
      kind: 'season',
      from: { month: 11, day: 1 },
      to: { month: 2, day: 28 },
    });
  });
});
