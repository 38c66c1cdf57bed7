import { describe, expect, it } from 'vitest';
import { memoryLogbook } from '../../../../src/adapters/logbook/memory-logbook.js';
import { completeDraft } from '../../../../src/adapters/logbook/recording/complete-draft.js';
import { takeoverAnswer, takeoverSteps } from '../../../../src/adapters/logbook/recording/takeover.js';
import { assess } from '../../../../src/assess/assess.js';
import { moment } from '../../../support/history.js';
import { steadyChance } from '../support/fixtures.js';
import { tractor } from './tractor.js';

const now = moment('2026-05-12');

describe('taking over a machine without records', () => {
  it('asks for the machine, its meters and its tasks, and never twice for what was answered', async () => {
    const logbook = memoryLogbook(steadyChance());
    const asked: string[] = [];
    const answers: Readonly<Record<string, string>> = {
      engine: '1302.4 h',
      shaft: '210',
      'change-oil': '2025-06-01 1200',
      grease: '2026-02-01',
    };
    const key = (step: ReturnType<typeof takeoverSteps>[number]): string =>
      step.kind === 'meter' ? step.meter : step.kind === 'task' ? step.task : 'machine';
    for (let round = 0; round < 20; round += 1) {
      const { entries } = await logbook.read();
      const context = { graph: tractor, entries, now };
      const step = takeoverSteps(context).find((each) => answers[key(each)] !== undefined);
      if (step === undefined) break;
      asked.push(key(step));
      const said = takeoverAnswer(step, answers[key(step)] ?? '');
      const recording = said.kind === 'said' ? completeDraft(context, said.draft) : null;
      if (recording?.kind === 'ready') await logbook.append([recording.draft]);
    }
    expect(asked).toEqual(['engine', 'shaft', 'change-oil', 'grease']);
    const { entries } = await logbook.read();
    expect(entries.find(({ kind }) => kind === 'stated')).toMatchObject({
      task: 'change-oil',
      doneBy: '2025-06-01',
      doneAt: { engine: 1200 },
      words: '2025-06-01 1200',
    });
    // 102.4 h since, of 100 h.
    const states = assess(tractor, entries, now).tasks.map(({ task, state }) => [task, state]);
    expect(states).toContainEqual(['change-oil', 'overdue']);
    expect(states).toContainEqual(['grease', 'clear']);
  });

  it('leaves what nobody knows as it is: unrecorded', () => {
    const steps = takeoverSteps({ graph: tractor, entries: [], now });
    expect(steps.map(({ kind }) => kind)).toEqual(['machine', 'meter', 'meter', 'task', 'task']);
    expect(steps.at(-2)).toMatchObject({ task: 'change-oil', reason: 'Soot uses up the oil.' });
    const grease = steps.find((step) => step.kind === 'task' && step.task === 'grease');
    if (grease === undefined) throw new Error('no step');
    for (const said of ['', 'last year', '1200', 'never mind']) expect(takeoverAnswer(grease, said).kind).toBe('not-understood');
  });
});
