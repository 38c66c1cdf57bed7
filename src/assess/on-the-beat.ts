import type { Axis } from './axis.js';
import type { Base, RepeatRule } from './base.js';
import type { EffectiveDoing } from './doings.js';

/** The base that keeps a schedule's beat after a doing (docs/meaning.md §4, "Counting"); `null` where counting begins anew with the doing. Nobody asks where a limit counts from doing. */
export function onTheBeat(rule: RepeatRule, axis: Axis, base: Base, doing: EffectiveDoing, value: number): Base | null {
  return keepsSchedule(rule, axis, base, doing, value) ? movedOn(rule, axis, base, doing, value) : null;
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
