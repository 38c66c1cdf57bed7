import type { Meter } from '../graph/rule-graph.js';
import { compareMoments, type Moment } from '../values/moment.js';
import { unitsOf } from '../values/ticks.js';
import type { Layout } from './facts.js';
import type { BareOuting } from './read-outings.js';
import type { MeterPoint, Spell, Timeline } from './timeline.js';

/** The total of a meter that counts from outings, after each of them: at its end, or now while it is under way (for an attachment's meter: each with the attachment). */
export function countOutings(
  meter: Meter,
  { outings, now }: Pick<Layout, 'outings' | 'now'>,
  attachments: Timeline['attachments'],
): readonly MeterPoint[] {
  let total = 0;
  return inOrderOfEnd(outings, now).flatMap(({ outing, end }): readonly MeterPoint[] => {
    const spell = runsOn(meter, outing, attachments);
    if (spell === undefined) return [];
    total += outing.ticks;
    const alongside = spell === null || spell.begin.entry === outing.entry ? [] : [spell.begin.entry];
    const passed = { since: outing.when, ticks: outing.ticks };
    return [{ entry: outing.entry, when: end, total, shown: unitsOf(total), alongside, passed }];
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
