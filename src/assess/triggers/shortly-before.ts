import type { ShortlyBeforeNode } from '../../graph/rule-graph.js';
import type { Outing } from '../../history/timeline.js';
import { addMinutes, firstMinute, isAfter, lastMinute, type Moment } from '../../values/moment.js';
import type { Missing, Note } from '../assessment.js';
import { type DatedDoing, datedDoings } from '../doings.js';
import { firstOfWork, type WorkOn, workOn } from '../occasions.js';
import { cannotTell, dueSince, quiet, type Reach } from '../reach.js';
import type { TriggerContext } from '../trigger-context.js';
import type { World } from '../world.js';

/** The work that is asked about: the outing that it began with, if it has begun; when it begins, and when the window before that opens. */
interface Ahead {
  readonly work: WorkOn;
  readonly first: Outing | null;
  readonly start: Moment;
  readonly opens: Moment;
}

/** Within so long before each day's work, outing or shift (docs/meaning.md §5). */
export function shortlyBefore(world: World, node: ShortlyBeforeNode, { task }: TriggerContext): Reach {
  const work = workOn(world, node.of);
  if (work === null) {
    world.observe({ node: node.id, state: 'clear', entries: [], reachedAt: null, note: { is: 'no-work' } });
    return quiet(node.id);
  }
  const first = firstOfWork(world, node.of, work);
  const start = first?.when ?? toldStart(world) ?? world.now;
  const ahead: Ahead = { work, first, start, opens: addMinutes(start, -node.withinMinutes) };
  const doings = datedDoings(world, task);
  world.step(doings.length);
  if (isAfter(ahead.opens, world.now)) return tooEarly(world, node, ahead, doings.at(-1));
  return windowOpen(world, node, ahead, doings);
}

/** When an outing that is intended is told to begin. */
function toldStart({ now, options }: World): Moment | null {
  const minute = options.intent?.outing?.start;
  return minute === undefined ? null : { day: now.day, minute };
}

function tooEarly(world: World, node: ShortlyBeforeNode, ahead: Ahead, last: DatedDoing | undefined): Reach {
  settle(world, node, ahead, { state: 'coming-up', doing: last, reachedAt: null });
  return { ...quiet(node.id), state: 'coming-up', due: { on: 'moment', at: ahead.opens } };
}

function windowOpen(world: World, node: ShortlyBeforeNode, ahead: Ahead, doings: readonly DatedDoing[]): Reach {
  const { start, opens } = ahead;
  const openLatest = lastMinute(start) - node.withinMinutes;
  const done = doings.findLast(({ when }) => firstMinute(when) >= openLatest);
  if (done !== undefined) {
    settle(world, node, ahead, { state: 'clear', doing: done, reachedAt: null });
    return quiet(node.id);
  }
  const openEarliest = firstMinute(start) - node.withinMinutes;
  const perhaps = doings.findLast(({ when }) => lastMinute(when) >= openEarliest);
  if (perhaps !== undefined) {
    const missing = untold(ahead, perhaps);
    settle(world, node, ahead, { state: 'unknown', doing: perhaps, reachedAt: null, missing });
    return cannotTell(node.id, missing);
  }
  const since = ahead.first === null && toldStart(world) === null ? world.now : opens;
  settle(world, node, ahead, { state: 'due', doing: doings.at(-1), reachedAt: since });
  return dueSince(node.id, since);
}

/** The times of day that would say whether a doing lies in the window. */
function untold({ first, start }: Ahead, { when, entries }: DatedDoing): readonly Missing[] {
  const ofDoing: Missing = { what: 'time-of-day', of: 'doing', day: when.day, entry: entries[0] ?? null };
  const ofStart: Missing = { what: 'time-of-day', of: 'start', day: start.day, entry: first?.entry ?? null };
  return [...(when.minute === null ? [ofDoing] : []), ...(start.minute === null ? [ofStart] : [])];
}

interface Settled {
  readonly state: 'coming-up' | 'clear' | 'unknown' | 'due';
  readonly doing: DatedDoing | undefined;
  readonly reachedAt: Moment | null;
  readonly missing?: readonly Missing[];
}

function settle(world: World, node: ShortlyBeforeNode, ahead: Ahead, { doing, ...known }: Settled): void {
  const { work, first, start, opens } = ahead;
  const note: Note = { is: 'work-on', intended: first === null, lastEnd: null, done: doing?.when ?? null, window: { opens, start } };
  // On the day that it began on a day's work is on by its first outing alone.
  const on = work.outing === null || (node.of === 'day' && first !== null && first.when.day === world.now.day) ? [] : [work.outing.entry];
  const entries = [...on, ...(first === null ? [] : [first.entry]), ...(doing?.entries ?? [])];
  world.observe({ node: node.id, entries: [...new Set(entries)], note, ...known });
}
