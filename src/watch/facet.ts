/**
 * The parts of a history that a task can depend on, and the time. A facet is named by its kind and, where there are several, whose it
 * is: `meter engine`, `doing change-engine-oil`, `outings`, `now`.
 */
export type Facet = string;

export const NOW: Facet = 'now';
export const MACHINE: Facet = 'machine';
export const OUTINGS: Facet = 'outings';
export const STORAGE: Facet = 'storage';
export const REFUELLINGS: Facet = 'refuellings';
export const TOP_UPS: Facet = 'top-ups';

type Kind = 'meter' | 'instrument' | 'doing' | 'event' | 'defect' | 'attachment' | 'position';

/** The facet of one of many. */
export function facet(kind: Kind, name: string): Facet {
  return `${kind} ${name}`;
}
