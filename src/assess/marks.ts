/** What the two kinds of fixed marks share: what they count from, and which mark is the one that is owed. */
import type { EntryId } from '../history/entry.js';
import type { Moment } from '../values/moment.js';
import type { Axis } from './axis.js';
import { lacksAxis, type NoBase, startMoment } from './base.js';
import type { EffectiveDoing } from './doings.js';
import type { World } from './world.js';

export interface MarksBase {
  readonly value: number;
  readonly why: 'done' | 'stated' | 'restarted' | 'start';
  readonly when: Moment | null;
  readonly entries: readonly EntryId[];
}

/** The last doing, else the machine's start, else nothing. */
export function baseForMarks(world: World, axis: Axis, doings: readonly EffectiveDoing[]): MarksBase | null | NoBase {
  const last = doings.at(-1);
  if (last === undefined) {
    const start = axis.start();
    return start === null ? null : { ...start, why: 'start', when: startMoment(world) };
  }
  const value = axis.at(last, null);
  if (value === null) return lacksAxis(world, axis, last);
  return { value: value.value, why: last.why, when: last.when, entries: [...new Set([...last.entries, ...value.entries])] };
}

/** The latest mark reached that is not met, else the next one. `between`: how many marks lie from `next` to `latest`. */
export function unmetMark(next: number, latest: number, between: number): { readonly due: number; readonly missed: number } {
  return { due: Math.max(next, latest), missed: Math.max(0, Math.round(between)) };
}
