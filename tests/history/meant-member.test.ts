import { expect, test } from 'vitest';
import { meantMember } from '../../src/history/meant-member.js';

test('a member that no entry of the kind has may be meant for one that it has', () => {
  expect(meantMember('reading', 'meter')).toBe('meters');
  expect(meantMember('done', 'task')).toBe('tasks');
});

test('what is near nothing, or near a member of another kind alone, is meant for nothing', () => {
  expect(meantMember('reading', 'colour-of-the-sky')).toBeNull();
  expect(meantMember('reading', 'taskss')).toBeNull();
});
