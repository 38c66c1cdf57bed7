import type { Amount, StagesNode } from '../../graph/rule-graph.js';
import type { EntryId } from '../../history/entry.js';
import { isAfter, notBefore } from '../../values/moment.js';
import type { Moment } from '../../values/moment.js';
import { type Axis, axisOf } from '../axis.js';
import { doingsOf, type EffectiveDoing } from '../doings.js';
import { judge } from '../judge.js';
import { quiet, type Reach } from '../reach.js';
import type { TriggerContext } from '../trigger.js';
import type { World } from '../world.js';
import { lacksBase, lacksNow } from './interval.js';

interface StageStart {
  readonly value: number;
  readonly when: Moment | null;
  readonly why: 'start' | 'event';
  readonly entries: readonly EntryId[];
}

/** At S1, S2, S3 after the machine's start or after an event (docs/meaning.md §4, "First and staged"). */
export function stages(world: World, node: StagesNode, context: TriggerContext): Reach {
  const [first] = node.amounts;
  if (first === undefined) return nothingLeft(world, node, []);
  const axis = axisOf(world, first);
  const last = lastDoing(world, node, context);
  const start = startOf(world, node, axis);
  if (start === 'no-event') return notHappened(world, node);
  if (start === null) return withoutStart(world, node, last);
  const points = node.amounts.map((amount: Amount) => axis.add(start.value, amount, 1));
  const met = stagesMet(node, axis, points, last, start);
  if (met >= points.length) return nothingLeft(world, node, metBy(axis, last, start));
  const now = axis.now(start.when);
  if (now === null) return lacksNow(world, node, axis, { entries: start.entries });
  const due = stageDue(points, met, now.value);
  const used = last === undefined || met === 0 ? [] : [...last.entries, ...(axis.at(last)?.entries ?? [])];
  return judge(world, node, axis, {
    base: { value: start.value, why: start.why, entries: [...start.entries, ...used] },
    due,
    now,
    note: { is: 'stages', met, of: points.length },
  });
}

/** Whether nothing is left of a series; `first` asks this to know whether `every` has taken over. */
export function stagesAreMet(world: World, node: StagesNode, context: TriggerContext): boolean {
  const [first] = node.amounts;
  const last = lastDoing(world, node, context);
  if (first === undefined) return true;
  if (last === undefined) return false;
  const axis = axisOf(world, first);
  const start = startOf(world, node, axis);
  if (start === 'no-event') return true;
  if (start === null) return true;
  const points = node.amounts.map((amount: Amount) => axis.add(start.value, amount, 1));
  return stagesMet(node, axis, points, last, start) >= points.length;
}

function lastDoing(world: World, node: StagesNode, context: TriggerContext): EffectiveDoing | undefined {
  const event = node.from.is === 'event' ? world.timeline.events.get(node.from.event)?.at(-1) : undefined;
  return doingsOf(world, context.task).findLast(
    (doing) => event === undefined || (doing.when !== null && notBefore(doing.when, event.when)),
  );
}

function startOf(world: World, node: StagesNode, axis: Axis): StageStart | null | 'no-event' {
  if (node.from.is === 'start') {
    const start = axis.start();
    const { inService } = world.timeline.machine;
    return start === null ? null : { ...start, when: inService === null ? null : { day: inService, minute: null }, why: 'start' };
  }
  const event = world.timeline.events.get(node.from.event)?.at(-1);
  if (event === undefined) return 'no-event';
  const value = axis.atMoment(event.when, event.entry);
  return value === null ? null : { value: value.value, when: event.when, why: 'event', entries: [event.entry, ...value.entries] };
}

/** A doing meets every stage at or before it (+ early), and at least the first; on the very day of an event only by its value. */
function stagesMet(node: StagesNode, axis: Axis, points: readonly number[], last: EffectiveDoing | undefined, start: StageStart): number {
  if (last === undefined) return 0;
  const value = axis.at(last)?.value ?? -Infinity;
  const byValue = points.filter((point) => point <= value + node.early.size).length;
  const meetsFirst = start.why === 'start' || (last.when !== null && start.when !== null && isAfter(last.when, start.when));
  return Math.max(byValue, meetsFirst ? 1 : 0);
}

/** The earliest stage not met, or the latest reached of those: missed stages do not pile up. */
function stageDue(points: readonly number[], met: number, now: number): number {
  const open = points.slice(met);
  return open.findLast((point) => point <= now) ?? open[0] ?? 0;
}

/** What shows that a series is behind: the last doing and, for a series after an event, the event and where both stood. */
function metBy(axis: Axis, last: EffectiveDoing | undefined, start: StageStart): readonly EntryId[] {
  if (last === undefined) return [];
  return start.why === 'start' ? last.entries : [...new Set([...start.entries, ...last.entries, ...(axis.at(last)?.entries ?? [])])];
}

function nothingLeft(world: World, node: StagesNode, entries: readonly EntryId[]): Reach {
  world.observe({ node: node.id, state: 'clear', entries, note: { is: 'stages', met: node.amounts.length, of: node.amounts.length } });
  return quiet(node.id);
}

function notHappened(world: World, node: StagesNode): Reach {
  world.observe({ node: node.id, state: 'clear', entries: [], note: { is: 'not-happened' } });
  return quiet(node.id);
}

/** No start on record: met if ever done and there is one stage; otherwise nobody can say how far the series has come. */
function withoutStart(world: World, node: StagesNode, last: EffectiveDoing | undefined): Reach {
  if (node.from.is === 'event') {
    return lacksBase(world, node, { missing: { what: 'meter', meter: meterOf(node) }, unrecorded: false, entries: [] });
  }
  if (last !== undefined) return nothingLeft(world, node, last.entries);
  return lacksBase(world, node, { missing: { what: 'in-service' }, unrecorded: true, entries: [] });
}

function meterOf(node: StagesNode): string {
  const [first] = node.amounts;
  return first?.on === 'meter' ? first.meter : '';
}
