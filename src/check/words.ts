/**
 * Naming things in a diagnostic.
 */
import type { NameKind } from './model.js';

const kindNames: Readonly<Record<NameKind, string>> = {
  meter: 'a meter',
  gauge: 'a gauge',
  dipstick: 'a dipstick',
  duty: 'a duty',
  attachment: 'an attachment',
  position: 'a moving part',
  place: 'a place',
  step: 'a step',
  stop: 'a stop',
  supply: 'a supply',
  hazard: 'a hazard',
  event: 'an event',
  defect: 'a defect',
  task: 'a task',
};

/** `a meter`. */
export function kindName(kind: NameKind): string {
  return kindNames[kind];
}

/** `a gauge, a dipstick or a meter`. */
export function kindsName(kinds: readonly NameKind[]): string {
  return listed(kinds.map(kindName), 'or');
}

/** `a, b and c`. */
export function listed(items: readonly string[], joint: 'and' | 'or'): string {
  const last = items.at(-1) ?? '';
  return items.length < 2 ? last : `${items.slice(0, -1).join(', ')} ${joint} ${last}`;
}

/** A name as diagnostics show it. */
export function ticked(name: string): string {
  return `\`${name}\``;
}
