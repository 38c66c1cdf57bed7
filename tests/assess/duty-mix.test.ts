/** Hours in duties that the meter has not been read after (docs/meaning.md §4, "Duty"): they come on top of what it showed. */
import { describe, expect, test } from 'vitest';
import { ask } from '../support/ask.js';
import { done, type Happenings, history, meters } from '../support/history.js';

const hours = (value: number, meter = 'engine') => ({ on: 'meter', meter, ticks: value * 36_000 });
const outingIn = (...duties: readonly string[]) => ({ kind: 'outing', duties: duties.map((duty) => ({ duty })) }) as const;
const dusty = outingIn('dusty');

describe('of 40 h, or 10 h in dust, since it was done at 100 h', () => {
  const mix = (...happened: Happenings) =>
    ask(
      'meter engine "Hours" counts h\nduty dusty "Dust"\ntask t "Task" every 40 h of engine\n  in dusty every 10 h of engine',
      history(['2026-05-01 08:00', done('t', { engine: 100 })], ...happened),
      '2026-05-20',
    );
  const twoHours = ['2026-05-02 08:00', { ...dusty, until: '10:00' }] as const;

  test('two hours that no reading covers stand on the meter by reckoning: a fifth is used, and 32 h are left', () => {
    const { stands, seen } = mix(twoHours);
    expect(stands()).toBe('clear 134 h');
    expect(seen('duty-mix').limit).toMatchObject({ now: { point: hours(102), read: hours(100), entries: ['e1', 'e2'] }, used: 0.2 });
  });

  test('of an outing in which it was read they are those from the reading on', () => {
    const { stands, seen } = mix(twoHours, ['2026-05-02 09:00', meters({ engine: 101 })]);
    expect(stands()).toBe('clear 134 h');
    expect(seen('duty-mix').limit).toMatchObject({ now: { point: hours(102), read: hours(101) }, used: 0.2 });
  });

  test('what the meter shows they are already, once it has been read', () => {
    const { stands, seen } = mix(twoHours, ['2026-05-03', meters({ engine: 102 })]);
    expect(stands()).toBe('clear 134 h');
    expect(seen('duty-mix').limit?.now).not.toHaveProperty('read');
  });

  test('on the day of the reading they are, where no minute tells, in what it shows: no more than that', () => {
    expect(mix(['2026-05-02', { ...dusty, hours: 2 }], ['2026-05-02', meters({ engine: 101 })]).stands()).toBe('clear 137 h');
  });

  test('ordinary work that no reading covers is not known of', () => {
    expect(mix(twoHours, ['2026-05-03 08:00', { kind: 'outing', until: '12:00' }]).stands()).toBe('clear 134 h');
  });

  test('of outings after the reading each counts, and what came before it does not come on top', () => {
    const later = ['2026-05-04 08:00', { ...dusty, until: '09:00' }] as const;
    // Two hours in dust that the meter showed as one, and one on top.
    const { stands, seen } = mix(twoHours, ['2026-05-03', meters({ engine: 101 })], later);
    expect(stands()).toBe('clear 134 h');
    expect(seen('duty-mix').limit).toMatchObject({ now: { point: hours(102), read: hours(101) }, used: 0.2 });
  });

  test('no more than the outing took, where it was in two duties at once', () => {
    const both = { ...outingIn('dusty', 'steep'), until: '10:00' };
    const { seen } = ask(
      'meter engine "Hours" counts h\nduty dusty "Dust"\nduty steep "Steep"\ntask t "Task" every 40 h of engine\n  in dusty every 10 h of engine\n  in steep every 20 h of engine',
      history(['2026-05-01 08:00', done('t', { engine: 100 })], ['2026-05-02 08:00', both]),
      '2026-05-20',
    );
    expect(seen('duty-mix').shares?.map(({ duty, ticks }) => [duty, ticks / 36_000])).toEqual([
      [null, 0],
      ['dusty', 2],
      ['steep', 0],
    ]);
    expect(seen('duty-mix').limit?.now?.point).toEqual(hours(102));
  });

  test('from the doing on, where it was done during an outing', () => {
    expect(
      ask(
        'meter engine "Hours" counts h\nduty dusty "Dust"\ntask t "Task" every 40 h of engine\n  in dusty every 10 h of engine',
        history(['2026-05-01 08:00', { ...dusty, until: '12:00' }], ['2026-05-01 09:00', done('t', { engine: 100 })]),
        '2026-05-20',
      ).seen('duty-mix').limit,
    ).toMatchObject({ now: { point: hours(103) }, used: 0.3 });
  });
});

test('on a meter that counts from outings nothing is used before the first of them', () => {
  const mix = (...happened: Happenings): string =>
    ask(
      'meter out "Hours out" counts h from outings\nduty dusty "Dust"\ntask t "Task" every 40 h of out\n  in dusty every 10 h of out',
      history(['2026-05-01', done('t')], ...happened),
      '2026-05-20',
    ).stands();
  expect(mix()).toBe('clear 40 h');
  // Two hours, which are a fifth of it: 32 h are left.
  expect(mix(['2026-05-02 08:00', { ...dusty, until: '10:00' }])).toBe('clear 34 h');
});

describe("on an attachment's meter", () => {
  const mower = `schedule m "M" language 1 for attachment
meter rotor "Rotor" counts h
duty tall "Tall growth"
task flails "Look at the flails" every 8 h of rotor
  in tall every 4 h of rotor
`;
  const mix = (...happened: Happenings) =>
    ask(
      'attachment mower "Mower" follows "mower.due"\n',
      history(['2026-05-01 08:00', done('mower.flails', { 'mower.rotor': 10 })], ...happened, [
        '2026-05-10',
        { kind: 'attached', attachment: 'mower' },
      ]),
      '2026-05-11',
      {},
      { 'mower.due': mower },
    );
  const tall = { ...outingIn('mower.tall'), hours: 1 };
  const put = (when: string, kind: 'attached' | 'detached') => [when, { kind, attachment: 'mower' }] as const;

  test('only outings count on which it is worn, on the strength of what put it on', () => {
    const { stands, seen } = mix(put('2026-05-02', 'attached'), ['2026-05-03 08:00', tall], put('2026-05-04', 'detached'), [
      '2026-05-05 08:00',
      tall,
    ]);
    expect(stands('mower.flails')).toBe('clear 17 h');
    const node = seen('duty-mix', 'mower.flails');
    expect(node.shares?.map(({ entries }) => entries)).toEqual([[], ['e3', 'e2']]);
    expect(node.limit).toMatchObject({ used: 0.25, now: { point: hours(11, 'mower.rotor'), read: hours(10, 'mower.rotor') } });
  });

  test('an outing that names it puts it on by itself', () => {
    const { seen } = mix(['2026-05-05 08:00', { ...tall, attachments: ['mower'] }]);
    expect(seen('duty-mix', 'mower.flails').shares?.map(({ entries }) => entries)).toEqual([[], ['e2']]);
  });
});
