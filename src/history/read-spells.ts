import { compareTexts } from '../base/compare-texts.js';
import { gather } from '../base/gather.js';
import type { Spell, Stamped } from './timeline.js';

/** Something that begins or ends a spell: a defect opened or closed, storage begun or ended. */
export interface Edge extends Stamped {
  readonly edge: 'begin' | 'end';
}

/** A spell with everything that began it: the first, and those that said it again while it lasted. */
export interface SpellWithBegins extends Spell {
  readonly begins: readonly Stamped[];
}

/**
 * Joins beginnings and ends, given in the order of the history, into spells.
 *
 * On one day, where minutes do not tell, what was off began before it ended, and what was on ended before it began again: so a
 * defect that was found and mended on one day is closed, and one that was mended and found again on one day is open.
 */
export function readSpells(edges: readonly Edge[]): readonly SpellWithBegins[] {
  const spells: SpellWithBegins[] = [];
  let open: Stamped[] = [];
  for (const day of gather(edges, ({ when }) => when.day).values()) {
    for (const { edge, entry, when } of inOrder(day, open.length > 0)) {
      const stamp = { entry, when };
      if (edge === 'begin') open.push(stamp);
      else if (open[0] !== undefined) {
        spells.push({ begin: open[0], end: stamp, begins: open });
        open = [];
      }
    }
  }
  return open[0] === undefined ? spells : [...spells, { begin: open[0], end: null, begins: open }];
}

/** The edges of one day: those without a minute of the kind that can come first at the start of the day, the others at its end. */
function inOrder(day: readonly Edge[], wasOn: boolean): readonly Edge[] {
  const first = wasOn ? 'end' : 'begin';
  const place = (edge: Edge): number => edge.when.minute ?? (edge.edge === first ? -1 : Infinity);
  const rank = (edge: Edge): number => (edge.edge === first ? 0 : 1);
  return [...day].sort((a, b) => (place(a) === place(b) ? rank(a) - rank(b) || compareTexts(a.entry, b.entry) : place(a) - place(b)));
}
