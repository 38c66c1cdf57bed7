/**
 * The service record: what was done when, at what hours, on time or late, against which edition of the schedule.
 */
import { assertNever } from '../../base/assert-never.js';
import { assess } from '../../engine.js';
import type { DuePoint, TaskAssessment } from '../../engine.js';
import type { RuleGraph } from '../../engine.js';
import type { Entry, EntryId, EntryOf } from '../../engine.js';
import { keptInWords } from '../../render/kept-in-words.js';
import { dayOf } from '../../values/civil.js';
import { compareMoments, parseTime } from '../../values/moment.js';
import type { Day, Moment } from '../../values/moment.js';

interface Dated {
  readonly entry: Entry;
  readonly when: Moment;
}

/** How a doing stood to what the schedule asked for at that moment. */
export type Timing =
  /** Before it was overdue. `due` is the point it had to be done by, where there was one. */
  | { readonly is: 'on-time'; readonly due: DuePoint | null }
  /** After due point and allowance; `by` is how far past the due point, in ticks or days. */
  | { readonly is: 'late'; readonly due: DuePoint | null; readonly by: number | null }
  /** Nothing earlier was on record to count from. */
  | { readonly is: 'first-on-record' }
  /** A reading was missing. */
  | { readonly is: 'cannot-tell' }
  /** The schedule did not ask for it then. */
  | { readonly is: 'not-asked-for' };

/** One task of one entry. */
export interface RecordedWork {
  readonly entry: EntryId;
  readonly when: Moment;
  readonly task: string;
  /** As the schedule calls it; the id where it does not know it. */
  readonly title: string;
  /** Meter id → what it showed, as noted in the entry. */
  readonly shown: Readonly<Record<string, number>>;
  readonly by: string | null;
  readonly note: string | null;
  /** Supply id → how much. */
  readonly used: Readonly<Record<string, number>>;
  readonly timing: Timing;
  /** How long this record is kept, in words with the last day; `null` where the schedule does not say. */
  readonly kept: string | null;
  /** Of the schedule that it was judged by; `null` for a schedule without one. */
  readonly edition: number | null;
  /** The entry that voided it, and why: struck out, never left out. */
  readonly voided: { readonly by: EntryId; readonly note: string | null } | null;
}

/** What was done on a machine, when, and whether on time. */
export interface ServiceRecord {
  readonly machine: { readonly model: string | null; readonly serial: number | null; readonly inService: string | null };
  /** The editions that were used, in the order in which they came into force. */
  readonly schedules: readonly EditionInUse[];
  readonly until: Moment;
  /** In the order in which it happened. */
  readonly work: readonly RecordedWork[];
}

/** An edition of the schedule and the day from which the owner used it; `null`: from the beginning. */
export interface EditionInUse {
  readonly from: Day | null;
  readonly graph: RuleGraph;
}

/**
 * Draws up the record of all work up to `until`. Each doing is judged by the edition in use on its day, by asking what the schedule
 * said just before it was done, with the meters that were noted along with it.
 *
 * Pure: the order of the entries does not matter.
 *
 * @param editions at least one; on a day before the first, the first is used.
 * @param wanted tasks to list; judging takes time, and a drawing needs only some.
 */
export function serviceRecord(
  editions: readonly [EditionInUse, ...EditionInUse[]],
  entries: readonly Entry[],
  until: Moment,
  wanted: (task: string) => boolean = () => true,
): ServiceRecord {
  const inOrder = [...editions].sort((a, b) => (a.from ?? -Infinity) - (b.from ?? -Infinity));
  const { dated, voids } = sortOut(entries, until);
  const valid = dated.filter(({ entry }) => !voids.has(entry.id));
  const work = dated.flatMap(({ entry, when }): readonly RecordedWork[] => {
    if (entry.kind !== 'done' || !entry.tasks.some(wanted)) return [];
    const graph = editionOn(inOrder, when.day) ?? editions[0].graph;
    const voided = voids.get(entry.id);
    const judged = voided === undefined ? judge(graph, valid, entry, when) : new Map<string, Timing>();
    return entry.tasks.filter(wanted).map((task) => ({
      ...row(graph, entry, when, task),
      timing: judged.get(task) ?? { is: 'not-asked-for' },
      voided: voidWords(voided),
    }));
  });
  return { machine: machineFacts(valid), schedules: inOrder, until, work };
}

/**
 * The edition by which a row was judged.
 *
 * @throws Error for a record without schedules, which {@link serviceRecord} draws up none of.
 */
export function editionOf({ schedules }: ServiceRecord, { when }: RecordedWork): RuleGraph {
  const graph = editionOn(schedules, when.day);
  if (graph === undefined) throw new Error('a service record without a schedule');
  return graph;
}

