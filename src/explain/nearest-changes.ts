/**
 * The nearest changes that would alter a task's state: doing it, a meter or the calendar going on, a reading, an event, a defect,
 * or the owner's word.
 *
 * Worked out from the recorded numbers alone. A change is offered only where the record makes its effect certain, so that each
 * can be tried (`applyChange`) and has the stated effect, and just short of it (`justShort`) has not.
 */
import type { Day } from '../values/moment.js';
import { unitsOf } from '../values/ticks.js';
import { afterDoing, meetsFirst } from './after-doing.js';
import { atPoint, influenceOf } from './at-point.js';
import type { At } from './at-point.js';
import type { Change } from './change.js';
import { truthUnder } from './condition-if.js';
import type { Explanation, RuleFacts } from './explanation.js';
import type { Ground } from './ground.js';
import type { Influence } from './influence.js';
import { certain } from './possible.js';
import { addReadingChanges } from './reading-changes.js';
import { addHappeningChanges } from './happening-changes.js';
import type { Run } from './run.js';
import { type Standing, standingOf } from './standing.js';
import { meterThresholds, dayThresholds } from './thresholds.js';
import { taskStateIf, type WhatIf } from './what-if.js';

/** All changes that are certain, in a fixed order: doing, meters, dates, readings, happenings. Each state once per axis, the nearest. */
export function nearestChanges(run: Run, { rule, gate }: Pick<Explanation, 'rule' | 'gate'>): readonly Change[] {
  const { schedule, outline } = run;
  const { resting, state } = run.assessed;
  const changes: Change[] = [];
  if (rule === null || resting === 'attachment-off' || resting === 'serial') return changes;
  const standing = standingOf(run, rule);
  const ground = { schedule, outline, standing, rule, gate, state };
  addDoingChanges(ground, rule, changes);
  addMeterChanges(ground, rule, changes);
  addDayChanges(ground, rule, changes);
  addReadingChanges(ground, changes);
  addHappeningChanges(ground, rule, changes);
  return changes;
}

const DOING: Influence = { is: 'doing' };

const ifDone: WhatIf<Influence> = {
  leaf: (leaf, { standing }) => afterDoing(leaf, standing),
  truth: truthUnder,
  firstMet: (first, { standing }) => meetsFirst(first, standing),
};

function addDoingChanges(ground: Ground, rule: RuleFacts, changes: Change[]): void {
  const { standing } = ground;
  const { task, state } = standing.task;
  if (standing.doneAtMinute) return;
  const becomes = certain(taskStateIf(ground, ifDone, DOING));
  // Doing it while its meter is unread only moves the question; the unknowns say what settles it.
  if (becomes === null || becomes === state || becomes === 'unknown') return;
  changes.push({ change: 'do-it', task, becomes });
  if (unrecordedIn(rule) && knowsDials(standing) && !goesByMinutes(rule))
    changes.push({ change: 'state-it', task, doneAt: dials(standing), becomes });
}

function unrecordedIn(rule: RuleFacts): boolean {
  return rule.state === 'unrecorded' || rule.parts.some(unrecordedIn);
}

function knowsDials({ meters }: Standing): boolean {
  return [...meters.values()].every(({ dialBehind }) => dialBehind !== null);
}

/** A statement names a day, which does not say whether a doing lies in the hours before work. */
function goesByMinutes({ note, parts }: RuleFacts): boolean {
  return (note?.is === 'work-on' && note.window !== undefined) || parts.some(goesByMinutes);
}

/** What each dial shows now, in the meter's unit. */
function dials(standing: Standing): Readonly<Record<string, number>> {
  const shown: Record<string, number> = {};
  for (const [meter, { ticks, dialBehind }] of standing.meters) {
    if (dialBehind !== null) shown[meter] = unitsOf(ticks - dialBehind);
  }
  return shown;
}

function addMeterChanges(ground: Ground, rule: RuleFacts, changes: Change[]): void {
  for (const [meter, { ticks: now, dialBehind }] of ground.standing.meters) {
    if (dialBehind === null || ground.schedule.withOutings.has(meter)) continue;
    const at = (ticks: number): At => ({ on: 'meter', meter, ticks });
    for (const { value: ticks, becomes } of turns(ground, meterThresholds(rule, meter, now), at, now)) {
      changes.push({ change: 'meter-reaches', meter, ticks, dialBehind, becomes });
    }
  }
}

function addDayChanges(ground: Ground, rule: RuleFacts, changes: Change[]): void {
  const today = ground.standing.now.day;
  for (const { value: day, becomes } of turns(ground, dayThresholds(rule, today), onDay, today)) {
    changes.push({ change: 'date-reaches', day, becomes });
  }
}

function onDay(day: Day): At {
  return { on: 'day', day };
}

interface Turn<Value extends number> {
  readonly value: Value;
  readonly becomes: Change['becomes'];
}

/** Of ascending values on one axis, those at which the state turns into one that it was not just short of them; each state once. */
function turns<Value extends number>(
  ground: Ground,
  values: readonly Value[],
  at: (value: Value) => At,
  now: Value,
): readonly Turn<Value>[] {
  const { state } = ground;
  const found: Turn<Value>[] = [];
  let before: { readonly value: number; readonly state: Change['becomes'] | null } = { value: now, state };
  for (const value of values) {
    const becomes = stateAt(ground, at(value));
    if (becomes !== null && becomes !== state && !found.some((turn) => turn.becomes === becomes)) {
      const short = (value - 1) as Value;
      const shortState = short === before.value ? before.state : stateAt(ground, at(short));
      if (shortState !== null && shortState !== becomes) found.push({ value, becomes });
    }
    before = { value, state: becomes };
  }
  return found;
}

const ifAt: WhatIf<At> = {
  leaf: (leaf, { standing }, at) => atPoint(leaf, at, standing),
  truth: (condition, at) => truthUnder(condition, influenceOf(at)),
};

function stateAt(ground: Ground, at: At): Change['becomes'] | null {
  return certain(taskStateIf(ground, ifAt, at));
}
