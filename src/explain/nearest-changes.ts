/**
 * The nearest changes that would alter a task's state: doing it, a meter or the calendar going on, a reading, an event, a defect,
 * or the owner's word.
 *
 * Worked out from the recorded numbers alone. A change is offered only where the record makes its effect certain, so that each
 * can be tried (`applyChange`) and has the stated effect, and just short of it (`justShort`) has not.
 */
import { unitsOf } from '../values/ticks.js';
import { afterDoing, meetsFirst } from './after-doing.js';
import { atPoint, influenceOf } from './at-point.js';
import type { At } from './at-point.js';
import type { Change } from './change.js';
import { truthUnder } from './condition-if.js';
import type { RuleFacts } from './explanation.js';
import type { Ground } from './ground.js';
import { certain } from './possible.js';
import { readingChanges } from './reading-changes.js';
import { happeningChanges } from './happening-changes.js';
import type { Standing } from './standing.js';
import { meterThresholds, dayThresholds } from './thresholds.js';
import { taskStateIf } from './what-if.js';

/** All changes that are certain, in a fixed order: doing, meters, dates, readings, happenings. Each state once per axis, the nearest. */
export function nearestChanges(ground: Ground): readonly Change[] {
  const { standing, rule } = ground;
  if (rule === null || standing.task.resting === 'attachment-off' || standing.task.resting === 'serial') return [];
  return [
    ...doingChanges(ground, rule),
    ...meterChanges(ground, rule),
    ...dayChanges(ground, rule),
    ...readingChanges(ground, rule),
    ...happeningChanges(ground, rule),
  ];
}

function doingChanges(ground: Ground, rule: RuleFacts): readonly Change[] {
  const { standing } = ground;
  const { task, state } = standing.task;
  const becomes = certain(
    taskStateIf(subject(ground), {
      leaf: (leaf) => afterDoing(leaf, standing),
      truth: (condition) => truthUnder(condition, { is: 'doing' }),
      firstMet: (first) => meetsFirst(first, standing),
    }),
  );
  // Doing it while its meter is unread only moves the question; the unknowns say what settles it.
  if (becomes === null || becomes === state || becomes === 'unknown') return [];
  const done: Change = { change: 'do-it', task, becomes };
  if (!unrecordedIn(rule)) return [done];
  return [done, { change: 'state-it', task, doneAt: dials(standing), becomes }];
}

function unrecordedIn(rule: RuleFacts): boolean {
  return rule.state === 'unrecorded' || rule.parts.some(unrecordedIn);
}

/** What each dial shows now, in the meter's unit. */
function dials(standing: Standing): Readonly<Record<string, number>> {
  const shown: Record<string, number> = {};
  for (const [meter, { ticks, dialBehind }] of standing.meters) {
    if (dialBehind !== null) shown[meter] = unitsOf(ticks - dialBehind);
  }
  return shown;
}

function meterChanges(ground: Ground, rule: RuleFacts): readonly Change[] {
  const changes: Change[] = [];
  for (const [meter, { ticks: now, dialBehind }] of ground.standing.meters) {
    const outings = ground.graph.meters.some((m) => m.id === meter && (m.fromOutings || m.attachment !== undefined));
    if (dialBehind === null || outings) continue;
    const points = meterThresholds(rule, meter).filter((ticks) => ticks > now);
    for (const [ticks, becomes] of turns(
      ground,
      points.map((ticks): At => ({ on: 'meter', meter, ticks })),
      now,
    )) {
      changes.push({ change: 'meter-reaches', meter, ticks, dialBehind, becomes });
    }
  }
  return changes;
}

function dayChanges(ground: Ground, rule: RuleFacts): readonly Change[] {
  const today = ground.standing.now.day;
  const days = dayThresholds(rule).filter((day) => day > today);
  return [
    ...turns(
      ground,
      days.map((day): At => ({ on: 'day', day })),
      today,
    ),
  ].map(([, becomes, at]) => {
    return { change: 'date-reaches', day: at.on === 'day' ? at.day : today, becomes } as const;
  });
}

type Turn = readonly [number, Change['becomes'], At];

/** Of ascending points on one axis, those at which the state turns into one that it was not just short of them; each state once. */
function turns(ground: Ground, points: readonly At[], now: number): readonly Turn[] {
  const { state } = ground.standing.task;
  const found: Turn[] = [];
  for (const at of points) {
    const becomes = stateAt(ground, at);
    if (becomes === null || becomes === state || found.some(([, before]) => before === becomes)) continue;
    const short = before(at);
    const shortState = value(short) <= now ? state : stateAt(ground, short);
    if (shortState !== null && shortState !== becomes) found.push([value(at), becomes, at]);
  }
  return found;
}

function stateAt(ground: Ground, at: At): Change['becomes'] | null {
  const influence = influenceOf(at);
  return certain(
    taskStateIf(subject(ground), {
      leaf: (leaf) => atPoint(leaf, at, ground.standing),
      truth: (condition) => truthUnder(condition, influence),
    }),
  );
}

function value(at: At): number {
  return at.on === 'meter' ? at.ticks : at.day;
}

function before(at: At): At {
  return at.on === 'meter' ? { ...at, ticks: at.ticks - 1 } : { on: 'day', day: (at.day - 1) as typeof at.day };
}

function subject(ground: Ground): { readonly rule: RuleFacts | null; readonly gate: RuleFacts | null; readonly state: Change['becomes'] } {
  return { rule: ground.rule, gate: ground.gate, state: ground.standing.task.state };
}
