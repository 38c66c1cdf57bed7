import type { Hold, Notice } from './assessment.js';
import { missingClass, ofClass } from './defect-class.js';
import type { Holding } from './kinds.js';
import { begunBy } from './spells.js';
import type { World } from './world.js';

/** Holds and cautions from the classes of open defects; where nobody noted which of several it is, what a class holds could be hidden. */
export function defectHolds(world: World): Holding {
  const holds: Hold[] = [];
  const notices: Notice[] = [];
  for (const defect of world.index.graph.defects) {
    world.step();
    const spells = world.timeline.defects.get(defect.id);
    const spell = spells?.at(-1);
    if (spell === undefined || spell.end !== null) continue;
    const entries = [...new Set([...begunBy(spells), (spell.class?.by ?? spell.begin).entry])];
    for (const { class: name, outcome } of defect.rules) {
      const truth = ofClass(world, defect.id, spell, (each) => each === name);
      if (truth === 'false') continue;
      const why = { is: 'defect', defect: defect.id, class: name } as const;
      const missing = truth === 'unknown' ? [missingClass(defect.id)] : [];
      if (outcome.verdict === 'hold') holds.push({ why, text: outcome.text ?? '', truth, entries, missing });
      if (outcome.verdict === 'caution' && truth === 'true') notices.push({ from: why, text: outcome.text ?? '', entries });
    }
  }
  return { holds, notices };
}
