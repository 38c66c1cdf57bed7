import type { Statement } from '../history/timeline.js';
import type { EffectiveDoing } from './doings.js';
import type { World } from './world.js';

/** Doings that an owner states without a record (docs/meaning.md §3). */
export function statedDoings(world: World, task: string): readonly EffectiveDoing[] {
  return (world.timeline.statements.get(task) ?? []).map(fromStatement);
}

function fromStatement(statement: Statement): EffectiveDoing {
  return {
    why: 'stated',
    when: statement.doneBy === null ? null : { day: statement.doneBy, minute: null },
    entries: [statement.entry],
    meter: (meter) => {
      const ticks = statement.doneAt.get(meter);
      return ticks === undefined ? null : { value: ticks, entries: [statement.entry, ...(statement.dials.get(meter) ?? [])] };
    },
  };
}
