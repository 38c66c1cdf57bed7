import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.js';
import { tasksForWalk } from '../../src/assess/tasks-for-walk.js';
import type { Entry } from '../../src/history/entry.js';
import { compileText } from '../support/compile-text.js';
import { moment } from '../support/history.js';

const text = `
meter engine "Hour meter" counts h
task look "Look it over" before each day's work takes 1 min
task inspect "Inspection" every 12 months takes 1 h calls for qualified mechanic
task overhaul "Overhaul" every 12 months takes 1 h
task belts "Renew the belts" every 24 months takes 1 h
`;

describe('what is gone round for', () => {
  const graph = compileText(text);
  const now = moment('2026-06-01 07:00');
  const entries: readonly Entry[] = [{ kind: 'done', id: 'a', on: '2025-01-01', tasks: ['inspect', 'overhaul'] }];
  const intent = { outing: { start: 450 } };

  it('takes what is due, and tells apart the work of a mechanic and what has no record', () => {
    const assessment = assess(graph, entries, now, { intent });
    expect(tasksForWalk(graph, assessment)).toEqual({
      tasks: ['look', 'overhaul'],
      mechanic: ['inspect'],
      unrecorded: ['belts'],
    });
  });
});
