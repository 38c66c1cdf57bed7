/**
 * How far the worked examples cover the rules, read from the records of their runs.
 */
import type { Assessment, Intent, Observation } from '../assess/assessment.js';
import { worldOf } from '../assess/assess.js';
import { standingBand } from '../assess/instrument.js';
import type { Place } from '../explain/explanation.js';
import type { RuleGraph } from '../graph/rule-graph.js';
import type { Entry } from '../history/entry.js';
import { readTimeline } from '../history/read-timeline.js';
import { partsToShow, type Sign, type Wanted } from './look-for.js';
import type { Coverage, CoverageOutcome } from './report.js';

/** One moment at which examples expected something. */
export interface Sight {
  readonly entries: readonly Entry[];
  readonly intent: Intent;
  readonly assessment: Assessment;
  /** The task that the expectation is about; `null`: the machine. */
  readonly about: string | null;
  readonly place: Place;
}

/** For each part of the rules which of its outcomes some expectation has seen. A task's limits count only where something is expected of that task. */
export function coverageOf(graph: RuleGraph, sights: readonly Sight[]): Coverage {
  const seen = new Map<string, Place>();
  for (const sight of sights) {
    for (const key of keysIn(graph, sight)) if (!seen.has(key)) seen.set(key, sight.place);
  }
  const items = partsToShow(graph).map(({ kind, of, place, sign, outcomes }) => ({
    kind,
    of,
    place,
    outcomes: outcomes.map((outcome) => ({ outcome, by: seen.get(keyOf(sign, outcome)) ?? null })),
  }));
  const all = items.flatMap(({ outcomes }) => outcomes);
  return { wanted: all.length, covered: all.filter(({ by }) => by !== null).length, items };
}

/** Whether one moment shows one outcome of one part. */
export function shows(graph: RuleGraph, sight: Sight, wanted: Wanted, outcome: CoverageOutcome): boolean {
  return keysIn(graph, sight).includes(keyOf(wanted.sign, outcome));
}

function keysIn(graph: RuleGraph, sight: Sight): readonly string[] {
  const { assessment, about } = sight;
  const ofTask = about === null ? [] : (assessment.record[about] ?? []).flatMap((each) => keysOf(about, each));
  const ofMachine = about === null ? assessment.stopRecord.flatMap((each) => keysOf(null, each)) : [];
  return [...ofTask, ...ofMachine, ...standingKeys(graph, sight)];
}

function keysOf(task: string | null, { node, state, truth }: Observation): readonly string[] {
  const sign: Sign = { is: 'node', task, node };
  if (truth !== undefined) return [keyOf(sign, truth)];
  if (state === 'due' || state === 'overdue') return [keyOf(sign, 'reached'), keyOf(sign, 'came up')];
  return state === 'clear' || state === 'coming-up' ? [keyOf(sign, 'not reached')] : [];
}

/** Bands and classes that stand at the moment: of the task that is expected something of, or of all when it is the machine. */
function standingKeys(graph: RuleGraph, { entries, intent, assessment, about }: Sight): readonly string[] {
  if (graph.defects.length === 0 && graph.tasks.every(({ reads }) => reads.length === 0)) return [];
  const timeline = readTimeline(entries, graph, assessment.now);
  const world = worldOf(graph, timeline, assessment.now, { intent });
  const bands = graph.tasks.flatMap((task) =>
    task.reads.flatMap((each, reads) => {
      const band = standingBand(world, each);
      const asked = band?.rule.outcome.then.some((then) => then.task === about) === true;
      if (band === null || !(about === null || about === task.id || asked)) return [];
      return [keyOf({ is: 'band', task: task.id, reads, rule: band.index }, 'came up')];
    }),
  );
  const classes = graph.defects.flatMap(({ id }) => {
    const spell = timeline.defects.get(id)?.at(-1);
    if (spell === undefined || spell.end !== null || spell.class === null) return [];
    return [keyOf({ is: 'class', defect: id, class: spell.class.name }, 'came up')];
  });
  return [...bands, ...classes];
}

function keyOf(sign: Sign, outcome: CoverageOutcome): string {
  return JSON.stringify([sign, outcome]);
}
