/**
 * How fast a fluid goes is worked out twice, for the rule `sooner` (assess) and for what lies ahead (outlook), by code written apart: where
 * levels and top-ups have days of their own and stand between the marks, the two have to agree.
 */
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { assess } from '../../src/assess/assess.js';
import type { Entry } from '../../src/history/entry.js';
import { readTimeline } from '../../src/history/read-timeline.js';
import { consumption } from '../../src/outlook/consumption.js';
import { dayOf, formatDate } from '../../src/values/civil.js';
import type { Day } from '../../src/values/moment.js';
import { compileText } from '../support/compile-text.js';
import { moment } from '../support/history.js';

const LITRES = 1.2;
const graph = compileText(`meter engine "Hour meter" counts h
dipstick oil "Oil dipstick" low to full is ${LITRES} L
task level "Look at the oil" every 50 h of engine sooner at half the time that oil takes to fall to low
`);
const now = moment('2026-12-31');
const first = dayOf('2026-01-01') ?? (0 as Day);

/** One a day: what the dipstick showed, in hundredths of its range, after some tenths of an hour; or what was filled up. */
const happening = fc.oneof(
  { weight: 3, arbitrary: fc.record({ level: fc.integer({ min: 0, max: 100 }), tenths: fc.integer({ min: 0, max: 80 }) }) },
  { weight: 1, arbitrary: fc.record({ hundredths: fc.integer({ min: 1, max: 150 }) }) },
);
type Happening = { readonly level: number; readonly tenths: number } | { readonly hundredths: number };

function entriesOf(happenings: readonly Happening[]): readonly Entry[] {
  let tenths = 1000;
  return happenings.map((each, index): Entry => {
    const [id, on] = [`e${index}`, formatDate((first + index) as Day)];
    if ('hundredths' in each) return { kind: 'topped-up', id, on, dipstick: 'oil', litres: each.hundredths / 100 };
    tenths += each.tenths;
    return { kind: 'reading', id, on, meters: { engine: tenths / 10 }, readings: { oil: each.level / 100 } };
  });
}

test('the rule and the outlook tell of one consumption', () => {
  let compared = 0;
  fc.assert(
    fc.property(fc.array(happening, { maxLength: 30 }), (happenings) => {
      const entries = entriesOf(happenings);
      const ahead = consumption(readTimeline(entries, graph, now), 'oil', LITRES, 'engine');
      const told = assess(graph, entries, now).record['level']?.find(({ note }) => note?.is === 'consumption')?.note;
      expect(told === undefined).toBe(ahead === null);
      if (ahead === null || told?.is !== 'consumption') return;
      compared += 1;
      expect(told.litresPerHour).toBeCloseTo(ahead.litresPerHour.value, 6);
      expect(told.litresLeft).toBeCloseTo(ahead.litresLeft, 6);
      expect(told.levels).toBe(ahead.levels);
    }),
    { numRuns: 300 },
  );
  expect(compared).toBeGreaterThan(100);
});
