/** Meters that count from outings: nobody reads them, and where there was no outing they stood. */
import { describe, expect, test } from 'vitest';
import { lookAhead } from '../../src/outlook/look-ahead.js';
import { rateOfUse } from '../../src/outlook/rate-of-use.js';
import { useFutures } from '../../src/outlook/use-futures.js';
import { readTimeline } from '../../src/history/read-timeline.js';
import { renderAhead } from '../../src/render/outlook/ahead.js';
import { plainStyle } from '../../src/render/style.js';
import { addDays } from '../../src/values/calendar.js';
import { formatDate } from '../../src/values/civil.js';
import { compileText } from '../support/compile-text.js';
import { done, type Happenings, history, moment } from '../support/history.js';

const graph = compileText(`
meter mowing "Hours of mowing" counts h from outings
meter engine "Hour meter" counts h
task belt "Look at the belt" every 100 h of mowing
task oil "Change the oil" every 100 h of engine`);

/** Ten hours on each of eight Mondays, the last of them the 27 April; the dial of the engine was read on the same days. */
const mondays = Array.from({ length: 8 }, (_, week) => formatDate(addDays(moment('2026-03-09').day, 7 * week)));
const worked: Happenings = mondays.flatMap((on, week): Happenings => [
  [on, { kind: 'outing', hours: 10 }],
  [on, { kind: 'reading', meters: { engine: 10 * (week + 1) } }],
]);
const entries = history(
  ['2026-03-08', { kind: 'machine', inService: '2026-03-08' }],
  ['2026-03-08', done('belt', { engine: 0 })],
  ...worked,
);
const now = moment('2026-06-22');
const hours = 36_000;

describe('eight weeks after the last outing', () => {
  const { meters } = readTimeline(entries, graph, now);
  const [mowing, engine] = [meters.get('mowing'), meters.get('engine')];
  if (mowing === undefined || engine === undefined) throw new Error('both meters have points');

  test('futures start yesterday from where it stands, and those of a dial where it was last read', () => {
    const start = (track: typeof mowing, from = {}) => {
      const futures = useFutures(track, { count: 10, ...from });
      return [formatDate(futures?.start ?? now.day), futures?.totals[0], futures?.readings];
    };
    expect(start(mowing, { outingsUntil: now.day })).toEqual(['2026-06-21', 80 * hours, 8]);
    expect(start(engine)).toEqual(['2026-04-27', 80 * hours, 9]);
  });

  test('the weeks without work are use as well: the rate is lower, and says that it rests on outings', () => {
    const [counted, read] = [rateOfUse(mowing, now, true), rateOfUse(engine, now)];
    expect(counted).toMatchObject({ n: 8, of: 'days with an outing', until: moment('2026-06-21').day });
    expect(read).toMatchObject({ n: 9, of: 'days with a reading', until: moment('2026-04-27').day });
    expect(counted?.perDay).toBeLessThan(read?.perDay ?? 0);
  });

  test('its task is not taken to have come due meanwhile, as that by the dial is', () => {
    const { tasks } = lookAhead(graph, entries, now);
    const of = (id: string) => tasks.find(({ task }) => task === id);
    expect(of('belt')).toMatchObject({ n: 8, fromOutings: true });
    expect(of('belt')?.next?.likely).toBeGreaterThan(now.day);
    expect(of('oil')).not.toHaveProperty('fromOutings');
    expect(of('oil')?.next?.likely).toBe(now.day);
  });

  test('and the words speak of outings', () => {
    const text = renderAhead(lookAhead(graph, entries, now), graph, plainStyle(200));
    expect(text).toMatch(/every 100 h of mowing \(8 days worked\)/);
    expect(text).toMatch(/every 100 h of engine \(9 days read\)/);
    expect(text).toMatch(/Hours of mowing .* 8 days with an outing, up to 21 June 2026/);
    expect(text).toContain('outings 60 days old counting half; median of slopes (Theil–Sen), readings 60 days old counting half');
  });
});

test('an outing of yesterday, or one under way, leaves nothing to add', () => {
  const { meters } = readTimeline(entries, graph, moment('2026-04-28'));
  const track = meters.get('mowing');
  if (track === undefined) throw new Error('it has points');
  expect(formatDate(useFutures(track, { count: 1, outingsUntil: moment('2026-04-28').day })?.start ?? now.day)).toBe('2026-04-27');
});
