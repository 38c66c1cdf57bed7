import { ofKind, stamp } from './dated-entry.js';
import type { Layout } from './facts.js';
import type { Stamped } from './timeline.js';

/** When the machine was refuelled, in order. */
export function readRefuellings({ dated }: Layout): readonly Stamped[] {
  return ofKind(dated, 'refuelled').map(stamp);
}
