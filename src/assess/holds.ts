/** What holds the machine, what an unknown could hide, and the cautions that readings and defects carry (docs/meaning.md §6, §8). */
import type { Task } from '../graph/rule-graph.js';
import type { Hold, Notice } from './assessment.js';
import { test } from './condition.js';
import { missingClass, ofClass } from './defect-class.js';
import { latestReading, standingBand, standingReading } from './instrument.js';
import { begunBy } from './spells.js';
import type { World } from './world.js';

/** Declared stops whose condition is true or unknown. */
export function stopHolds(world: World): readonly Hold[] {
  return world.index.graph.stops.flatMap((stop): Hold[] => {
    const { truth, entries, missing } = test(world, stop.condition);
    return truth === 'false' ? [] : [{ why: { is: 'stop', stop: stop.id }, text: stop.title, truth, entries, missing }];
  });
}

/** Holds and cautions from what a task's instruments read last. */
export function readingHolds(world: World, task: Task): { readonly holds: readonly Hold[]; readonly notices: readonly Notice[] } {
  const holds: Hold[] = [];
  const notices: Notice[] = [];
  for (const reads of task.reads) {
    world.step();
    const why = { is: 'reading', task: task.id, instrument: reads.instrument.id } as const;
    const band = standingBand(world, reads);
    if (band !== null) {
      const { verdict, text = '' } = band.rule.outcome;
      if (verdict === 'hold') holds.push({ why, text, truth: 'true', entries: [band.point.entry], missing: [] });
      if (verdict === 'caution') notices.push({ from: why, text, entries: [band.point.entry] });
      continue;
    }
    const holding = reads.rules.find((rule) => rule.outcome.verdict === 'hold');
    const standing = standingReading(world, reads.instrument);
    if (holding === undefined || typeof standing !== 'string') continue;
    const last = latestReading(world, reads.instrument);
    const missing = { what: 'reading', instrument: reads.instrument.id, because: standing } as const;
    holds.push({ why, text: holding.outcome.text ?? '', truth: 'unknown', entries: last === null ? [] : [last.entry], missing: [missing] });
  }
  return { holds, notices };
}

/** Holds and cautions from the classes of open defects; where nobody noted which of several it is, what a class holds could be hidden. */
export function defectHolds(world: World): { readonly holds: readonly Hold[]; readonly notices: readonly Notice[] } {
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
