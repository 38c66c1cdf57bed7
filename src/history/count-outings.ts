import type { Meter } from '../graph/rule-graph.js';
import { compareMoments, type Moment } from '../values/moment.js';
import { unitsOf } from '../values/ticks.js';
import type { BareOuting } from './read-outings.js';
import type { MeterPoint, Spell, Timeline } from './timeline.js';

/** The total of a meter that counts from outings, after each that ended (for an attachment's meter: each with the attachment). */
export function countOutings(meter: Meter, outings: readonly BareOuting[], attachments: Timeline['attachments']): readonly MeterPoint[] {
  let total = 0;
  return inOrderOfEnd(outings).flatMap((outing): readonly MeterPoint[] => {
    const spell = meter.attachment === undefined ? null : wornOn(outing, meter.attachment, attachments);
    if (spell === undefined) return [];
    total += outing.ticks;
    const alongside = spell === null || spell.begin.entry === outing.entry ? [] : [spell.begin.entry];
    return [{ entry: outing.entry, when: outing.end, total, shown: unitsOf(total), alongside }];
  });
}

/** `null`: the outing itself names the attachment; a spell: it was on when the outing began; undefined: it was off. */
function wornOn(outing: BareOuting, attachment: string, attachments: Timeline['attachments']): Spell | null | undefined {
  if (outing.attachments.includes(attachment)) return null;
  const spells = attachments.get(attachment) ?? [];
  return spells.findLast(
    ({ begin, end }) =>
      compareMoments(begin.when, outing.when) <= 0 &&
      (end === null || (end.entry !== outing.entry && compareMoments(outing.when, end.when) < 0)),
  );
}

/** Outings in the order in which they ended; those under way are left out. */
function inOrderOfEnd(outings: readonly BareOuting[]): readonly (BareOuting & { readonly end: Moment })[] {
  const ended = outings.filter((outing): outing is BareOuting & { readonly end: Moment } => outing.end !== null);
  return ended.sort((a, b) => compareMoments(a.end, b.end) || (a.entry < b.entry ? -1 : 1));
}
