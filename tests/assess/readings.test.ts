/** Readings (docs/meaning.md §2, §6): where the meter stood at one, and what a total rests on. */
import { describe, expect, test } from 'vitest';
import { ask } from '../support/ask.js';
import { done, type Happenings, history, meters, moment, reads } from '../support/history.js';

const machine = `meter engine "Hours" counts h
gauge coolant "Coolant" reads °C
dipstick oil "Oil" low to full is 2 L
`;

test('what a reading asks for within hours counts from those that its own entry notes, whatever else was read on that day', () => {
  const tasks = `task look "Look at the oil" every 10 days
  reads oil
    below low caution "Low." then t within 10 h of engine
    low to full fine
    above full fine
task t "Find the leak" every 1 year`;
  const low = ['2026-05-02', { kind: 'reading', readings: { oil: 'below-low' }, meters: { engine: 100 } }] as const;
  const late = ['2026-05-02', meters({ engine: 105 })] as const;
  expect(ask(machine + tasks, history(['2026-01-01', done('t')], low, late), '2026-05-03').stands()).toBe('clear 110 h');
});

describe('whether something was done within so many hours', () => {
  const lately = (meter: string, ...happened: Happenings): string =>
    ask(
      `${machine}meter out "Hours out" counts h from outings\ntask t "Task" when look done within 10 h of ${meter}\ntask look "Look" every 1 year`,
      history(...happened),
      '2026-05-20',
    ).stands();
  const look = ['2026-05-02', done('look')] as const;

  test('is unknown where nobody knows at how many it was done', () => {
    expect(lately('engine', look, ['2026-05-10', meters({ engine: 5 })])).toBe('unknown');
    expect(lately('engine', ['2026-05-01', meters({ engine: 1 })], look, ['2026-05-10', meters({ engine: 5 })])).toBe('due 2026-05-02');
  });

  test('counts from those that are stated, whatever the meter was last seen to show', () => {
    const stated = ['2026-05-02', { kind: 'stated', task: 'look', doneBy: '2026-05-02', doneAt: { engine: 90 } }] as const;
    expect(lately('engine', ['2026-04-30', meters({ engine: 85 })], stated, ['2026-05-10', meters({ engine: 99 })])).toBe('due 2026-05-02');
    expect(lately('engine', ['2026-04-30', meters({ engine: 85 })], stated, ['2026-05-10', meters({ engine: 100.1 })])).toBe('clear');
  });

  test('is so before the first outing of a meter that counts from them', () => {
    expect(lately('out', look)).toBe('due 2026-05-02');
    expect(lately('out', look, ['2026-05-03', { kind: 'outing', hours: 11 }])).toBe('clear');
  });
});

test('whether something happened within so many hours of work goes by it and the work since', () => {
  const { stands, seen } = ask(
    'event wash "Washed"\ntask t "Task" when wash happened within 3 h of work',
    history(['2026-05-02', { kind: 'event', event: 'wash' }], ['2026-05-03', { kind: 'outing', hours: 2 }]),
    '2026-05-20',
  );
  expect(stands()).toBe('due 2026-05-02');
  expect(seen('recent').entries).toEqual(['e1', 'e2']);
});

test('what is read in an outing under way counts from its start, on a meter that counts from outings too', () => {
  const tasks = `meter out "Hours out" counts h from outings
task look "Look at the oil" every 10 days
  reads oil
    below low caution "Low." then t within 10 h of out
    low to full fine
    above full fine
task t "Find the leak" every 1 year`;
  const outing = ['2026-05-02 08:00', { kind: 'outing', readings: { oil: 'below-low' } }] as const;
  const asked = ask(machine + tasks, history(['2026-01-01', done('t')], outing), '2026-05-02 10:00');
  expect(asked.seen('asked').limit).toMatchObject({ due: { ticks: 10 * 36_000 }, left: 8 * 36_000 });
});

