import type { AskedNode } from '../../graph/rule-graph.js';
import type { EntryId } from '../../history/entry.js';
import type { DefectSpell } from '../../history/timeline.js';
import { type Moment, notBefore } from '../../values/moment.js';
import type { Outcome } from '../../graph/rule-graph.js';
import { axisOf } from '../axis.js';
import { stoodOn } from '../base.js';
import { lastDoingSince } from '../doings.js';
import type { Missing, Note, Observation } from '../assessment.js';
import { missingClass, ofClass } from '../defect-class.js';
import { entriesOfLatest, latestReading, standingBand } from '../instrument.js';
import { stoodAt } from '../happenings.js';
import { judge } from '../judge.js';
import { cannotTell, dueSince, quiet, type Reach } from '../reach.js';
import { begunBy } from '../spells.js';
import type { TriggerContext } from '../trigger-context.js';
import type { World } from '../world.js';
import { lacksBase, lacksNow } from './interval.js';

interface Asking {
  readonly when: Moment;
  readonly entries: readonly EntryId[];
  readonly outcome: Outcome;
  /** Whether it asks at all cannot be told without this. */
  readonly doubt: Missing | null;
}

/** Asked for by what was read in another task, or by the class of an open defect (docs/meaning.md §6). */
export function asked(world: World, node: AskedNode, context: TriggerContext): Reach {
  const asking = askingOf(world, node);
  if (asking === null) {
    world.observe({ node: node.id, state: 'clear', ...notAsked(world, node) });
    return quiet(node.id);
  }
  const last = lastDoingSince(world, context.task, asking.when);
  if (last !== undefined && notBefore(last.when, asking.when)) {
    const [by = ''] = last.entries;
    world.observe({
      node: node.id,
      state: 'clear',
      entries: [...new Set([...asking.entries, ...last.entries])],
      note: { is: 'answered', by, when: last.when },
      stood: [{ on: 'moment', at: asking.when }],
    });
    return quiet(node.id);
  }
  const reach = node.within === undefined ? atOnce(world, node, asking) : within(world, { ...node, within: node.within }, asking);
  return asking.doubt === null ? reach : inDoubt(world, node, reach, asking.doubt, asking.when);
}

function atOnce(world: World, node: AskedNode, asking: Asking): Reach {
  world.observe({
    node: node.id,
    state: 'due',
    entries: asking.entries,
    reachedAt: asking.when,
    note: { is: 'asked', outcome: asking.outcome, when: asking.when },
  });
  return dueSince(node.id, asking.when);
}

/** What may not be asked for at all: where it would be reached it is unknown, and else it is clear (as a `while` whose condition is unknown). */
function inDoubt(world: World, node: AskedNode, reach: Reach, doubt: Missing, since: Moment): Reach {
  const isIdle = reach.state === 'clear' || reach.state === 'coming-up';
  const missing = [doubt, ...reach.missing];
  const note = { is: 'defect', class: null, since } as const;
  amendLast(world, { state: isIdle ? 'clear' : 'unknown', missing, note });
  const stops = reach.stops.map((stop) => ({ ...stop, truth: 'unknown' as const }));
  return isIdle ? quiet(node.id) : cannotTell(node.id, missing, 'unknown', stops);
}

/** Puts what is known better in place of parts of what was written down last. */
function amendLast(world: World, known: Partial<Observation>): void {
  const record = world.takeRecord();
  for (const [at, seen] of record.entries()) world.observe(at < record.length - 1 ? seen : { ...seen, ...known });
}

function askingOf(world: World, node: AskedNode): Asking | null {
  const { by } = node;
  if (by.is === 'defect') return askedByDefect(world, by.defect, by.class);
  const reads = world.index.tasks.get(by.task)?.reads[by.reads];
  if (reads === undefined) return null;
  const band = standingBand(world, reads);
  if (band === null || band.index !== by.rule) return null;
  return { when: band.point.when, entries: [band.point.entry], outcome: band.rule.outcome, doubt: null };
}

/** What stands on record instead of what would ask. */
function notAsked(world: World, { by }: AskedNode): { readonly entries: readonly EntryId[]; readonly note: Note } {
  if (by.is === 'defect') return notAskedByDefect(world.timeline.defects.get(by.defect));
  const instrument = world.index.tasks.get(by.task)?.reads[by.reads]?.instrument;
  const point = instrument === undefined ? null : latestReading(world, instrument);
  if (instrument === undefined || point === null) return { entries: [], note: { is: 'not-asked' } };
  return {
    entries: entriesOfLatest(world, instrument, point),
    note: { is: 'not-asked', read: { instrument: instrument.id, value: point.value, when: point.when } },
  };
}

function notAskedByDefect(spells: readonly DefectSpell[] | undefined): { readonly entries: readonly EntryId[]; readonly note: Note } {
  const spell = spells?.at(-1);
  if (spell === undefined) return { entries: [], note: { is: 'not-asked' } };
  const { begin, end } = spell;
  const entries = [...begunBy(spells), ...(end === null ? (spell.class === null ? [] : [spell.class.by.entry]) : [end.entry])];
  const name = end === null ? (spell.class?.name ?? null) : null;
  return {
    entries: [...new Set(entries)],
    note: { is: 'not-asked', defect: { class: name, since: begin.when, closed: end?.when ?? null } },
  };
}

function askedByDefect(world: World, id: string, className: string): Asking | null {
  const spells = world.timeline.defects.get(id);
  const spell = spells?.at(-1);
  const rule = world.index.defects.get(id)?.rules.find((each) => each.class === className);
  if (spell === undefined || spell.end !== null || rule === undefined) return null;
  const truth = ofClass(world, id, spell, (name) => name === className);
  if (truth === 'false') return null;
  const by = spell.class?.by ?? spell.begin;
  const doubt = truth === 'unknown' ? missingClass(id) : null;
  return { when: by.when, entries: [...new Set([...begunBy(spells), by.entry])], outcome: rule.outcome, doubt };
}

function within(world: World, node: AskedNode & { readonly within: NonNullable<AskedNode['within']> }, asking: Asking): Reach {
  const axis = axisOf(world, node.within);
  const base = stoodAt(world, axis, asking.when, asking.entries.at(-1));
  if (base === null)
    return lacksBase(world, node, { missing: axis.missing, unrecorded: false, entries: asking.entries, ...stoodOn(asking.when) });
  const now = axis.now(asking.when);
  if (now === null) return lacksNow(world, node, axis, { entries: asking.entries });
  const entries = [...new Set([...asking.entries, ...base.entries])];
  const why = node.by.is === 'defect' ? 'defect' : 'reading';
  return judge(world, node, axis, {
    base: { value: base.value, why, when: asking.when, entries },
    due: axis.add(base.value, node.within, 1),
    now,
    note: { is: 'asked', outcome: asking.outcome, when: asking.when },
  });
}
