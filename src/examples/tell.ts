/**
 * The acts of a worked example as entries of a logbook.
 */
import type { Intent } from '../assess/assessment.js';
import { assertNever } from '../base/assert-never.js';
import type { Definition } from '../check/model.js';
import type { Entry } from '../history/entry.js';
import type { ActNode, ExampleLineNode, NameNode } from '../syntax/tree.js';
import { parseTime } from '../values/moment.js';
import { unitsOf } from '../values/ticks.js';
import { asInstrument, inUnit, readingOf } from './level.js';

/** What a worked example has told so far: entries, and on the present line the dials read and the work planned. */
export interface Told {
  readonly entries: readonly Entry[];
  /** Meter values noted on this line; a doing on the line carries them. */
  readonly meters: Readonly<Record<string, number>>;
  readonly intent: Intent;
}

/** What a name of the example stands for. */
export type Meaning = (name: NameNode) => Definition | undefined;

/** Before the first line. */
export const nothingTold: Told = { entries: [], meters: {}, intent: {} };

/** At the start of a line: nothing read and nothing planned yet on it. */
export function newLine(told: Told): Told {
  return { ...told, meters: {}, intent: {} };
}

/** What is told once an act has been read, too. Acts take effect in the order in which they are written. */
export function tell(told: Told, line: ExampleLineNode, act: ActNode, meaning: Meaning): Told {
  const common = commonOf(told, line);
  const id = (name: NameNode): string => meaning(name)?.id ?? name.text;
  const add = (entry: Entry): Told => ({ ...told, entries: [...told.entries, entry] });
  const { meters } = told;
  switch (act.kind) {
    case 'act-meter':
      return tellMeter(told, common, id(act.name), inUnit(act.value, unitOfMeter(meaning(act.name))));
    case 'act-reads': {
      const instrument = asInstrument(meaning(act.name));
      if (instrument === undefined) return told;
      const value = readingOf(act.level, instrument);
      if (instrument.kind === 'meter') return typeof value === 'number' ? tellMeter(told, common, instrument.id, unitsOf(value)) : told;
      return add({ ...common, kind: 'reading', readings: { [instrument.id]: value } });
    }
    case 'act-done':
      return add({ ...common, kind: 'done', tasks: act.tasks.map(id), meters });
    case 'act-outing':
      return act.planned ? { ...told, intent: { ...told.intent, outing: intended(act, id) } } : add(outing(common, act, id));
    case 'act-happens':
      return add({ ...common, kind: 'event', event: id(act.event), meters });
    case 'act-opens':
      return add({
        ...common,
        kind: 'defect-opened',
        defect: id(act.defect),
        ...(act.class === undefined ? {} : { class: act.class.text }),
        meters,
      });
    case 'act-closes':
      return add({ ...common, kind: 'defect-closed', defect: id(act.defect) });
    case 'act-attached':
    case 'act-detached':
      return add({ ...common, kind: act.kind === 'act-attached' ? 'attached' : 'detached', attachment: id(act.attachment) });
    case 'act-stands':
      return add({
        ...common,
        kind: 'stands',
        positions: Object.fromEntries(act.items.map(({ part, position }) => [id(part), position.text])),
      });
    case 'act-storage':
      return add({ ...common, kind: 'storage', phase: act.phase });
    case 'act-refuelled':
      return add({ ...common, kind: 'refuelled' });
    case 'act-service':
      return add({ ...common, kind: 'machine', inService: line.date.text, meters });
    case 'act-states':
      return add({ ...common, kind: 'stated', task: id(act.task), ...statedAt(act, meaning) });
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

function tellMeter(told: Told, common: Common, id: string, value: number): Told {
  const meters = { ...told.meters, [id]: value };
  return { ...told, entries: [...told.entries, { ...common, kind: 'reading', meters }], meters };
}

function unitOfMeter(definition: Definition | undefined): string | undefined {
  const meter = asInstrument(definition);
  return meter?.kind === 'meter' ? meter.node.unit.text : undefined;
}

type OutingAct = Extract<ActNode, { kind: 'act-outing' }>;

function outing(common: Common, act: OutingAct, id: (name: NameNode) => string): Entry {
  return {
    ...common,
    kind: 'outing',
    ...(act.start === undefined ? {} : { at: act.start.text }),
    ...(act.end === undefined ? {} : { until: act.end.text }),
    ...(act.time === undefined ? {} : { hours: inUnit(act.time, 'h') }),
    duties: act.duties.map((duty) => ({ duty: id(duty) })),
    attachments: act.attachments.map(id),
  };
}

function intended(act: OutingAct, id: (name: NameNode) => string): NonNullable<Intent['outing']> {
  const start = act.start === undefined ? null : parseTime(act.start.text);
  return {
    ...(start === null ? {} : { start }),
    ...(act.time === undefined ? {} : { hours: inUnit(act.time, 'h') }),
    duties: act.duties.map(id),
    attachments: act.attachments.map(id),
  };
}

function statedAt(act: Extract<ActNode, { kind: 'act-states' }>, meaning: Meaning): { readonly doneAt?: Record<string, number> } {
  if (act.value === undefined || act.meter === undefined) return {};
  const meter = meaning(act.meter);
  return { doneAt: { [meter?.id ?? act.meter.text]: inUnit(act.value, unitOfMeter(meter)) } };
}
