import { lists } from '../graph/names-in-graph.js';
import type { RuleGraph } from '../graph/rule-graph.js';

/** The part of a rule graph that a history is read against: what the machine has. */
export type MachineModel = Pick<RuleGraph, (typeof lists)[number] | 'access'>;

/** The same by id. Maps, not objects: the names are data. */
export type ScheduleNames = { readonly [L in (typeof lists)[number]]: ReadonlyMap<string, RuleGraph[L][number]> } & {
  readonly parts: ReadonlyMap<string, RuleGraph['access']['parts'][number]>;
};

const known = new WeakMap<MachineModel, ScheduleNames>();

/** What `model` has by id, made once and kept for as long as the model is (a pure function of it). */
export function scheduleNames(model: MachineModel): ScheduleNames {
  const there = known.get(model);
  if (there !== undefined) return there;
  // Each list is paired with the things that are in it; the type checker cannot follow that through the entries.
  const named = Object.fromEntries(lists.map((list) => [list, byId<{ readonly id: string }>(model[list])])) as unknown as ScheduleNames;
  const names = { ...named, parts: byId(model.access.parts) };
  known.set(model, names);
  return names;
}

function byId<T extends { readonly id: string }>(items: readonly T[]): ReadonlyMap<string, T> {
  return new Map(items.map((item) => [item.id, item]));
}
