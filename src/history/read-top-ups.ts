import { ofKind } from './dated-entry.js';
import type { Layout } from './facts.js';
import type { TopUp } from './timeline.js';

/** What was filled up, in order; `null` for a dipstick or supply that was not noted or is not known. */
export function readTopUps({ dated, names, strays }: Layout): readonly TopUp[] {
  return ofKind(dated, 'topped-up').map(({ entry, when }) => {
    const { id, dipstick, supply, litres } = entry;
    const known = dipstick !== undefined && strays.has(id, 'dipstick', dipstick, names.dipsticks);
    const kept = supply !== undefined && strays.has(id, 'supply', supply, names.supplies);
    return { entry: id, when, litres, dipstick: known ? dipstick : null, supply: kept ? supply : null };
  });
}
