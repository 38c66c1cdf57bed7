import { assertNever } from '../../base/assert-never.js';
import type { Amount, RecentNode } from '../../graph/rule-graph.js';
import type { EntryId } from '../../history/entry.js';
import type { Moment } from '../../values/moment.js';
import type { DuePoint, Note } from '../assessment.js';
import { axisOf } from '../axis.js';
import { type Finding, found, unknown } from '../finding.js';
import { type EffectiveDoing, realDoings } from '../doings.js';
import { entriesOfReading, latestReading } from '../instrument.js';
import type { World } from '../world.js';

/** Whether something was read, done or happened within a span before now. What is not on record did not. */
export function recent(world: World, node: RecentNode): Finding {
  const last = lastOf(world, node.what);
  if (last === null) return found(false, null, []);
  const axis = axisOf(world, node.within);
  const base = last.doing === undefined ? axis.atMoment(last.when, last.entries[0]) : axis.at(last.doing, last.when);
  const now = axis.now(last.when);
  if (base === null || now === null) return unknown(axis.missing, last.when, last.entries);
  const limit = axis.add(base.value, node.within, 1);
  // What makes it false is the passing of the limit, not the reading or the doing before it.
  const passed = now.value > limit ? axis.reached(limit, true) : null;
  const entries = [...new Set([...last.entries, ...base.entries, ...(passed?.entries ?? now.entries)])];
  const isRecent = now.value <= limit;
  const note = isRecent ? meterNote(world, node.within) : undefined;
  const stood: DuePoint[] = [{ on: 'moment', at: last.when }, axis.point(base.value), axis.point((passed ?? now).value)];
  return { ...found(isRecent, passed?.when ?? last.when, entries, note), stood };
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

function lastOf(world: World, what: RecentNode['what']): Last | null {
  switch (what.is) {
    case 'read': {
      const point = latestReading(world, what.instrument);
      return point === null ? null : { when: point.when, entries: entriesOfReading(world, what.instrument, point) };
    }
    case 'done': {
      const doing = realDoings(world, what.task).findLast((each) => each.when !== null);
      return doing?.when == null ? null : { when: doing.when, entries: doing.entries, doing };
    }
    case 'happened': {
      const event = world.timeline.events.get(what.event)?.at(-1);
      return event === undefined ? null : { when: event.when, entries: [event.entry] };
    }
    default:
      return assertNever(what);
  }
}
