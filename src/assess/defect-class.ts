/** Which class an open defect is of; where nobody noted one, it may be any that the defect has (docs/meaning.md §6). */
import type { DefectSpell } from '../history/timeline.js';
import type { Missing, Truth } from './assessment.js';
import type { World } from './world.js';

/**
 * Whether an open defect's class is one of those that are asked for.
 *
 * @example ofClass(world, 'seep', spell, (name) => name === 'drops-fall') // 'unknown' where nobody noted a class
 */
export function ofClass(world: World, defect: string, spell: DefectSpell, isAskedFor: (name: string) => boolean): Truth {
  const possible = spell.class === null ? classNames(world, defect) : [spell.class.name];
  if (!possible.some(isAskedFor)) return 'false';
  return possible.every(isAskedFor) ? 'true' : 'unknown';
}

/** The classes of a defect, the mildest first. */
export function classNames(world: World, defect: string): readonly string[] {
  return (world.index.defects.get(defect)?.classes ?? []).map((each) => each.name);
}

/** What would settle it. */
export function missingClass(defect: string): Missing {
  return { what: 'class', defect };
}
