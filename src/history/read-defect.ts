import { defectEdges } from './edges.js';
import type { Layout } from './facts.js';
import type { DefectSpell, Stamped, Timeline } from './timeline.js';
import { readSpells } from './read-spells.js';
import type { Edge } from './read-spells.js';

/** A defect opened (or looked at again, perhaps in another class) or closed. */
export interface DefectEdge extends Edge {
  /** The class noted, if any. */
  readonly class: string | null;
}

/** Defect → when it was open, for those that ever were. */
export function readDefects({ dated, names, strays }: Layout): Timeline['defects'] {
  return new Map([...defectEdges(dated, names, strays)].map(([id, edges]) => [id, readDefect(edges)]));
}

/**
 * The spells of one defect, each with the class last noted in it.
 *
 * An entry that opens a defect which is open already notes how it stands now; without a class the one before still holds.
 */
function readDefect(edges: readonly DefectEdge[]): readonly DefectSpell[] {
  const classes = new Map(edges.map((edge) => [edge.entry, edge.class]));
  return readSpells(edges).map(({ begin, end, begins }) => ({ begin, end, class: lastClass(begins, classes) }));
}

function lastClass(begins: readonly Stamped[], classes: ReadonlyMap<string, string | null>): DefectSpell['class'] {
  for (const by of begins.toReversed()) {
    const name = classes.get(by.entry);
    if (typeof name === 'string') return { name, by };
  }
  return null;
}
