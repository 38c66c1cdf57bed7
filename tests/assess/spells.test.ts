/** What came and went more than once on a day whose minutes do not tell (docs/meaning.md §5): what shows that it is on now. */
import { describe, expect, test } from 'vitest';
import { begunBy } from '../../src/assess/spells.js';
import { moment } from '../support/history.js';

const spell = (begin: string, beganOn: string, end: string | null, endedOn = beganOn) => ({
  begin: { entry: begin, when: moment(beganOn) },
  end: end === null ? null : { entry: end, when: moment(endedOn) },
});

describe('the beginning of the last spell rests on', () => {
  test('itself, where the one before it ended on another day, or there is none', () => {
    expect(begunBy([])).toEqual([]);
    expect(begunBy([spell('on1', '2026-05-01', null)])).toEqual(['on1']);
    expect(begunBy([spell('on1', '2026-05-01', 'off1'), spell('on2', '2026-05-02', null)])).toEqual(['on2']);
  });

  test('all that came and went before it on that day', () => {
    const thrice = [spell('on1', '2026-05-01', 'off1'), spell('on2', '2026-05-01', 'off2'), spell('on3', '2026-05-01', null)];
    expect(begunBy(thrice)).toEqual(['on1', 'off1', 'on2', 'off2', 'on3']);
    expect(begunBy([spell('on0', '2026-04-01', 'off0'), ...thrice])).toEqual(['on1', 'off1', 'on2', 'off2', 'on3']);
  });
});
