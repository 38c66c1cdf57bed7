/** Call me when: for each meter, the next value at which anything changes, if it were read now. */
import { assess } from '../assess/assess.js';
import type { Assessment } from '../assess/assessment.js';
import type { Node, RuleGraph } from '../graph/rule-graph.js';
import type { Entry } from '../history/entry.js';
import { readTimeline } from '../history/read-timeline.js';
import type { MeterPoint } from '../history/timeline.js';
import { formatDate } from '../values/civil.js';
import { formatTime, type Moment } from '../values/moment.js';
import { ticksOf, unitsOf } from '../values/ticks.js';
import { everythingSeen, type Seen, turns, valueOf } from './ahead.js';
import { DEFAULT_LOOKS, type NextOptions } from './next-moment.js';
import { type Turn, turnBetween } from './turning.js';

/** The next value of a meter at which anything changes. */
export interface NextMeter {
  readonly meter: string;
  /** Life total in ticks. */
  readonly ticks: number;
  /** What the dial then shows, in the meter's unit. */
  readonly shown: number;
  /** What changes; `null` if so many values were looked at that the search gave up here: nothing changes below it. */
  readonly turn: Turn | null;
}

/**
 * The least value above the last reading, for each meter that is read, at which a reading of it taken now would change a state, the
 * verdict, a hold or a caution; compared with a reading that shows no more than the last. Meters that were never read, and those on
 * which nothing waits, are left out.
 */
export function nextMeters(graph: RuleGraph, entries: readonly Entry[], now: Moment, options: NextOptions = {}): readonly NextMeter[] {
  const { meters } = readTimeline(entries, graph, now);
  return graph.meters.flatMap(({ id, fromOutings }) => {
    const last = fromOutings ? undefined : meters.get(id)?.points.at(-1);
    return last === undefined ? [] : nextOf(graph, entries, now, options, id, last);
  });
}

function nextOf(
  graph: RuleGraph,
  entries: readonly Entry[],
  now: Moment,
  options: NextOptions,
  meter: string,
  last: MeterPoint,
): readonly NextMeter[] {
  const offset = last.total - ticksOf(last.shown);
  const read = (ticks: number): Assessment =>
    assess(graph, withReading(entries, now, meter, unitsOf(ticks - offset)), now, { ...options, withoutRecord: false });
  const first = read(last.total);
  let [look, at] = [first, last.total];
  for (let count = 0; count < (options.looks ?? DEFAULT_LOOKS); count += 1) {
    const next = valuesAhead(graph, look, meter, at).reduce((least, each) => (each > at && each < least ? each : least), Infinity);
    if (next === Infinity) return [];
    at = next;
    look = read(at);
    const turn = turnBetween(first, look);
    if (turn !== null) return [{ meter, ticks: at, shown: unitsOf(at - offset), turn }];
  }
  return [{ meter, ticks: at, shown: unitsOf(at - offset), turn: null }];
}

/** The history with a reading taken now, which the owner stands by. */
export function withReading(entries: readonly Entry[], now: Moment, meter: string, shown: number): readonly Entry[] {
  const ids = new Set(entries.map(({ id }) => id));
  const [reading, confirmation] = [freeId('~next', ids), freeId('~next-confirmed', ids)];
  const when = { on: formatDate(now.day), ...(now.minute === null ? {} : { at: formatTime(now.minute) }) };
  return [
    ...entries,
    { kind: 'reading', id: reading, ...when, meters: { [meter]: shown } },
    { kind: 'confirm', id: confirmation, ...when, entry: reading },
  ];
}

function freeId(id: string, taken: ReadonlySet<string>): string {
  return taken.has(id) ? freeId(`~${id}`, taken) : id;
}

/** Values of a meter at which something may turn, in no order; some may lie behind. */
function valuesAhead(graph: RuleGraph, assessment: Assessment, meter: string, at: number): readonly number[] {
  const seen = everythingSeen(graph, assessment);
  return [...seen.flatMap((each) => fromRecord(each, meter, at)), ...graph.nodes.flatMap((node) => fromRule(node, meter, at))];
}

function fromRecord({ node, observation: { limit, stood } }: Seen, meter: string, at: number): readonly number[] {
  const found: number[] = [];
  if (limit?.due?.on === 'meter' && limit.due.meter === meter) {
    const turning = turns(node, limit, 1);
    found.push(...turning);
    if (node.kind === 'stages' && limit.base !== null) {
      const base = valueOf(limit.base.point);
      found.push(...node.amounts.flatMap((amount) => (amount.on === 'meter' ? [base + amount.ticks] : [])));
    }
    // What more hours are claimed by a strict duty draws the due point nearer, so there is no telling but by steps that cannot overshoot.
    if (node.kind === 'duty-mix') {
      const strictest = Math.min(node.ticks, ...node.duties.map(({ ticks }) => ticks));
      found.push(
        ...turning.filter((turn) => turn > at).map((turn) => at + Math.max(1, Math.floor(((turn - at - 1) * strictest) / node.ticks))),
      );
    }
  }
  if (node.kind === 'recent' && node.within?.on === 'meter') {
    const { ticks } = node.within;
    found.push(...(stood ?? []).flatMap((base) => (base.on === 'meter' && base.meter === meter ? [base.ticks + ticks + 1] : [])));
  }
  return found;
}

function fromRule(node: Node, meter: string, at: number): readonly number[] {
  if (node.kind === 'marks' && node.amount.meter === meter) return [(Math.floor(at / node.amount.ticks) + 1) * node.amount.ticks];
  if (node.kind !== 'compare' || node.instrument.is !== 'meter' || node.instrument.id !== meter) return [];
  return [node.range.from, node.range.to].flatMap((edge) => (edge === undefined ? [] : [Math.ceil(edge), Math.floor(edge) + 1]));
}
