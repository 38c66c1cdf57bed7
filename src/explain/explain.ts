/**
 * Why a task is in the state it is in: read from the record of the run (docs/meaning.md §9).
 */
import type { Assessment, Hold, Missing, Notice, Observation, TaskAssessment } from '../assess/assessment.js';
import { assertNever } from '../base/assert-never.js';
import { compareTexts } from '../base/compare-texts.js';
import type { NodeId, RuleGraph, Task } from '../graph/rule-graph.js';
import { dateEntry } from '../history/dated-entry.js';
import type { Entry, EntryId } from '../history/entry.js';
import type { CitedEntry, ExplainedTask, Explanation, RuleFacts, Unknown } from './explanation.js';
import { forecastOf } from './forecast.js';
import { namesIn } from './names.js';
import { nearestChanges } from './nearest-changes.js';
import { placeOf, ruleFacts } from './rule-facts.js';
import { entriesKnown, type EntriesKnown, standingOf } from './standing.js';
import { compareMoments } from '../values/moment.js';

/** What `explain` may be given besides the assessment. */
export interface ExplainOptions {
  /** Meter id → ticks a day, as given to `assess`: with it the explanation tells about when each part is reached. */
  readonly rates?: ReadonlyMap<string, number>;
}

/**
 * The explanation of one task.
 *
 * Nothing is assessed again: states, numbers and entries are those that `assess` recorded, so that the assessment must have been
 * made with its record. `entries` is the history that was assessed; entries are looked up there by id.
 *
 * @throws RangeError if the assessment has no such task, or none of its record.
 * @example explain(graph, assess(graph, entries, now), entries, 'change-engine-oil').state // 'due'
 */
export function explain(
  graph: RuleGraph,
  assessment: Assessment,
  entries: readonly Entry[],
  taskId: string,
  options: ExplainOptions = {},
): Explanation {
  return explainer(graph, assessment, entries, options)(taskId);
}

/**
 * As {@link explain}, for several tasks of one assessment: the history is gone through once, and not for each of them.
 *
 * @example
 * const why = explainer(graph, assessment, entries);
 * for (const { task } of assessment.tasks) show(why(task));
 */
export function explainer(
  graph: RuleGraph,
  assessment: Assessment,
  entries: readonly Entry[],
  options: ExplainOptions = {},
): (taskId: string) => Explanation {
  const known = entriesKnown(entries, assessment.now);
  return (taskId) => explainTask(graph, assessment, known, taskId, options);
}

function explainTask(graph: RuleGraph, assessment: Assessment, known: EntriesKnown, taskId: string, options: ExplainOptions): Explanation {
  const task = graph.tasks.find((candidate) => candidate.id === taskId);
  const assessed = assessment.tasks.find((candidate) => candidate.task === taskId);
  const observations = assessment.record[taskId];
  if (task === undefined || assessed === undefined) throw new RangeError(`the assessment has no task \`${taskId}\``);
  if (observations === undefined) throw new RangeError(`the assessment has no record of \`${taskId}\``);

  const recorded = { graph, entries: known.byId, observations: new Map(observations.map((seen) => [seen.node, seen])) };
  const rule = task.trigger === undefined ? null : ruleFacts(recorded, task.trigger);
  const gate = task.gate === undefined ? null : ruleFacts(recorded, task.gate);
  const standing = standingOf(assessment.now, assessed, rule, known, tasksThatCount(graph, task));
  const holds = assessment.holds.filter((hold) => holdTouches(hold, task));
  const notices = assessment.notices.filter((notice) => noticeTouches(notice, task));
  const told = {
    task: explainedTask(graph, task),
    ...standOf(assessed),
    rule,
    gate,
    others: rule === null ? [] : otherLeaves(rule, assessed.governing),
    entries: cited(observations, suspectsAmong(assessment.setAside, [rule, gate]), known.byId),
    unknown: unknownsOf(assessed, observations),
    holds,
    notices,
    changes: nearestChanges({ graph, standing, rule, gate }),
    forecast: rule === null ? null : forecastOf(rule, assessed, assessment.now, options.rates),
  };
  return {
    format: 'duewright-explanation',
    version: 1,
    schedule: scheduleOf(graph),
    now: assessment.now,
    ...told,
    names: namesIn(graph, told),
  };
}

function standOf(assessed: TaskAssessment): Pick<Explanation, 'state' | 'due' | 'left' | 'resting' | 'governing'> {
  const { state, due, left, resting, governing } = assessed;
  return { state, due, left, resting, governing };
}

function scheduleOf(graph: RuleGraph): Explanation['schedule'] {
  const { name, title, edition } = graph.schedule;
  return { name, title, fingerprint: graph.fingerprint, ...(edition === undefined ? {} : { edition }) };
}

function explainedTask(graph: RuleGraph, task: Task): ExplainedTask {
  return {
    id: task.id,
    title: task.title,
    place: placeOf(graph, task.origin),
    ...(task.reason === undefined ? {} : { reason: task.reason }),
    ...(task.source === undefined ? {} : { source: task.source }),
    ...(task.record === undefined ? {} : { record: task.record }),
    cautions: task.site.cautions,
    qualified: task.site.qualified,
    procedure: task.site.procedure,
    reads: task.reads.map((reading) => reading.instrument),
    countedBy: [...tasksThatCount(graph, task)].filter((id) => id !== task.id),
  };
}

