import { describe, expect, it } from 'vitest';
import { memoryLogbook } from '../../../src/adapters/logbook/memory-logbook.js';
import { readLogbook } from '../../../src/adapters/logbook/read-logbook.js';
import { verifyLogbook } from '../../../src/adapters/logbook/verify-logbook.js';
import { PLAIN, reading, steadyChance } from './support/fixtures.js';

describe('appending', () => {
  it('writes a line that reads well: number, when, what; id and hash last', async () => {
    const logbook = memoryLogbook(steadyChance());
    await logbook.append([
      { kind: 'done', on: '2026-05-13', at: '07:40', tasks: ['change-engine-oil'], meters: { engine: 1304 }, by: 'Kim', id: 'one' },
    ]);
    expect(logbook.text().replace(/[0-9a-f]{64}/, '…')).toBe(
      '{"seq":1,"on":"2026-05-13","at":"07:40","kind":"done","tasks":["change-engine-oil"],"meters":{"engine":1304},"by":"Kim","id":"one","hash":"…"}\n',
    );
  });

  it('changes not one byte of what is there', async () => {
    const logbook = memoryLogbook(steadyChance(), `${PLAIN}\r\n\n`);
    const before = logbook.text();
    await logbook.append([reading(1), reading(2)]);
    expect(logbook.text().startsWith(before)).toBe(true);
  });

  it('acknowledges again, without writing, what is there already', async () => {
    const logbook = memoryLogbook(steadyChance());
    const draft = { ...reading(1), id: 'given' };
    expect(await logbook.append([draft])).toEqual([{ id: 'given', seq: 1 }]);
    const text = logbook.text();
    expect(await logbook.append([draft])).toEqual([{ id: 'given', seq: null }]);
    expect(logbook.text()).toBe(text);
  });

  it('refuses an id that stands for something else, and then records nothing of the call', async () => {
    const logbook = memoryLogbook(steadyChance());
    await logbook.append([{ ...reading(1), id: 'given' }]);
    const text = logbook.text();
    await expect(logbook.append([reading(2), { ...reading(3), id: 'given' }])).rejects.toMatchObject({
      trouble: { kind: 'id-taken', id: 'given' },
    });
    expect(logbook.text()).toBe(text);
  });

  it('refuses what is no entry', async () => {
    const logbook = memoryLogbook(steadyChance());
    await expect(logbook.append([{ kind: 'reading', on: '12 May' }])).rejects.toMatchObject({ trouble: { kind: 'not-an-entry' } });
    expect(logbook.text()).toBe('');
  });

  it('refuses to go on after a change, unless it is accepted; the change stays marked for good', async () => {
    const whole = memoryLogbook(steadyChance());
    for (const number of [1, 2, 3]) await whole.append([reading(number)]);
    const logbook = memoryLogbook(steadyChance(9), whole.text().replace('1300.2', '1300.5'));
    await expect(logbook.append([reading(4)])).rejects.toMatchObject({ trouble: { kind: 'broken-chain', lines: [2] } });
    await logbook.append([reading(4)], { acceptChanges: true });
    await logbook.append([reading(5)]);
    const read = readLogbook(logbook.text());
    expect(read.problems).toEqual([{ kind: 'changed', line: 2, acceptedAt: 4 }]);
    expect(verifyLogbook(read).verdict).toBe('accepted');
  });
});
