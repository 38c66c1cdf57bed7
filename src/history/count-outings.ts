import type { Meter } from '../graph/rule-graph.js';
import { addMinutes, compareMoments, minutesBetween, type Moment } from '../values/moment.js';
import { unitsOf } from '../values/ticks.js';
import { SERVICE_DAYS } from '../values/service-days.js';
import { countDays, type Served } from './count-days.js';
import type { Layout } from './facts.js';
import type { BareOuting } from './read-outings.js';
import type { MeterPoint, Spell, Timeline } from './timeline.js';

/**
 * The total of a meter that counts from outings (for an attachment's meter: those with the attachment): of time after each of them, at its end, or now while it
 * is under way; of days of service with each of them.
 */
export function countOutings(
  meter: Meter,
  { outings, now }: Pick<Layout, 'outings' | 'now'>,
  attachments: Timeline['attachments'],
): readonly MeterPoint[] {
  const served = inOrderOfEnd(outings, now).flatMap(({ outing, end }): readonly Served[] => {
    const spell = runsOn(meter, outing, attachments);
    if (spell === undefined) return [];
    const alongside = spell === null || spell.begin.entry === outing.entry ? [] : [spell.begin.entry];
    return [{ entry: outing.entry, when: outing.when, end, ticks: outing.ticks, alongside }];
  });
  return meter.unit === SERVICE_DAYS ? countDays(served) : countTime(served);
}

function countTime(served: readonly Served[]): readonly MeterPoint[] {
  let total = 0;
  return served.map(({ entry, when, end, ticks, alongside }) => {
    total += ticks;
    return { entry, when: end, total, shown: unitsOf(total), alongside, passed: { since: when, ticks } };
  });
}

/**
 * Whether a meter runs during an outing: `undefined` if not. The machine's own always do (`null`); those of an attachment where the outing itself names it
 * (`null`), or while it was on when the outing began (the spell).
 */
export function runsOn(
  { attachment }: Pick<Meter, 'attachment'>,
  outing: Pick<BareOuting, 'entry' | 'when' | 'attachments'>,
  attachments: Timeline['attachments'],
): Spell | null | undefined {
  if (attachment === undefined || outing.attachments.includes(attachment)) return null;
  const spells = attachments.get(attachment) ?? [];
  return spells.findLast(
    ({ begin, end }) =>
      compareMoments(begin.when, outing.when) <= 0 &&
      (end === null || (end.entry !== outing.entry && compareMoments(outing.when, end.when) < 0)),
  );
}

/** Outings in the order in which they ended; those under way last, as if they ended now. */
function inOrderOfEnd(outings: readonly BareOuting[], now: Moment): readonly { readonly outing: BareOuting; readonly end: Moment }[] {
  const until = outings.map((outing) => ({ outing, end: outing.end ?? now }));
  return until.sort((a, b) => compareMoments(a.end, b.end) || (a.outing.entry < b.outing.entry ? -1 : 1));
}

/** Where a meter that counts from outings stood at a moment in the middle of one, in proportion; `null` where it does not lie in it, or minutes do not tell. */
export function cutOuting(point: MeterPoint | undefined, when: Moment): MeterPoint | null {
  if (point?.passed === undefined) return null;
  const { since, ticks } = point.passed;
  const [length, left] = [minutesBetween(since, point.when), minutesBetween(when, point.when)];
  if (length === null || left === null || left >= length) return null;
  const total = point.total - Math.round((ticks * left) / length);
  return { ...point, when, total, shown: unitsOf(total) };
}

/** The point at which a meter came to so much: of an outing that it counts the first minute by which so much had passed; of a reading, and where minutes do not tell, as it is. */
export function minuteReached(point: MeterPoint, least: number): MeterPoint {
  const { passed, when, total } = point;
  const length = passed === undefined ? null : minutesBetween(passed.since, when);
  if (passed === undefined || length === null || passed.ticks === 0) return point;
  const wanted = Math.ceil(((least - (total - passed.ticks)) * length) / passed.ticks);
  return { ...point, when: addMinutes(passed.since, Math.max(0, wanted)) };
}
