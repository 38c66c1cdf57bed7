/** Storage that a limit of the calendar does not count (docs/meaning.md §4, "Storage that does not count"). */
import { expect, test } from 'vitest';
import { ask } from '../support/ask.js';
import { done, type Happenings, history } from '../support/history.js';

const stored = (begins: string, ends: string): Happenings => [
  [begins, { kind: 'storage', phase: 'begins' }],
  [ends, { kind: 'storage', phase: 'ends' }],
];
const limit = (task: string, now: string, ...storage: readonly Happenings[]) =>
  ask(`task t "Task" ${task}`, history(['2026-05-01', done('t')], ...storage.flat()), now);

test('storage counts that began before the due point as the storage before has put it off', () => {
  const standing = (...storage: readonly Happenings[]): string =>
    limit('every 20 days, not counting storage', '2026-05-22', ...storage).stands();
  expect(standing()).toBe('overdue 2026-05-21');
  expect(standing(stored('2026-05-10', '2026-05-20'))).toBe('clear 2026-05-31');
  const later = limit(
    'every 20 days, not counting storage',
    '2026-06-01',
    stored('2026-05-10', '2026-05-20'),
    stored('2026-05-25', '2026-05-30'),
  );
  expect(later.stands()).toBe('clear 2026-06-05');
  const after = limit(
    'every 20 days, not counting storage',
    '2026-06-10',
    stored('2026-05-10', '2026-05-20'),
    stored('2026-05-31', '2026-06-05'),
  );
  expect(after.stands()).toBe('overdue 2026-05-31');
});

test('storage that is too short puts nothing off, and is not cited', () => {
  const found = limit(
    'every 20 days, not counting storage of 10 days or more',
    '2026-05-25',
    stored('2026-05-02', '2026-05-05'),
    stored('2026-05-10', '2026-05-20'),
  );
  expect(found.stands()).toBe('clear 2026-05-31');
  expect(found.seen('interval').entries).toEqual(['e1', 'e4', 'e5']);
  expect(found.seen('interval').stood).toHaveLength(1);
});
