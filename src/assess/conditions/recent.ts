import { assertNever } from '../../base/assert-never.js';
import type { Amount, RecentNode } from '../../graph/rule-graph.js';
import type { EntryId } from '../../history/entry.js';
import type { Moment } from '../../values/moment.js';
import type { DuePoint, Note } from '../assessment.js';
import { axisOf } from '../axis.js';
import { type Finding, found, unknown } from '../finding.js';
import { type EffectiveDoing, realDoings } from '../doings.js';
import { entriesOf, happeningsOf, lastHappening, notYet, stoodAt } from '../happenings.js';
import { entriesOfLatest, latestReading } from '../instrument.js';
import type { World } from '../world.js';

/** Whether something was read, done or happened within a span before now, or so many times. What is not on record did not. */
export function recent(world: World, node: RecentNode): Finding {
  const lasts = lastOf(world, node.what, node.times ?? 1);
  const [last] = lasts;
  const newest = lasts.at(-1);
  if (last === undefined || newest === undefined) return neverSo(world, node.what);
  if (node.within === undefined) return found(true, newest.when, newest.entries);
  const axis = axisOf(world, node.within);
  const base = last.doing === undefined ? stoodAt(world, axis, last.when, last.entries[0]) : axis.at(last.doing, last.when);
  const now = axis.now(last.when);
  if (base === null || now === null) return unknown(axis.missing, last.when, last.entries);
  const limit = axis.add(base.value, node.within, 1);
  // What makes it false is the passing of the limit, not the reading or the doing before it.
  const passed = now.value > limit ? axis.reached(limit, true) : null;
  const entries = [...new Set([...lasts.flatMap((each) => each.entries), ...base.entries, ...(passed?.entries ?? now.entries)])];
  const isRecent = now.value <= limit;
  const note = isRecent ? meterNote(world, node.within) : undefined;
  const stood: DuePoint[] = [{ on: 'moment', at: last.when }, axis.point(base.value), axis.point((passed ?? now).value)];
  return { ...found(isRecent, passed?.when ?? newest.when, entries, note), stood };
}

/** What is not on record so often; of an event of a day that is still to come, when that is. */
function neverSo(world: World, what: RecentNode['what']): Finding {
  if (what.is !== 'happened' || lastHappening(world, what.event) !== undefined) return found(false, null, []);
  const { entries, note } = notYet(world, what.event);
  return found(false, null, entries, note);
}

/** Where the meter stands, for a span that is counted on one. */
function meterNote(world: World, within: Amount): Note | undefined {
  const point = within.on === 'meter' ? latestReading(world, { is: 'meter', id: within.meter }) : null;
  return within.on !== 'meter' || point === null
    ? undefined
    : { is: 'reading', instrument: within.meter, value: point.value, when: point.when };
}

interface Last {
  readonly when: Moment;
  readonly entries: readonly EntryId[];
  readonly doing?: EffectiveDoing;
}

/** The last so many times, in order; none where it was fewer. */
function lastOf(world: World, what: RecentNode['what'], times: number): readonly Last[] {
  switch (what.is) {
    case 'read': {
      const point = latestReading(world, what.instrument);
      return point === null ? [] : [{ when: point.when, entries: entriesOfLatest(world, what.instrument, point) }];
    }
    case 'done': {
      const doings = realDoings(world, what.task).flatMap((doing) =>
        doing.when === null ? [] : [{ when: doing.when, entries: doing.entries, doing }],
      );
      return doings.length < times ? [] : doings.slice(-times);
    }
    case 'happened': {
      const events = happeningsOf(world, what.event);
      return events.length < times ? [] : events.slice(-times).map((time) => ({ when: time.when, entries: entriesOf(time) }));
    }
    default:
      return assertNever(what);
  }
}
