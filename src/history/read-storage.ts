import { storageEdges } from './edges.js';
import type { Layout } from './facts.js';
import { readSpells } from './read-spells.js';
import type { Spell } from './timeline.js';

/** When the machine was in storage, in order. */
export function readStorage({ dated }: Layout): readonly Spell[] {
  return readSpells(storageEdges(dated)).map(({ begin, end }) => ({ begin, end }));
}