describe('hours out are reached', () => {
  const at = (every: string, ...outings: Happenings) =>
    ask(
      `meter out "Hours out" counts h from outings\ntask t "Task" every ${every} of out`,
      history(['2026-05-01', done('t')], ...outings),
      '2026-05-20',
    ).seen('interval').reachedAt;
  const out = (when: string, more: object) => [when, { kind: 'outing', ...more }] as const;

  test('at the first minute by which so much had passed of the outing that brings them there', () => {
    expect(at('2 h', out('2026-05-02 08:00', { until: '12:00' }))).toEqual(moment('2026-05-02 10:00'));
    expect(at('more than 2 h', out('2026-05-02 08:00', { until: '12:00' }))).toEqual(moment('2026-05-02 10:01'));
    const twice = [out('2026-05-02 08:00', { until: '09:00' }), out('2026-05-03 08:00', { until: '11:00' })];
    expect(at('2 h', ...twice)).toEqual(moment('2026-05-03 09:00'));
    expect(at('1 h', ...twice)).toEqual(moment('2026-05-02 09:00'));
  });

  test('at its end where minutes do not tell', () => {
    expect(at('2 h', out('2026-05-02', { hours: 4 }))).toEqual(moment('2026-05-02'));
    expect(at('2 h', out('2026-05-02 08:00', { untilOn: '2026-05-03', hours: 4 }))).toEqual(moment('2026-05-03'));
  });
});

test('a level climbs from between the marks to above them, though it was above them before', () => {
  const climbs = (...levels: readonly (number | 'above-full')[]): string =>
    ask(
      `${machine}task t "Task" when oil climbs 0.5 L within 60 min`,
      history(...levels.map((oil, index) => [`2026-05-02 08:${index}0`, reads({ oil })] as const)),
      '2026-05-02',
    ).stands();
  expect(climbs('above-full', 0.5, 'above-full')).toBe('due 2026-05-02 08:20');
  expect(climbs('above-full', 'above-full')).toBe('clear');
});

test('what is known lacks nothing: its record names nothing that is missing', () => {
  const { seen, stands } = ask(
    'task t "Task" when date from 1 May to 31 May\ntask old "Old" when machine older than 5 years',
    history(['2026-01-01', { kind: 'machine', serial: 1250 }]),
    '2026-05-20',
  );
  expect(seen('season')).not.toHaveProperty('missing');
  // Whoever notes the serial number has not said when it entered service.
  expect(stands('old')).toBe('unknown');
  expect(seen('age', 'old').missing).toEqual([{ what: 'in-service' }]);
});

test('a total rests on the dial that was replaced, and a reading of a gauge on itself alone', () => {
  const tasks = 'task t "Task" when engine above 1000 h\ntask hot "Hot" when coolant above 90 °C';
  const entries = history(
    ['2026-05-01', meters({ engine: 1005 })],
    ['2026-05-02', { kind: 'meter-replaced', meter: 'engine', final: 1010, initial: 0 }],
    ['2026-05-03', { kind: 'reading', meters: { engine: 3 }, readings: { coolant: 95 } }],
  );
  const { seen } = ask(machine + tasks, entries, '2026-05-04');
  expect(seen('compare').entries).toEqual(['e3', 'e2', 'e1']);
  expect(seen('compare', 'hot').entries).toEqual(['e3']);
});

test('a task that rests holds nothing, and cautions of nothing, whatever was read', () => {
  const level = (gate: string) => `task t "Level" every 10 days
  only if date from ${gate}
  reads oil
    below low hold "Too low."
    low to full fine
    above full caution "Overfilled."`;
  const at = (gate: string, oil: 'below-low' | 'above-full') => {
    const { assessment } = ask(machine + level(gate), history(['2026-05-01', done('t')], ['2026-05-02', reads({ oil })]), '2026-05-03');
    return [assessment.verdict, assessment.notices.map(({ text }) => text), assessment.holds.map(({ text }) => text)];
  };
  expect(at('1 May to 31 May', 'below-low')).toEqual(['held', [], ['Too low.']]);
  expect(at('1 May to 31 May', 'above-full')).toEqual(['ready', ['Overfilled.'], []]);
  expect(at('1 June to 30 June', 'below-low')).toEqual(['ready', [], []]);
  expect(at('1 June to 30 June', 'above-full')).toEqual(['ready', [], []]);
});
