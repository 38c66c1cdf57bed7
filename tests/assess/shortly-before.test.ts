/** Within so long before work (docs/meaning.md §5): where minutes leave it open, and what of the work is cited. */
import { describe, expect, test } from 'vitest';
import { ask } from '../support/ask.js';
import { done, type Happenings, history, moment } from '../support/history.js';

const look = (of: string, now: string, ...happened: Happenings) =>
  ask(`task t "Task" within 2 h before each ${of}`, history(...happened), now);

test('a start without a minute may be any of its day: what was done two hours before the day began may lie in the window', () => {
  const outing = ['2026-05-11', { kind: 'outing' }] as const;
  const at = (when: string): string => look('outing', '2026-05-12', [when, done('t')], outing).stands();
  expect(['2026-05-10 21:59', '2026-05-10 22:00'].map(at)).toEqual(['due 2026-05-11', 'unknown']);
  // It opened at 21:59 at the latest.
  expect(['2026-05-11 21:58', '2026-05-11 21:59'].map(at)).toEqual(['unknown', 'clear']);
});

test('where neither the work that is intended nor the doing of its day has a minute, both would settle it', () => {
  const asked = ask('task t "Task" within 2 h before each outing', history(['2026-05-11', done('t')]), '2026-05-11', {
    intent: { outing: {} },
  });
  const { day } = moment('2026-05-11');
  expect(asked.stands()).toBe('unknown');
  expect(asked.seen('shortly-before').missing).toEqual([
    { what: 'time-of-day', of: 'doing', day, entry: 'e1' },
    { what: 'time-of-day', of: 'start', day, entry: null },
  ]);
});

describe('of the work that is on', () => {
  const cited = (of: string, now: string, ...happened: Happenings): readonly string[] =>
    [...look(of, now, ...happened).seen('shortly-before').entries].sort();

  test('the first outing is cited, of two that no minute tells apart the first in the order of the history', () => {
    const short = { kind: 'outing', hours: 1 } as const;
    expect(cited("day's work", '2026-05-11', ['2026-05-11', short], ['2026-05-11', short])).toEqual(['e1']);
    expect(cited("day's work", '2026-05-11', ['2026-05-11 09:00', short], ['2026-05-11 07:00', short])).toEqual(['e2']);
  });

  test('the outing under way is cited with it where its day is over: without it nothing would be on', () => {
    const early = ['2026-05-10 06:00', { kind: 'outing', until: '08:00' }] as const;
    const late = ['2026-05-10 20:00', { kind: 'outing' }] as const;
    expect(cited("day's work", '2026-05-11 01:00', early, late)).toEqual(['e1', 'e2']);
    expect(cited("day's work", '2026-05-10 21:00', early, late)).toEqual(['e1']);
    expect(cited('outing', '2026-05-10 21:00', early, late)).toEqual(['e2']);
  });
});
