/** Tasks of an attachment (docs/meaning.md §6): they rest while it is off. */
import { expect, test } from 'vitest';
import { ask } from '../support/ask.js';
import { history } from '../support/history.js';

test('what is off asks nothing of what its tasks depend on', () => {
  const machine = 'attachment mower "Mower" follows "mower.due"\n';
  const mower =
    'schedule m "M" language 1 for attachment\nmeter rotor "Rotor" counts h\ntask belt "Belt" every 50 h of rotor\n  only if date from 1 April to 30 April\n';
  const { assessment } = ask(machine, history(), '2026-06-01', {}, { 'mower.due': mower });
  expect(assessment.tasks).toMatchObject([{ state: 'resting', resting: 'attachment-off' }]);
  expect(assessment.record['mower.belt']).toEqual([]);
});