/** The task itself, what covers it and what it is met by: a doing of any of them may be a doing of the task. */
function tasksThatCount(graph: RuleGraph, task: Task): ReadonlySet<string> {
  const covering = graph.tasks.filter((other) => other.covers.includes(task.id) || other.restarts.includes(task.id));
  return new Set([task.id, ...covering.map((other) => other.id), ...task.metBy]);
}

/** Rules that can speak for themselves, the governing one left out, in the order they were written. */
function otherLeaves(rule: RuleFacts, governing: NodeId | null): readonly NodeId[] {
  const { kind, id } = rule.node;
  if (kind === 'any' || kind === 'whichever' || kind === 'first') return rule.parts.flatMap((part) => otherLeaves(part, governing));
  return id === governing || rule.state === undefined || holdsNode(rule, governing) ? [] : [id];
}

function holdsNode(rule: RuleFacts, id: NodeId | null): boolean {
  return rule.parts.some((part) => part.node.id === id || holdsNode(part, id));
}

/** Suspect readings of the meters that the rules speak of, with the entry that each disagrees with. */
function suspectsAmong(setAside: Assessment['setAside'], rules: readonly (RuleFacts | null)[]): ReadonlyMap<EntryId, EntryId> {
  const words = JSON.stringify(rules);
  const bears = (meter: string): boolean => words.includes(JSON.stringify(meter)) || words.includes('"kind":"sooner"');
  return new Map(
    setAside.flatMap(({ entry, suspect }) => (suspect !== undefined && bears(suspect.meter) ? [[entry, suspect.against] as const] : [])),
  );
}

/** Every entry that some observation of the task rests on, with those that keep a suspect reading in them from counting, in the order in which they happened. */
function cited(
  observations: readonly Observation[],
  suspects: ReadonlyMap<EntryId, EntryId>,
  byId: ReadonlyMap<EntryId, Entry>,
): readonly CitedEntry[] {
  const ids = new Map<EntryId, EntryId | null>(observations.flatMap(entriesOf).map((id) => [id, null]));
  // A map is walked in the order of its growth, so that what is added here is looked at too.
  for (const id of ids.keys()) {
    const against = suspects.get(id);
    if (against !== undefined && !ids.has(against)) ids.set(against, id);
  }
  const found = [...ids].flatMap(([id, refutes]) => {
    const entry = byId.get(id);
    const when = entry === undefined ? undefined : dateEntry(entry)?.when;
    return entry === undefined || when === undefined
      ? []
      : [{ id, when, entry, ...(refutes === null ? {} : { refutes }), ...confirms(entry, ids) }];
  });
  return found.sort((a, b) => compareMoments(a.when, b.when) || compareTexts(a.id, b.id));
}

function confirms(entry: Entry, ids: ReadonlyMap<EntryId, unknown>): Pick<CitedEntry, 'confirms'> {
  return entry.kind === 'confirm' && ids.has(entry.entry) ? { confirms: entry.entry } : {};
}

function entriesOf(seen: Observation): readonly EntryId[] {
  return [
    ...seen.entries,
    ...(seen.limit?.base?.entries ?? []),
    ...(seen.limit?.now?.entries ?? []),
    ...(seen.shares ?? []).flatMap((share) => share.entries),
  ];
}

function unknownsOf(assessed: TaskAssessment, observations: readonly Observation[]): readonly Unknown[] {
  const found = new Map<string, Unknown>();
  for (const seen of observations) {
    for (const missing of seen.missing ?? []) note(found, missing, seen.node);
  }
  for (const missing of assessed.missing) note(found, missing, null);
  return [...found.values()];
}

function note(found: Map<string, Unknown>, missing: Missing, node: NodeId | null): void {
  const key = JSON.stringify(missing);
  if (!found.has(key)) found.set(key, { missing, node, settledBy: settledBy(missing) });
}

function settledBy(missing: Missing): Unknown['settledBy'] {
  switch (missing.what) {
    case 'reading':
      return 'read-instrument';
    case 'meter':
      return 'read-meter';
    case 'meter-at-doing':
      return 'note-meter-at-doing';
    case 'record':
      return 'record-or-state';
    case 'in-service':
      return 'state-in-service';
    case 'outing':
      return 'record-outing';
    case 'class':
      return 'note-class';
    default:
      return assertNever(missing);
  }
}

function holdTouches(hold: Hold, task: Task): boolean {
  switch (hold.why.is) {
    case 'stop':
      return false;
    case 'defect':
      return task.mends.includes(hold.why.defect);
    case 'reading':
    case 'late':
      return hold.why.task === task.id;
    default:
      return assertNever(hold.why);
  }
}

function noticeTouches(notice: Notice, task: Task): boolean {
  return notice.from.is === 'reading' ? notice.from.task === task.id : task.mends.includes(notice.from.defect);
}
