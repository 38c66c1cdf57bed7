/**
 * Limits that keep the beat of a schedule (docs/meaning.md §4, "Counting"): that count from when they fell due, not from when they were done.
 */
import type { EntryId } from '../history/entry.js';
import type { Axis } from './axis.js';
import { type Base, type BaseResult, freshBase, lacksAxis, type RepeatRule, startBase, unrecorded } from './base.js';
import type { EffectiveDoing } from './doings.js';
import type { World } from './world.js';

/** Follows the doings one after the other: whether each keeps the beat rests on all that went before it. */
export function baseOnTheBeat(
  world: World,
  rule: RepeatRule,
  axis: Axis,
  doings: readonly EffectiveDoing[],
  fromStart: boolean,
): BaseResult {
  let base = startBase(world, axis, fromStart)?.base ?? null;
  const cited: EntryId[] = [...(base?.entries ?? [])];
  let lacking: EffectiveDoing | null = null;
  for (const doing of doings) {
    world.step();
    const stood = axis.at(doing, base?.when ?? null);
    lacking = stood === null ? doing : null;
    if (stood === null) continue;
    cited.push(...doing.entries, ...stood.entries);
    base = nextBase(rule, axis, base, doing, stood.value);
  }
  if (lacking !== null) return lacksAxis(world, axis, lacking);
  return base === null ? unrecorded(world) : { base: { ...base, entries: [...new Set(cited)] } };
}

/** Counting begins anew with a doing that does not keep the beat; time at work stands at 0 there. */
function nextBase(rule: RepeatRule, axis: Axis, base: Base | null, doing: EffectiveDoing, value: number): Base {
  if (base !== null && keepsSchedule(rule, axis, base, doing, value)) return movedOn(rule, axis, base, doing, value);
  return freshBase(doing, rule.amount.on === 'work' ? 0 : value, []);
}

/** The base at the due point; of time at work, as far before (or after) the doing as the due point was. */
function movedOn(rule: RepeatRule, axis: Axis, base: Base, doing: EffectiveDoing, value: number): Base {
  const moved = { spans: 0, when: doing.when, why: 'due-point', entries: [] } as const;
  if (rule.dueAt !== undefined) return { ...moved, anchor: rule.dueAt(base, doing, value) };
  if (rule.amount.on === 'work') return { ...moved, anchor: axis.add(base.anchor, rule.amount, 1) - value };
  return { ...base, spans: base.spans + 1, when: doing.when, why: 'due-point' };
}

function dueOf(rule: RepeatRule, axis: Axis, base: Base, doing: EffectiveDoing, value: number): number {
  return rule.dueAt?.(base, doing, value) ?? axis.add(base.anchor, rule.amount, base.spans + 1);
}

/** Whether a doing moves the base to the due point, so that the schedule keeps its beat, rather than to when it was done. */
function keepsSchedule(rule: RepeatRule, axis: Axis, base: Base, doing: EffectiveDoing, value: number): boolean {
  if (doing.why !== 'done') return false;
  const due = dueOf(rule, axis, base, doing, value);
  if (rule.count === 'due-within-allowance') return value >= axis.before(due, rule.early) && value <= axis.after(due, rule.late);
  return value > due;
}
