import type { Amount, StagesNode } from '../../graph/rule-graph.js';
import type { EntryId } from '../../history/entry.js';
import { isAfter, notBefore } from '../../values/moment.js';
import type { Moment } from '../../values/moment.js';
import type { DuePoint } from '../assessment.js';
import { type Axis, axisKind, axisOf } from '../axis.js';
import { pointsOf, startMoment, stoodOn } from '../base.js';
import { doingsOf, type EffectiveDoing } from '../doings.js';
import { judge } from '../judge.js';
import { lastHappening, notYet } from '../happenings.js';
import { quiet, type Reach } from '../reach.js';
import type { TriggerContext } from '../trigger-context.js';
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
  if (first === undefined) return nothingLeft(world, node, { entries: [] });
  const axis = axisOf(world, first);
  if (node.amounts.some((amount) => axisKind(amount) !== axisKind(first))) throw new Error(`node ${node.id} has stages on several axes`);
  const start = startOf(world, node, axis);
  if (start === 'no-event') return notHappened(world, node);
  if (start === null) return withoutStart(world, node, doingsFor(world, node, context));
  const points = node.amounts.map((amount: Amount) => axis.add(start.value, amount, 1));
  const { met, by: last } = stagesMet(node, axis, points, doingsFor(world, node, context), start);
  if (met >= points.length) return nothingLeft(world, node, metBy(node, axis, last, start));
  const now = axis.now(start.when);
  if (now === null) return lacksNow(world, node, axis, { entries: start.entries });
  const due = stageDue(points, met, now.value);
  const at = last === undefined ? null : axis.at(last, start.when);
  const used = last === undefined ? [] : [...last.entries, ...(at?.entries ?? [])];
  return judge(world, node, axis, {
    base: { value: start.value, why: start.why, when: start.when, entries: [...new Set([...start.entries, ...used])] },
    due,
    now,
    note: { is: 'stages', met, of: points.length },
    ...(last === undefined ? {} : { stood: [...pointsOf(last.when), ...(at === null ? [] : [axis.point(at.value)])] }),
  });
}

/** Whether nothing is left of a series; `first` asks this to know whether `every` has taken over. */
export function stagesAreMet(world: World, node: StagesNode, context: TriggerContext): boolean {
  const [first] = node.amounts;
  const doings = doingsFor(world, node, context);
  if (first === undefined) return true;
  if (doings.length === 0) return false;
  const axis = axisOf(world, first);
  const start = startOf(world, node, axis);
  if (start === 'no-event') return true;
  if (start === null) return node.from.is === 'start' || meetsAlone(world, node, doings) !== undefined;
  const points = node.amounts.map((amount: Amount) => axis.add(start.value, amount, 1));
  return stagesMet(node, axis, points, doings, start).met >= points.length;
}

/** The doings that can meet a stage: all, or those not before the event. */
function doingsFor(world: World, node: StagesNode, context: TriggerContext): readonly EffectiveDoing[] {
  const event = node.from.is === 'event' ? lastHappening(world, node.from.event) : undefined;
  const doings = doingsOf(world, context.task);
  return event === undefined ? doings : doings.filter(({ when }) => when !== null && notBefore(when, event.when));
}

function startOf(world: World, node: StagesNode, axis: Axis): StageStart | null | 'no-event' {
  if (node.from.is === 'start') {
    const start = axis.start();
    return start === null ? null : { ...start, when: startMoment(world), why: 'start' };
  }
  const event = lastHappening(world, node.from.event);
  if (event === undefined) return 'no-event';
  const value = event.on(axis);
  return value === null ? null : { value: value.value, when: event.when, why: 'event', entries: [...event.entries, ...value.entries] };
}

/** How many stages are met, and the last of the doings that got so far: undefined where none is met. */
interface StagesMet {
  readonly met: number;
  readonly by: EffectiveDoing | undefined;
}

