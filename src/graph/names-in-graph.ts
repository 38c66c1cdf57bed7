/**
 * Names that stand in a graph, with the list of things in which each has to be.
 */
import type { Amount, Instrument, RuleGraph, Site } from './rule-graph.js';

/** The lists of things that have a name. */
export const lists = [
  'meters',
  'gauges',
  'dipsticks',
  'duties',
  'attachments',
  'events',
  'supplies',
  'defects',
  'tasks',
] as const satisfies readonly (keyof RuleGraph)[];

/** What a name can be the name of. */
export type NameKind = (typeof lists)[number] | 'parts' | 'places';

/** A name and the list in which it has to stand; `undefined` where nothing is named. */
export type Name = readonly [kind: NameKind, id: string | undefined];

/** What is named where something is done. */
export function namesOfSite({ place, under }: Site): readonly Name[] {
  return [['places', place], ...under.map(({ part }): Name => ['parts', part])];
}

/** What an amount is counted on. */
export function namesOfAmount(amount: Amount | undefined): readonly Name[] {
  if (amount === undefined || amount.on === 'calendar') return [];
  return amount.on === 'meter' ? [['meters', amount.meter]] : [['duties', amount.duty]];
}

/** The instrument that is meant. */
export function nameOf({ is, id }: Instrument): Name {
  return [`${is}s`, id];
}
