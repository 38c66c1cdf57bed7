import { assertNever } from '../../src/base/assert-never.js';
import type { Intent } from '../../src/assess/assessment.js';
import type { Gauge, RuleGraph } from '../../src/graph/rule-graph.js';
import type { Entry } from '../../src/history/entry.js';
import type { ActNode, ExampleLineNode, LevelNode, QuantityNode, TimeNode } from '../../src/syntax/tree.js';
import { parseTime } from '../../src/values/moment.js';
import { convert, findUnit } from '../../src/values/units.js';

/** What a worked example has told so far: entries, and on the present line the dials read and the work planned. */
export interface Told {
  readonly entries: readonly Entry[];
  /** Meter values noted on this line; a doing on the line carries them. */
  readonly meters: Readonly<Record<string, number>>;
  readonly intent: Intent;
}

/** Before the first line. */
export const nothingTold: Told = { entries: [], meters: {}, intent: {} };

/** At the start of a line: nothing read and nothing planned yet on it. */
export function newLine(told: Told): Told {
  return { ...told, meters: {}, intent: {} };
}

/** What is told once an act has been read, too. Acts take effect in the order in which they are written. */
export function tell(told: Told, line: ExampleLineNode, act: ActNode, graph: RuleGraph): Told {
  const common = commonOf(told, line);
  const add = (...entries: readonly Entry[]): Told => ({ ...told, entries: [...told.entries, ...entries] });
  switch (act.kind) {
    case 'act-meter': {
      const meters = { ...told.meters, [act.name.text]: inUnit(act.value, graph.meters.find(({ id }) => id === act.name.text)?.unit) };
      return { ...add({ ...common, kind: 'reading', meters }), meters };
    }
    case 'act-reads':
      return add({ ...common, kind: 'reading', readings: { [act.name.text]: levelOf(act.level, graph.gauges.find(({ id }) => id === act.name.text)) } });
    case 'act-done':
      return add({ ...common, kind: 'done', tasks: act.tasks.map(({ text }) => text), meters: told.meters });
    case 'act-outing':
      return act.planned ? { ...told, intent: { ...told.intent, outing: intendedOuting(act) } } : add(outingEntry(common, act));
    case 'act-happens':
      return add({ ...common, kind: 'event', event: act.event.text, meters: told.meters });
    case 'act-opens':
      return add({ ...common, kind: 'defect-opened', defect: act.defect.text, ...(act.class === undefined ? {} : { class: act.class.text }), meters: told.meters });
    case 'act-closes':
      return add({ ...common, kind: 'defect-closed', defect: act.defect.text });
    case 'act-attached':
    case 'act-detached':
      return add({ ...common, kind: act.kind === 'act-attached' ? 'attached' : 'detached', attachment: act.attachment.text });
    case 'act-stands':
      return add({ ...common, kind: 'stands', positions: Object.fromEntries(act.items.map(({ part, position }) => [part.text, position.text])) });
    case 'act-storage':
      return add({ ...common, kind: 'storage', phase: act.phase });
    case 'act-refuelled':
      return add({ ...common, kind: 'refuelled' });
    case 'act-service':
      return add({ ...common, kind: 'machine', inService: line.date.text, meters: told.meters });
    case 'act-states':
      return add({ ...common, kind: 'stated', task: act.task.text, ...statedAt(act) });
    default:
      return assertNever(act);
  }
}

interface Common {
  readonly id: string;
  readonly on: string;
  readonly at?: string;
}

/** Ids count up through the example, so that entries of one line keep the order in which they are written. */
function commonOf(told: Told, line: ExampleLineNode): Common {
  const id = `x${String(told.entries.length + 1).padStart(4, '0')}`;
  return { id, on: line.date.text, ...(line.time === undefined ? {} : { at: line.time.text }) };
}

type OutingAct = Extract<ActNode, { kind: 'act-outing' }>;

function outingEntry(common: Common, act: OutingAct): Entry {
  return {
    ...common,
    kind: 'outing',
    ...(act.start === undefined ? {} : { at: act.start.text }),
    ...(act.end === undefined ? {} : { until: act.end.text }),
    ...(act.time === undefined ? {} : { hours: inUnit(act.time, 'h') }),
    duties: act.duties.map(({ text }) => ({ duty: text })),
    attachments: act.attachments.map(({ text }) => text),
  };
}

function intendedOuting(act: OutingAct): NonNullable<Intent['outing']> {
  const start = minuteOf(act.start);
  return {
    ...(start === null ? {} : { start }),
    ...(act.time === undefined ? {} : { hours: inUnit(act.time, 'h') }),
    duties: act.duties.map(({ text }) => text),
    attachments: act.attachments.map(({ text }) => text),
  };
}

function minuteOf(time: TimeNode | undefined): number | null {
  return time === undefined ? null : parseTime(time.text);
}

function statedAt(act: Extract<ActNode, { kind: 'act-states' }>): { readonly doneAt?: Record<string, number> } {
  return act.value === undefined || act.meter === undefined ? {} : { doneAt: { [act.meter.text]: act.value.number.value } };
}

/** A quantity in the unit of what it is read on. */
function inUnit(quantity: QuantityNode, unit: string | undefined): number {
  const [from, to] = [findUnit(quantity.unit.text), unit === undefined ? null : findUnit(unit)];
  return from === null || to === null ? quantity.number.value : (convert(quantity.number.value, from, to) ?? quantity.number.value);
}

function levelOf(level: LevelNode, gauge: Gauge | undefined): number | 'low' | 'full' | 'below-low' | 'above-full' {
  switch (level.kind) {
    case 'quantity':
      return inUnit(level, gauge?.unit);
    case 'number':
      return level.value;
    case 'name':
      if (level.text === 'low' || level.text === 'full' || level.text === 'below-low' || level.text === 'above-full') return level.text;
      throw new Error(`a worked example reads \`${level.text}\`, which is no mark`);
    default:
      return assertNever(level);
  }
}
