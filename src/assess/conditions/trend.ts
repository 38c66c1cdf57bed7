import type { TrendNode } from '../../graph/rule-graph.js';
import type { InstrumentPoint } from '../../history/timeline.js';
import { minutesBetween } from '../../values/moment.js';
import { type Finding, found, unknown } from '../finding.js';
import { workOn } from '../occasions.js';
import type { World } from '../world.js';

/** Whether an instrument climbed, or fell, by so much within so many minutes up to its latest reading (docs/meaning.md §6). */
export function trend(world: World, node: TrendNode): Finding {
  const points = world.timeline.instruments.get(node.instrument.id) ?? [];
  const last = points.at(-1);
  const window = last === undefined ? [] : inWindow(world, points, last, node.withinMinutes);
  if (last === undefined || window.length === 0) {
    return withoutWindow(world, node, last);
  }
  const from = window.reduce((best, each) => (change(node, each, last) > change(node, best, last) ? each : best));
  return found(change(node, from, last) >= node.by, last.when, [from.entry, last.entry], {
    is: 'reading',
    instrument: node.instrument.id,
    value: last.value,
    when: last.when,
  });
}

/** Too few readings to tell: unknown while an outing is under way, otherwise false. */
function withoutWindow(world: World, node: TrendNode, last: InstrumentPoint | undefined): Finding {
  const outing = workOn(world, 'outing')?.outing ?? null;
  const missing = { what: 'reading', instrument: node.instrument.id, because: 'too-few' } as const;
  if (last === undefined) return outing === null ? found(false, null, []) : unknown(missing, null, [outing.entry]);
  const note = { is: 'reading', instrument: node.instrument.id, value: last.value, when: last.when } as const;
  if (outing === null) return found(false, last.when, [last.entry], note);
  return { ...unknown(missing, last.when, [outing.entry, last.entry]), note };
}

/** Earlier readings with minutes, no longer before the last than the window. */
function inWindow(world: World, points: readonly InstrumentPoint[], last: InstrumentPoint, minutes: number): readonly InstrumentPoint[] {
  const window: InstrumentPoint[] = [];
  for (let i = points.length - 2; i >= 0; i -= 1) {
    const point = points[i];
    if (point === undefined || point.when.day < last.when.day - 1 - minutes / 1440) break;
    world.step();
    const ago = minutesBetween(point.when, last.when);
    if (ago !== null && ago <= minutes) window.push(point);
  }
  return window.reverse();
}

/** By how much the reading changed; off the marks of a dipstick is further than any amount, and from there to there is no change. */
function change(node: TrendNode, from: InstrumentPoint, to: InstrumentPoint): number {
  if (from.value === to.value) return 0;
  return node.direction === 'climbs' ? to.value - from.value : from.value - to.value;
}
