/**
 * A second evaluator, written apart from src/assess, straight from docs/meaning.md.
 *
 * It shares no code with the first but the shapes of rule graph and entries. Every question is answered from the whole history, with no
 * index and nothing carried from one moment to the next: easy to hold against the page. What a question asks twice is answered once
 * (`remembered.ts`).
 */
import type { Entry } from '../../src/history/entry.js';
import type { RuleGraph, Task } from '../../src/graph/rule-graph.js';
import type { When } from './calendar.js';
import { attachment, holds, inRange } from './conditions.js';
import { defectState, ofClass } from './defects.js';
import { standing } from './meters.js';
import { plain, reached, type Due, type Outcome, type State } from './outcome.js';
import { gated, trigger } from './triggers.js';
import { worldOf, type Wanted, type World } from './world.js';

export type Verdict = 'held' | 'work-due-first' | 'ready' | 'cannot-tell';

export interface Judgement {
  readonly verdict: Verdict;
  readonly tasks: readonly { readonly task: string; readonly state: State; readonly due: Due | null; readonly governing: number | null }[];
}

/** What the machine needs, as docs/meaning.md has it. */
export function judge(graph: RuleGraph, history: readonly Entry[], now: When, wanted: Wanted = {}): Judgement {
  const world = worldOf(graph, history, now, wanted);
  const outcomes = graph.tasks.map((task) => ({ task, outcome: taskOutcome(world, task) }));
  return {
    verdict: verdict(world, outcomes),
    tasks: outcomes.map(({ task, outcome }) => ({ task: task.id, state: outcome.state, due: outcome.due, governing: outcome.node })),
  };
}

function taskOutcome(world: World, task: Task): Outcome {
  if (!applies(world, task)) return { ...plain('resting', -1), node: null };
  const outcome = task.trigger === undefined ? { ...plain('clear', -1), node: null } : trigger(world, task.trigger, task.id);
  return task.gate === undefined ? outcome : gated(outcome, holds(world, task.gate).truth, null);
}

/** Whether the task is one for this machine, as it stands. */
function applies(world: World, task: Task): boolean {
  if (task.attachment !== undefined && !attachment(world, task.attachment).on) return false;
  const serial = world.entries.flatMap((entry) => (entry.kind === 'machine' && entry.serial !== undefined ? [entry.serial] : [])).at(-1);
  return task.serial === undefined || serial === undefined || (serial >= task.serial.from && serial <= task.serial.to);
}

interface Judged {
  readonly task: Task;
  readonly outcome: Outcome;
}

/** §8: held, cannot tell, work due first, ready. */
function verdict(world: World, all: readonly Judged[]): Verdict {
  const due = all.filter(({ outcome }) => reached(outcome.state)).map(({ task }) => task);
  const signs = [...stopSigns(world, due), ...readingSigns(world, all, due), ...defectSigns(world), ...lateSigns(all)];
  if (signs.includes('held')) return 'held';
  if (signs.includes('hidden')) return 'cannot-tell';
  return due.length > 0 || all.some(({ outcome }) => outcome.state === 'unrecorded') ? 'work-due-first' : 'ready';
}

type Sign = 'held' | 'hidden';

/** Whether a task that is due reads what is missing. */
function settles(due: readonly Task[], instrument: string): boolean {
  return due.some(({ reads }) => reads.some((each) => each.instrument.id === instrument));
}

function stopSigns(world: World, due: readonly Task[]): readonly Sign[] {
  return world.graph.stops.flatMap((stop): readonly Sign[] => {
    const { truth, missing } = holds(world, stop.condition);
    if (truth === 'true') return ['held'];
    return truth === 'unknown' && !missing.every((each) => settles(due, each)) ? ['hidden'] : [];
  });
}

/** A task that rests holds nothing. */
function readingSigns(world: World, all: readonly Judged[], due: readonly Task[]): readonly Sign[] {
  return all
    .filter(({ outcome }) => outcome.state !== 'resting')
    .flatMap(({ task }) => task.reads)
    .flatMap(({ instrument, rules }): readonly Sign[] => {
      const holding = rules.filter(({ outcome }) => outcome.verdict === 'hold');
      if (holding.length === 0) return [];
      const stands = standing(world, instrument.id);
      if (stands === null) return settles(due, instrument.id) ? [] : ['hidden'];
      return holding.some(({ range }) => inRange(range, stands.value)) ? ['held'] : [];
    });
}

function defectSigns(world: World): readonly Sign[] {
  return world.graph.defects.flatMap(({ id, rules }): readonly Sign[] => {
    const state = defectState(world, id);
    const holding = rules.filter(({ outcome }) => state.open && outcome.verdict === 'hold');
    return holding.flatMap((rule): readonly Sign[] => {
      const truth = ofClass(world, id, state, (name) => name === rule.class);
      return truth === 'true' ? ['held'] : truth === 'unknown' ? ['hidden'] : [];
    });
  });
}

/** Hard stops of limits; a task that is due settles its own. */
function lateSigns(all: readonly Judged[]): readonly Sign[] {
  return all.flatMap(({ outcome }): readonly Sign[] => {
    if (outcome.stops.includes('true')) return ['held'];
    return outcome.stops.length > 0 && !reached(outcome.state) ? ['hidden'] : [];
  });
}
