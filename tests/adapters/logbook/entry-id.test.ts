import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { latestTime, newEntryId, timeOfId } from '../../../src/adapters/logbook/entry-id.js';
import { memoryLogbook } from '../../../src/adapters/logbook/memory-logbook.js';
import { readLogbook } from '../../../src/adapters/logbook/read-logbook.js';
import { reading } from './support/fixtures.js';

const moments = fc.oneof(fc.integer({ min: 0, max: 4_000_000_000_000 }), fc.constantFrom(-5, NaN, Infinity, 2 ** 53));

describe('ids', () => {
  it('go up and never repeat, whatever the clock does and however bad the dice are', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(moments, { minLength: 1, maxLength: 20 }), async (clock) => {
        let tick = 0;
        const logbook = memoryLogbook({ now: () => clock[tick++ % clock.length] ?? 0, random: () => 0 });
        for (let number = 0; number < clock.length; number += 1) await logbook.append([reading(number), reading(100 + number)]);
        const ids = readLogbook(logbook.text()).entries.map((entry) => entry.id);
        expect(ids).toHaveLength(2 * clock.length);
        expect([...ids].sort()).toEqual(ids);
        expect(new Set(ids).size).toBe(ids.length);
      }),
    );
  });

  it('carry their time', () => {
    const now = Date.UTC(2026, 4, 12);
    const { id } = newEntryId({ now: () => now, random: (below) => below - 1 }, -1);
    expect(id).toMatch(/^[0-9a-hjkmnp-tv-z]{9}-z{7}$/);
    expect(timeOfId(id)).toBe(now);
    expect(timeOfId('start')).toBeNull();
    expect(latestTime(['start', id])).toBe(now);
  });
});
