/** Conditions: true, false or unknown (§6, §7). */
import type { Condition, Instrument, Range } from '../../src/graph/rule-graph.js';
import { addSpan, after, inOrder, later, minutesFrom, notBefore, ymd, type When } from './calendar.js';
import { spellsOn } from './attachments.js';
import { defectState, ofClass } from './defects.js';
import { dated, doings, start } from './doings.js';
import { firstShows, looks, meterAt, meterAtEntry, meterNow, readings, tooOld, type Look } from './meters.js';
import { ended, outings, underWay, workSince } from './outings.js';
import { conditionAt, whenOf, type World } from './world.js';

export type Truth = 'true' | 'false' | 'unknown';

export interface Finding {
  readonly truth: Truth;
  /** The newest thing on record that makes it so. */
  readonly since: When | null;
  /** For an unknown: the readings that are missing; anything else that is missing as `?`. */
  readonly missing: readonly string[];
}

function found(truth: Truth, since: When | null, missing: readonly string[] = []): Finding {
  return { truth, since, missing: truth === 'unknown' ? missing : [] };
}

export function holds(world: World, id: number): Finding {
  return judged(world, conditionAt(world, id));
}

function judged(world: World, node: Condition): Finding {
  switch (node.kind) {
    case 'and':
      return joined(
        node.parts.map((part) => holds(world, part)),
        'false',
        'true',
      );
    case 'or':
      return joined(
        node.parts.map((part) => holds(world, part)),
        'true',
        'false',
      );
    case 'not': {
      const inner = holds(world, node.part);
      return { ...inner, truth: inner.truth === 'true' ? 'false' : inner.truth === 'false' ? 'true' : 'unknown' };
    }
    case 'position-is':
      return position(world, node.part, node.position);
    case 'attachment-is': {
      const { on, since } = attachment(world, node.attachment);
      return found(on === node.on ? 'true' : 'false', since);
    }
    case 'defect-is':
      return defect(world, node);
    case 'duty-is':
      return duty(world, node.duty);
    case 'compare':
      return compare(world, node.instrument, node.range);
    case 'trend':
      return trend(world, node);
    case 'recent':
      return recent(world, node);
    case 'age': {
      const began = start(world);
      if (began === null) return found('unknown', null, ['?']);
      const birthday = addSpan(began.when.day, node.span);
      return world.now.day > birthday ? found('true', { day: birthday + 1, minute: null }) : found('false', began.when);
    }
    case 'idle':
      return idle(world, node.span);
    case 'unworked':
      return unworked(world, node.task);
    case 'at-work': {
      const going = underWay(world);
      return going === undefined ? found('false', ended(world).at(-1)?.end ?? null) : found('true', going.when);
    }
    case 'season':
      return season(world, node.from, node.to);
  }
}

/** Kleene: one part decides; else an unknown part leaves it unknown. */
function joined(parts: readonly Finding[], deciding: Truth, otherwise: Truth): Finding {
  for (const truth of [deciding, 'unknown'] as const) {
    const saying = parts.filter((part) => part.truth === truth);
    if (saying.length > 0)
      return found(
        truth,
        newest(saying.map(({ since }) => since)),
        saying.flatMap(({ missing }) => missing),
      );
  }
  return found(otherwise, newest(parts.map(({ since }) => since)));
}

function newest(all: readonly (When | null)[]): When | null {
  const known = all.flatMap((when) => (when === null ? [] : [{ when, id: '' }]));
  return known.sort(inOrder).at(-1)?.when ?? null;
}

function position(world: World, part: string, wanted: string): Finding {
  const noted = world.entries
    .flatMap((entry) =>
      entry.kind === 'stands' && Object.hasOwn(entry.positions, part)
        ? [{ id: entry.id, when: whenOf(entry), at: entry.positions[part] }]
        : [],
    )
    .sort(inOrder)
    .at(-1);
  const { rest } = world.graph.access;
  const at = noted?.at ?? (Object.hasOwn(rest, part) ? rest[part] : undefined);
  return at === undefined ? found('unknown', null, ['?']) : found(at === wanted ? 'true' : 'false', noted?.when ?? null);
}

/** Whether an attachment is on, and the entry that last said so. */
export function attachment(world: World, id: string): { readonly on: boolean; readonly since: When | null } {
  if (world.wanted.outing?.attachments?.includes(id) === true) return { on: true, since: world.now };
  const last = spellsOn(world, id).at(-1);
  return { on: last !== undefined && last.end === null, since: last === undefined ? null : (last.end ?? last.begin).when };
}

