/** What each kind of clause comes to. */
import type { AskedNode, EventNode, Trigger } from '../../src/graph/rule-graph.js';
import { after, inOrder, type When } from './calendar.js';
import { spellsOn } from './attachments.js';
import { type Happened, holds, inRange, lastEvent, timesOf } from './conditions.js';
import { defectState, ofClass } from './defects.js';
import { clock, dated, doings, doneSince, start } from './doings.js';
import { dutyMix, interval, type Clock } from './intervals.js';
import { limit, unknown } from './limits.js';
import { calendarMarks, calendarWindow, marks } from './marks.js';
import { meterAtEntry, standing } from './meters.js';
import { asks, occasion, shortlyBefore } from './occasions.js';
import { plain, whicheverFirst, whicheverLast, type Outcome, type State } from './outcome.js';
import { sooner } from './sooner.js';
import { first, stages } from './stages.js';
import { taskNamed, triggerAt, whenOf, type World } from './world.js';

/** What a task's trigger comes to. */
export function trigger(world: World, id: number, task: string): Outcome {
  return run(world, id, task, { start: start(world), fromStart: true, doings: clock(world, task) });
}

function run(world: World, id: number, task: string, time: Clock): Outcome {
  return comesTo(world, triggerAt(world, id), task, time);
}

function comesTo(world: World, node: Trigger, task: string, time: Clock): Outcome {
  switch (node.kind) {
    case 'interval':
      return interval(world, node, time);
    case 'duty-mix':
      return dutyMix(world, node, time);
    case 'stages':
      return stages(world, node, time);
    case 'first':
      return first(world, node, time, (id, other) => run(world, id, task, other));
    case 'marks':
      return marks(world, node, time);
    case 'calendar-marks':
      return calendarMarks(world, node, time);
    case 'calendar-window':
      return calendarWindow(world, node, time);
    case 'whichever':
      return (node.mode === 'first' ? whicheverFirst : whicheverLast)(node.parts.map((part) => run(world, part, task, time)));
    case 'any':
      return whicheverFirst(node.parts.map((part) => run(world, part, task, time)));
    case 'occasion':
      return occasion(world, node, task);
    case 'shortly-before':
      return shortlyBefore(world, node, task);
    case 'attaching':
      return sinceLast(world, node.id, task, spellsOn(world, node.attachment).at(-1)?.begin.when);
    case 'refuelling':
      return sinceLast(world, node.id, task, lastRefuelling(world));
    case 'event':
      return event(world, node, task);
    case 'when':
      return when(world, node.id, node.condition, task);
    case 'while':
      return during(run(world, node.then, task, time), holds(world, node.condition).truth, node.id);
    case 'asked':
      return asked(world, node, task);
    case 'sooner':
      return sooner(world, node);
  }
}

function lastRefuelling(world: World): When | undefined {
  return world.entries
    .flatMap((entry) => (entry.kind === 'refuelled' ? [{ id: entry.id, when: whenOf(entry) }] : []))
    .sort(inOrder)
    .at(-1)?.when;
}

function sinceLast(world: World, node: number, task: string, last: When | undefined): Outcome {
  return asks(last !== undefined && !doneSince(world, task, last), node, last ?? null);
}

function event(world: World, node: EventNode, task: string): Outcome {
  if (node.happenings !== undefined) return afterSoManyTimes(world, node.id, node.happenings, timesOf(world, node.event), task);
  const last = lastEvent(world, node.event);
  return last === undefined ? plain('clear', node.id) : answerable(world, node, task, last);
}

/** Times that no doing follows: with the last that is wanted it is asked for, and it comes up when one is wanting. */
function afterSoManyTimes(world: World, node: number, wanted: number, times: readonly When[], task: string): Outcome {
  const open = times.filter((when) => !doneSince(world, task, when));
  if (open.length < wanted) return plain(open.length + 1 === wanted ? 'coming-up' : 'clear', node);
  return asks(true, node, open[wanted - 1] ?? null);
}

/** Something that asks for a task at once, or within a span, until it is done. */
function answerable(world: World, node: EventNode | AskedNode, task: string, by: Happened): Outcome {
  if (doneSince(world, task, by.when)) return plain('clear', node.id);
  if (node.within === undefined) return asks(true, node.id, by.when);
  return limit(world, node, by, node.within);
}

function noted(world: World, { id, when }: { readonly id: string; readonly when: When }): Happened {
  return { when, meter: (meter) => meterAtEntry(world, meter, id, when) };
}

function asked(world: World, node: AskedNode, task: string): Outcome {
  if (node.by.is === 'defect') {
    const state = defectState(world, node.by.defect);
    if (!state.open || state.by === null) return plain('clear', node.id);
    const { class: wanted } = node.by;
    return during(
      answerable(world, node, task, noted(world, state.by)),
      ofClass(world, node.by.defect, state, (name) => name === wanted),
      node.id,
    );
  }
  const reads = taskNamed(world, node.by.task).reads[node.by.reads];
  const rule = reads?.rules[node.by.rule];
  const last = reads === undefined ? null : standing(world, reads.instrument.id);
  return last !== null && rule !== undefined && inRange(rule.range, last.value)
    ? answerable(world, node, task, noted(world, last))
    : plain('clear', node.id);
}

/** Due while the condition is true on evidence that no doing has answered. */
function when(world: World, node: number, condition: number, task: string): Outcome {
  const { truth, since } = holds(world, condition);
  const answered = dated(doings(world, task)).some((done) => since === null || !after(since, done.when));
  if (truth === 'false' || answered) return plain('clear', node);
  return truth === 'true' ? asks(true, node, since) : unknown({ id: node, early: { size: 0 }, late: { size: 0 }, lead: { size: 0 } });
}

/** A task behind a gate: it rests while that is false, and is unknown if anything is asked while that is unknown. */
export function gated(outcome: Outcome, truth: 'true' | 'false' | 'unknown', node: number | null): Outcome {
  if (truth === 'true') return outcome;
  if (truth === 'false') return { ...plain('resting', node ?? -1), node };
  const stops = outcome.stops.map(() => 'unknown' as const);
  return idle(outcome.state) ? { ...outcome, stops } : { ...outcome, state: 'unknown', stops };
}

function idle(state: State): boolean {
  return state === 'clear' || state === 'coming-up';
}

/** `while C`, or a defect that may be of a class: nothing is asked for while that is false; what would be reached is unknown while that is. */
function during(outcome: Outcome, truth: 'true' | 'false' | 'unknown', node: number): Outcome {
  if (truth === 'true') return outcome;
  if (truth === 'false' || idle(outcome.state)) return plain('clear', node);
  return plain('unknown', node, { stops: outcome.stops.map(() => 'unknown' as const) });
}
