import type { Task } from '../graph/rule-graph.js';
import type { Around } from './assess-task.js';
import type { Hold, Notice } from './assessment.js';
import { latestReading, standingBand, standingReading } from './instrument.js';
import type { Holding } from './kinds.js';
import type { World } from './world.js';

/** A task that reads instruments: what they hold and caution of besides, unless it rests. */
export const withReadings: Around = (world, task, within) => {
  const judged = within();
  if (judged.assessment.resting !== null) return judged;
  const { holds, notices } = readingHolds(world, task);
  return { ...judged, holds: [...holds, ...judged.holds], notices };
};

/** Holds and cautions from what a task's instruments read last, and what an unknown could hide (docs/meaning.md §6, §8). */
function readingHolds(world: World, task: Task): Holding {
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
