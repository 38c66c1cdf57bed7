import { ofKind } from './dated-entry.js';
import type { Layout } from './facts.js';
import type { Stamped, Timeline } from './timeline.js';

/** Moving part → where it was last left. */
export function readPositions({ dated, names, strays }: Layout): Timeline['positions'] {
  const positions = new Map<string, Stamped & { readonly position: string }>();
  for (const { entry, when } of ofKind(dated, 'stands')) {
    for (const [part, position] of Object.entries(entry.positions)) {
      if (!strays.has(entry.id, 'moving part', part, names.parts)) continue;
      const known = new Map(names.parts.get(part)?.positions.map(({ name }) => [name, name]));
      if (strays.has(entry.id, `position of \`${part}\` named`, position, known)) positions.set(part, { entry: entry.id, when, position });
    }
  }
  return positions;
}
