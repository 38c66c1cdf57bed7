import type { WorkAmount } from '../../graph/rule-graph.js';
import type { EntryId } from '../../history/entry.js';
import type { Outing } from '../../history/timeline.js';
import type { Moment } from '../../values/moment.js';
import type { Axis } from '../axis.js';
import type { AxisValue } from '../doings.js';
import { shareSince } from '../outing-share.js';
import { outingsWithin } from '../outings-within.js';
import type { World } from '../world.js';
import { inTicks } from './in-ticks.js';
import { serviceStart } from './service-start.js';

/** Time at work, counted from the base: the axis stands at 0 there. */
export function workAxis(world: World, { duty: named }: WorkAmount): Axis {
  const duty = named ?? null;
  return {
    now: (base) => workSince(world, base, duty),
    at: ({ when }, base) => (when === null ? null : workBetween(world, base, when, duty)),
    // With no doing and no start on record, all the work there is counts (docs/meaning.md §4, "Work time").
    start: () => serviceStart(world, () => 0) ?? { value: 0, entries: [] },
    ...inTicks,
    point: (value) => ({ on: 'work', duty, ticks: value }),
    reached: () => null,
    missing: { what: 'outing' },
    rate: null,
  };
}

/** Ticks of work from one moment to another: of each outing what counts from the one on, less what counts from the other on, and never less than nothing. */
function workBetween(world: World, from: Moment | null, to: Moment, duty: string | null): AxisValue {
  const parts = outingsWithin(world, from, to).map((outing) => ({
    entry: outing.entry,
    ticks: Math.max(0, workTicks(world, outing, from, duty) - workTicks(world, outing, to, duty)),
  }));
  const counted = parts.filter(({ ticks }) => ticks !== 0);
  return { value: counted.reduce((sum, { ticks }) => sum + ticks, 0), entries: counted.map(({ entry }) => entry) };
}

/** Ticks of work in outings not before a moment; an outing that it cuts in two counts from there on. */
function workSince(world: World, base: Moment | null, duty: string | null): AxisValue {
  let total = 0;
  const entries: EntryId[] = [];
  for (const outing of outingsWithin(world, base, null)) {
    const ticks = workTicks(world, outing, base, duty);
    if (ticks === 0) continue;
    total += ticks;
    entries.push(outing.entry);
  }
  return { value: total, entries };
}

function workTicks(world: World, outing: Outing, base: Moment | null, duty: string | null): number {
  const whole = duty === null ? outing.ticks : (outing.duties.find((each) => each.duty === duty)?.ticks ?? 0);
  return whole === 0 ? 0 : Math.round(whole * shareSince(world, outing, base));
}