function defect(world: World, node: Extract<Condition, { kind: 'defect-is' }>): Finding {
  const state = defectState(world, node.defect);
  if (!node.open) return found(state.open ? 'false' : 'true', state.since);
  if (!state.open) return found('false', state.since);
  if (node.class === undefined && node.worseThan === undefined) return found('true', state.since);
  const classes = world.graph.defects.find(({ id }) => id === node.defect)?.classes.map(({ name }) => name) ?? [];
  const wanted = node.class === undefined ? classes.slice(classes.indexOf(node.worseThan ?? '') + 1) : [node.class];
  return found(
    ofClass(world, node.defect, state, (name) => wanted.includes(name)),
    state.since,
    ['?'],
  );
}

function duty(world: World, id: string): Finding {
  const going = underWay(world);
  if (going !== undefined) return found(going.duties.some((each) => each.duty === id) ? 'true' : 'false', going.when);
  const { outing } = world.wanted;
  if (outing !== undefined) return found(outing.duties?.includes(id) === true ? 'true' : 'false', world.now);
  const today = outings(world)
    .filter(({ when }) => when.day === world.now.day)
    .at(-1);
  return found(today?.duties.some((each) => each.duty === id) === true ? 'true' : 'false', today?.when ?? null);
}

export function inRange(range: Range, value: number): boolean {
  if (range.from !== undefined && !(range.fromIncluded ? value >= range.from : value > range.from)) return false;
  return range.to === undefined || (range.toIncluded ? value <= range.to : value < range.to);
}

function compare(world: World, instrument: Instrument, range: Range): Finding {
  const last = latest(world, instrument);
  if (last === null) return found('unknown', null, [instrument.id]);
  if (instrument.is !== 'meter' && tooOld(world, instrument.id, last)) return found('unknown', last.when, [instrument.id]);
  if (last.id === '') return found(inRange(range, last.value) ? 'true' : 'false', null);
  const inside = inRange(range, last.value);
  return found(inside ? 'true' : 'false', inside && instrument.is === 'meter' ? cameIn(world, instrument.id, range, last.when) : last.when);
}

/** A meter only rises: the evidence that it is above something is the reading that first showed it. */
function cameIn(world: World, meter: string, range: Range, otherwise: When): When | null {
  const { from } = range;
  if (from === undefined) return otherwise;
  return firstShows(world, meter, (total) => (range.fromIncluded ? total >= from : total > from));
}

/** The latest reading of a gauge, dipstick or meter; a meter that counts from outings always has a value. */
function latest(world: World, instrument: Instrument): Look | null {
  if (instrument.is !== 'meter') return looks(world, instrument.id).at(-1) ?? null;
  const last = readings(world, instrument.id).at(-1);
  if (last !== undefined) return { id: last.id, when: last.when, value: last.total };
  const total = meterNow(world, instrument.id);
  return total === null ? null : { id: '', when: { day: -Infinity, minute: null }, value: total };
}

function trend(world: World, node: Extract<Condition, { kind: 'trend' }>): Finding {
  const all = looks(world, node.instrument.id);
  const last = all.at(-1);
  const inside = all.filter((look) => {
    const minutes = last === undefined ? null : minutesFrom(look.when, last.when);
    return minutes !== null && minutes >= 0 && minutes <= node.withinMinutes;
  });
  if (last === undefined || inside.length < 2)
    return found(underWay(world) === undefined ? 'false' : 'unknown', last?.when ?? null, [node.instrument.id]);
  const change = (look: Look): number => (node.direction === 'climbs' ? last.value - look.value : look.value - last.value);
  return found(inside.some((look) => look.id !== last.id && change(look) >= node.by) ? 'true' : 'false', last.when);
}

function recent(world: World, node: Extract<Condition, { kind: 'recent' }>): Finding {
  const { what, within } = node;
  const times = node.times ?? 1;
  const last =
    what.is === 'read'
      ? latest(world, what.instrument)
      : what.is === 'done'
        ? dated(doings(world, what.task)).at(-times)
        : allEvents(world, what.event).at(-times);
  if (last === null || last === undefined) return found('false', null);
  const since = newestOf(world, node) ?? last.when;
  if (within === undefined) return found('true', since);
  switch (within.on) {
    case 'calendar': {
      if (within.unit === 'minutes') {
        // No minute noted: at the start of its day; now without one: at the end of the day.
        const end = later({ day: last.when.day, minute: last.when.minute ?? 0 }, within);
        const now = { day: world.now.day, minute: world.now.minute ?? 1439 };
        return after(now, end) ? found('false', end) : found('true', since);
      }
      const day = addSpan(last.when.day, within);
      return world.now.day > day ? found('false', { day: day + 1, minute: null }) : found('true', since);
    }
    case 'work':
      return found(workSince(world, last.when, within.duty) <= within.ticks ? 'true' : 'false', since);
    case 'meter': {
      const now = meterNow(world, within.meter);
      const then =
        what.is === 'done'
          ? (dated(doings(world, what.task)).at(-times)?.meter(within.meter) ?? null)
          : meterAtEntry(world, within.meter, last.id, last.when);
      if (now === null || then === null) return found('unknown', last.when, ['?']);
      if (now - then <= within.ticks) return found('true', since);
      return found('false', firstShows(world, within.meter, (total) => total > then + within.ticks) ?? last.when);
    }
  }
}

