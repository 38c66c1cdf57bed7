import { describe, expect, test } from 'vitest';
import { parseWork, workExample } from '../../../src/adapters/cli/parse-work.js';

describe('parseWork', () => {
  test('reads every part', () => {
    expect(parseWork(workExample)).toEqual({
      ok: true,
      value: { hours: 3, duties: ['tall-growth'], attachments: ['flail-mower'], start: 480 },
    });
  });

  test('reads the parts in any order, each at will, several names by comma or and', () => {
    expect(parseWork('with flail-mower and pallet-forks, in dusty, tall-growth shift early from 9:05 for 90 min')).toEqual({
      ok: true,
      value: { hours: 1.5, duties: ['dusty', 'tall-growth'], attachments: ['flail-mower', 'pallet-forks'], start: 545, shift: 'early' },
    });
    expect(parseWork('')).toEqual({ ok: true, value: {} });
    expect(parseWork('3h')).toEqual({ ok: true, value: { hours: 3 } });
  });

  test.each([
    ['3 weeks', /not a length of work/],
    ['0 h', /not a length of work/],
    ['25 h', /not a length of work/],
    ['-3 h', /not a length of work/],
    ['3 h from noon', /not a time of day/],
    ['3 h from 24:00', /not a time of day/],
    ['3 h in', /names/],
    ['3 h shift', /name of one shift/],
    ['3 h for 2 h', /hours .* stand twice/],
    ['constructor 3 h', /not a length of work/],
  ])('refuses %s', (text, message) => {
    const parsed = parseWork(text);
    expect(parsed.ok ? '' : parsed.problem).toMatch(message);
  });
});