function stagesMet(
  node: StagesNode,
  axis: Axis,
  points: readonly number[],
  doings: readonly EffectiveDoing[],
  start: StageStart,
): StagesMet {
  return doings.reduce<StagesMet>(
    (most, doing) => {
      const met = metByDoing(node, axis, points, doing, start);
      return met > 0 && met >= most.met ? { met, by: doing } : most;
    },
    { met: 0, by: undefined },
  );
}

/** A doing meets every stage at or before it (+ early), and at least the first; on the very day of an event only by its value. */
function metByDoing(node: StagesNode, axis: Axis, points: readonly number[], doing: EffectiveDoing, start: StageStart): number {
  const value = axis.at(doing, start.when)?.value ?? -Infinity;
  const byValue = points.filter((point) => axis.before(point, node.early) <= value).length;
  const meetsFirst = start.why === 'start' || (doing.when !== null && start.when !== null && isAfter(doing.when, start.when));
  return Math.max(byValue, meetsFirst ? 1 : 0);
}

/** The earliest stage not met, or the latest reached of those: missed stages do not pile up. */
function stageDue(points: readonly number[], met: number, now: number): number {
  const open = points.slice(met);
  return open.findLast((point) => point <= now) ?? open[0] ?? 0;
}

interface Shown {
  readonly entries: readonly EntryId[];
  readonly stood?: readonly DuePoint[];
}

/** What shows that a series is behind: the last doing and, unless any doing would do, the start and where both stood. */
function metBy(node: StagesNode, axis: Axis, last: EffectiveDoing | undefined, start: StageStart): Shown {
  if (last === undefined) return { entries: [] };
  if (start.why === 'start' && node.amounts.length === 1) return { entries: last.entries };
  const at = axis.at(last, start.when);
  return {
    entries: [...new Set([...start.entries, ...last.entries, ...(at?.entries ?? [])])],
    stood: [
      ...pointsOf(start.when),
      ...pointsOf(last.when),
      ...[start.value, ...(at === null ? [] : [at.value])].map((value) => axis.point(value)),
    ],
  };
}

function nothingLeft(world: World, node: StagesNode, shown: Shown): Reach {
  world.observe({ node: node.id, state: 'clear', ...shown, note: { is: 'stages', met: node.amounts.length, of: node.amounts.length } });
  return quiet(node.id);
}

function notHappened(world: World, { id, from }: StagesNode): Reach {
  world.observe({ node: id, state: 'clear', ...notYet(world, from.is === 'event' ? from.event : '') });
  return quiet(id);
}

/** Of a single stage after an event whose meter nobody read: the doing that is after it, which any such doing meets. */
function meetsAlone(world: World, node: StagesNode, doings: readonly EffectiveDoing[]): EffectiveDoing | undefined {
  const event = node.from.is === 'event' ? lastHappening(world, node.from.event) : undefined;
  if (event === undefined || node.amounts.length > 1) return undefined;
  return doings.findLast(({ when }) => when !== null && isAfter(when, event.when));
}

/** No start on record: met if ever done and there is one stage; otherwise nobody can say how far the series has come. */
function withoutStart(world: World, node: StagesNode, doings: readonly EffectiveDoing[]): Reach {
  const last = doings.at(-1);
  if (node.from.is === 'event') {
    const event = lastHappening(world, node.from.event);
    const entries = event?.entries ?? [];
    const by = meetsAlone(world, node, doings);
    const since = event?.when ?? null;
    if (by !== undefined)
      return nothingLeft(world, node, { entries: [...entries, ...by.entries], stood: [...pointsOf(since), ...pointsOf(by.when)] });
    return lacksBase(world, node, { missing: { what: 'meter', meter: meterOf(node) }, unrecorded: false, entries, ...stoodOn(since) });
  }
  if (last !== undefined) return nothingLeft(world, node, { entries: last.entries });
  return lacksBase(world, node, { missing: { what: 'in-service' }, unrecorded: true, entries: [] });
}

function meterOf(node: StagesNode): string {
  const [first] = node.amounts;
  return first?.on === 'meter' ? first.meter : '';
}