/** All entries up to `until`, in order, and which are voided by what. A void counts whenever it was written, unless voided itself. */
function sortOut(
  entries: readonly Entry[],
  until: Moment,
): { readonly dated: readonly Dated[]; readonly voids: ReadonlyMap<EntryId, EntryOf<'void'>> } {
  const unique = [...new Map(entries.map((entry) => [entry.id, entry])).values()];
  const dated = unique.flatMap((entry): readonly Dated[] => {
    const day = dayOf(entry.on);
    return day === null || day > until.day ? [] : [{ entry, when: { day, minute: entry.at === undefined ? null : parseTime(entry.at) } }];
  });
  dated.sort((a, b) => compareMoments(a.when, b.when) || (a.entry.id < b.entry.id ? -1 : 1));
  const written = new Map(dated.flatMap(({ entry }) => (entry.kind === 'void' ? [[entry.entry, entry] as const] : [])));
  const stands = standing(written);
  return { dated, voids: new Map([...written].filter(([, by]) => stands(by.id))) };
}

/**
 * Whether an entry stands: nothing that stands itself voids it. Of voids in a circle none counts (docs/meaning.md).
 *
 * Without recursion, each entry settled once: voids of voids may be as many as a logbook has lines.
 */
function standing(written: ReadonlyMap<EntryId, EntryOf<'void'>>): (id: EntryId) => boolean {
  const settled = new Map<EntryId, boolean>();
  return (id) => {
    const chain: EntryId[] = [];
    const open = new Set<EntryId>();
    let last = id;
    for (let by = written.get(last); by !== undefined && !settled.has(last) && !open.has(last); by = written.get(last)) {
      chain.push(last);
      open.add(last);
      last = by.id;
    }
    if (open.has(last)) for (const round of chain.splice(chain.indexOf(last))) settled.set(round, false);
    else if (!settled.has(last)) settled.set(last, true);
    for (let above = chain.pop(); above !== undefined; above = chain.pop())
      settled.set(above, settled.get(written.get(above)?.id ?? '') === false);
    return settled.get(id) ?? true;
  };
}

function editionOn(inOrder: readonly EditionInUse[], day: Day): RuleGraph | undefined {
  return inOrder.findLast(({ from }) => from === null || from <= day)?.graph ?? inOrder[0]?.graph;
}

function row(graph: RuleGraph, entry: EntryOf<'done'>, when: Moment, task: string): Omit<RecordedWork, 'timing' | 'voided'> {
  const known = graph.tasks.find(({ id }) => id === task);
  return {
    entry: entry.id,
    when,
    task,
    title: known?.title ?? task,
    shown: entry.meters ?? {},
    by: entry.by ?? null,
    note: entry.note ?? null,
    used: entry.used ?? {},
    kept: known?.record === undefined ? null : keptInWords(known.record, when.day),
    edition: graph.schedule.edition?.number ?? null,
  };
}

/** What the schedule said of the entry's tasks just before: all that came earlier, and what was read along with it. */
function judge(graph: RuleGraph, valid: readonly Dated[], entry: EntryOf<'done'>, when: Moment): ReadonlyMap<string, Timing> {
  const at = valid.findIndex((each) => each.entry === entry);
  const { id, on, at: time, meters, readings } = entry;
  const before = valid.slice(0, at).map((each) => each.entry);
  // A confirmation says what was true all along, so it counts whenever it was written.
  const confirmations = valid.slice(at).flatMap((each) => (each.entry.kind === 'confirm' ? [{ ...each.entry, on, at: time }] : []));
  const noted: Entry = { kind: 'reading', id, on, at: time, meters, readings };
  const { tasks } = assess(graph, [...before, ...confirmations, noted], when, { withoutRecord: true });
  return new Map(tasks.map((assessment) => [assessment.task, timing(assessment)]));
}

function timing({ state, due, left }: TaskAssessment): Timing {
  switch (state) {
    case 'overdue':
      return { is: 'late', due, by: left === null ? null : -left };
    case 'due':
    case 'coming-up':
    case 'clear':
      return { is: 'on-time', due };
    case 'unrecorded':
      return { is: 'first-on-record' };
    case 'unknown':
      return { is: 'cannot-tell' };
    case 'resting':
      return { is: 'not-asked-for' };
    default:
      return assertNever(state);
  }
}

function voidWords(entry: EntryOf<'void'> | undefined): RecordedWork['voided'] {
  return entry === undefined ? null : { by: entry.id, note: entry.note ?? null };
}

function machineFacts(valid: readonly Dated[]): ServiceRecord['machine'] {
  const facts = valid.flatMap(({ entry }) => (entry.kind === 'machine' ? [entry] : []));
  return {
    model: facts.findLast(({ model }) => model !== undefined)?.model ?? null,
    serial: facts.findLast(({ serial }) => serial !== undefined)?.serial ?? null,
    inService: facts.findLast(({ inService }) => inService !== undefined)?.inService ?? null,
  };
}
