import { notedEvents } from '../graph/noted-events.js';
import type { Attachment, Defect, Dipstick, Duty, Event, Gauge, Meter, RuleGraph, Supply, Task } from '../graph/rule-graph.js';

/** The part of a rule graph that a history is read against: what the machine has. */
export type MachineModel = Pick<
  RuleGraph,
  'meters' | 'gauges' | 'dipsticks' | 'duties' | 'attachments' | 'events' | 'supplies' | 'defects' | 'tasks' | 'access'
>;

/** The same by id. Maps, not objects: the names are data. */
export interface ScheduleNames {
  readonly meters: ReadonlyMap<string, Meter>;
  readonly gauges: ReadonlyMap<string, Gauge>;
  readonly dipsticks: ReadonlyMap<string, Dipstick>;
  readonly duties: ReadonlyMap<string, Duty>;
  readonly attachments: ReadonlyMap<string, Attachment>;
  readonly events: ReadonlyMap<string, Event>;
  /** Without those that are the doing of a task. */
  readonly notedEvents: ReadonlyMap<string, Event>;
  readonly supplies: ReadonlyMap<string, Supply>;
  readonly defects: ReadonlyMap<string, Defect>;
  readonly tasks: ReadonlyMap<string, Task>;
  readonly parts: ReadonlyMap<string, RuleGraph['access']['parts'][number]>;
}

const known = new WeakMap<MachineModel, ScheduleNames>();

/** What `model` has by id, made once and kept for as long as the model is (a pure function of it). */
export function scheduleNames(model: MachineModel): ScheduleNames {
  const there = known.get(model);
  if (there !== undefined) return there;
  const names: ScheduleNames = {
    meters: byId(model.meters),
    gauges: byId(model.gauges),
    dipsticks: byId(model.dipsticks),
    duties: byId(model.duties),
    attachments: byId(model.attachments),
    events: byId(model.events),
    notedEvents: byId(notedEvents(model)),
    supplies: byId(model.supplies),
    defects: byId(model.defects),
    tasks: byId(model.tasks),
    parts: byId(model.access.parts),
  };
  known.set(model, names);
  return names;
}

function byId<T extends { readonly id: string }>(items: readonly T[]): ReadonlyMap<string, T> {
  return new Map(items.map((item) => [item.id, item]));
}