/** The newest of what is asked for several times: with it the number was full. */
function newestOf(world: World, { what, times }: Extract<Condition, { kind: 'recent' }>): When | undefined {
  if (times === undefined || what.is === 'read') return undefined;
  return (what.is === 'done' ? dated(doings(world, what.task)) : allEvents(world, what.event)).at(-1)?.when ?? undefined;
}

function allEvents(world: World, event: string): readonly { readonly id: string; readonly when: When }[] {
  const on = world.graph.events.find(({ id }) => id === event)?.on;
  if (on !== undefined) {
    const happened = onFixedDay(world, on);
    // On the day itself no entry notes it, and so none says where the meters stood.
    const id = happened?.when.day === on ? '' : (start(world)?.id ?? '');
    return happened === undefined ? [] : [{ id, when: happened.when }];
  }
  return world.entries
    .flatMap((entry) => (entry.kind === 'event' && entry.event === event ? [{ id: entry.id, when: whenOf(entry) }] : []))
    .sort(inOrder);
}

/** Each time that an event happened, or that the task was done whose doing it is, in order. */
export function timesOf(world: World, event: string): readonly When[] {
  const { task } = world.graph.events.find(({ id }) => id === event) ?? {};
  return (task === undefined ? allEvents(world, event) : dated(doings(world, task))).map(({ when }) => when);
}

/** Something that happened, with what the meters showed then. */
export interface Happened {
  readonly when: When;
  readonly meter: (meter: string) => number | null;
}

/** The last time that an event happened, or that the task was done whose doing it is. */
export function lastEvent(world: World, event: string): Happened | undefined {
  const { task, on } = world.graph.events.find(({ id }) => id === event) ?? {};
  if (task !== undefined) return dated(doings(world, task)).at(-1);
  if (on !== undefined) return onFixedDay(world, on);
  const last = allEvents(world, event).at(-1);
  return last && { when: last.when, meter: (meter) => meterAtEntry(world, meter, last.id, last.when) };
}

/** What happens to every machine on a day; to one that entered service later, when it entered it. */
function onFixedDay(world: World, day: number): Happened | undefined {
  const begin = start(world);
  if (begin !== null && begin.when.day > day) return begin.when.day > world.now.day ? undefined : begin;
  const when = { day, minute: null };
  return day > world.now.day ? undefined : { when, meter: (meter) => meterAt(world, meter, when) };
}

/** No outing of which anything lies after the last doing. */
function unworked(world: World, task: string): Finding {
  const done = dated(doings(world, task)).at(-1)?.when ?? null;
  const since = outings(world).filter(({ when, end }) => done === null || notBefore(when, done) || end === null || after(end, done));
  const last = since
    .map((outing) => ({ id: outing.id, when: outing.when }))
    .sort(inOrder)
    .at(-1);
  return last === undefined ? found('true', done) : found('false', last.when);
}

function idle(world: World, span: Extract<Condition, { kind: 'idle' }>['span']): Finding {
  if (underWay(world) !== undefined) return found('false', underWay(world)?.when ?? null);
  const last = ended(world).at(-1)?.end ?? start(world)?.when;
  if (last === undefined) return found('unknown', null, ['?']);
  const from = addSpan(last.day, span);
  return world.now.day >= from ? found('true', { day: from, minute: null }) : found('false', last);
}

/** The evidence of a season is the day on which it began, or on which it ended. */
function season(
  world: World,
  from: { readonly month: number; readonly day: number },
  to: { readonly month: number; readonly day: number },
): Finding {
  const inside = inSeason(world.now.day, from, to);
  let day = world.now.day;
  while (inSeason(day - 1, from, to) === inside && day > world.now.day - 400) day -= 1;
  return found(inside ? 'true' : 'false', { day, minute: null });
}

function inSeason(
  day: number,
  from: { readonly month: number; readonly day: number },
  to: { readonly month: number; readonly day: number },
): boolean {
  const date = ymd(day);
  const place = (each: { readonly month: number; readonly day: number }): number => each.month * 100 + each.day;
  const here = place(date);
  return place(from) <= place(to) ? here >= place(from) && here <= place(to) : here >= place(from) || here <= place(to);
}
