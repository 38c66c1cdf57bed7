/**
 * What an explanation says of a task whatever has happened to the machine: found once for a graph, however many machines and moments are
 * asked about.
 */
import { notedEvents } from '../graph/noted-events.js';
import type { NodeId, RuleGraph, Task } from '../graph/rule-graph.js';
import { type Band, bandsIn, type Edge, edgesIn } from './bands.js';
import type { ExplainedTask, Explanation } from './explanation.js';
import { GrowingNames, type Named, namesIn, type NamesById, namesById, wordsIn } from './names.js';
import { placeOf, type RuleOutline, ruleOutline } from './rule-outline.js';

/** A task with its rules. */
export interface TaskOutline {
  readonly task: Task;
  readonly told: ExplainedTask;
  /** The task itself, what covers it and what it is met by: a doing of any of them may be a doing of the task. */
  readonly counting: ReadonlySet<string>;
  readonly rule: RuleOutline | null;
  readonly gate: RuleOutline | null;
  /** The band whose reading asks for the task, by the node that says so. */
  readonly bands: ReadonlyMap<NodeId, Band>;
  /** Edges of what its rules are told by, as far as they are tried. */
  readonly edges: readonly Edge[];
  /** What each of the rules mentions, as it is written in the graph, by its node. */
  readonly words: ReadonlyMap<NodeId, ReadonlySet<string>>;
  /** Of what the task and its rules mention. */
  readonly names: GrowingNames;
}

/** A schedule, with the outlines of those of its tasks that were asked for so far. */
export interface ScheduleOutline {
  readonly schedule: Explanation['schedule'];
  readonly names: NamesById;
  /** Events that somebody notes. */
  readonly noted: ReadonlySet<string>;
  /** Meters that nobody turns by hand: they count from outings, or only with an attachment. */
  readonly withOutings: ReadonlySet<string>;
  /** `null` for a task that the schedule does not have. */
  readonly taskOf: (id: string) => TaskOutline | null;
}

const outlines = new WeakMap<RuleGraph, ScheduleOutline>();

/** The outline of a schedule, made once and kept for as long as the graph is (a pure function of it). */
export function outlineOf(graph: RuleGraph): ScheduleOutline {
  const known = outlines.get(graph);
  if (known !== undefined) return known;
  const outline = scheduleOutline(graph);
  outlines.set(graph, outline);
  return outline;
}

function scheduleOutline(graph: RuleGraph): ScheduleOutline {
  const { name, title, edition } = graph.schedule;
  const tasks = new Map<string, TaskOutline>();
  const names = namesById(graph);
  return {
    schedule: { name, title, fingerprint: graph.fingerprint, ...(edition === undefined ? {} : { edition }) },
    names,
    noted: new Set(notedEvents(graph).map(({ id }) => id)),
    withOutings: new Set(graph.meters.filter((meter) => meter.fromOutings || meter.attachment !== undefined).map(({ id }) => id)),
    taskOf: (id) => {
      const known = tasks.get(id);
      if (known !== undefined) return known;
      const task = graph.tasks.find((candidate) => candidate.id === id);
      if (task === undefined) return null;
      const outline = taskOutline(graph, task, names);
      tasks.set(id, outline);
      return outline;
    },
  };
}

function taskOutline(graph: RuleGraph, task: Task, known: NamesById): TaskOutline {
  const counting = tasksThatCount(graph, task);
  const rule = task.trigger === undefined ? null : ruleOutline(graph, task.trigger);
  const gate = task.gate === undefined ? null : ruleOutline(graph, task.gate);
  const told = explainedTask(graph, task, counting, rule);
  const bands = new Map(rule === null ? [] : bandsIn(rule, graph));
  const instruments = [...bands.values()].map(({ instrument }) => instrument);
  const mentioned = wordsIn([told, rule, gate, instruments]);
  return {
    task,
    told,
    counting,
    rule,
    gate,
    bands,
    edges: rule === null ? [] : edgesIn(rule, bands),
    words: new Map([rule, gate].flatMap((tree) => (tree === null ? [] : wordsByNode(tree, bands)))),
    names: new GrowingNames(namesIn(graph, mentioned), placesOf([...mentioned].flatMap((word) => known.get(word) ?? []))),
  };
}

function placesOf(named: readonly Named[]): readonly boolean[] {
  const most = named.reduce((last, { at }) => Math.max(last, at), -1);
  const places = new Array<boolean>(most + 1).fill(false);
  for (const { at } of named) places[at] = true;
  return places;
}

function wordsByNode({ node, parts }: RuleOutline, bands: TaskOutline['bands']): readonly (readonly [NodeId, ReadonlySet<string>])[] {
  return [[node.id, wordsIn([node, bands.get(node.id)?.instrument ?? null])], ...parts.flatMap((part) => wordsByNode(part, bands))];
}

function explainedTask(graph: RuleGraph, task: Task, counting: ReadonlySet<string>, rule: RuleOutline | null): ExplainedTask {
  const comesAfter = tasksBefore(graph, wordsIn(rule));
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
    countedBy: [...counting].filter((id) => id !== task.id),
    ...(comesAfter.length === 0 ? {} : { comesAfter }),
  };
}

/** The tasks whose doing is an event of these rules, with those whose doing counts as theirs. */
function tasksBefore(graph: RuleGraph, words: ReadonlySet<string>): readonly string[] {
  const happenings = graph.events.filter(({ id, task }) => task !== undefined && words.has(id));
  const tasks = graph.tasks.filter(({ id }) => happenings.some((event) => event.task === id));
  return [...new Set(tasks.flatMap((task) => [...tasksThatCount(graph, task)]))];
}

function tasksThatCount(graph: RuleGraph, task: Task): ReadonlySet<string> {
  const covering = graph.tasks.filter((other) => other.covers.includes(task.id) || other.restarts.includes(task.id));
  return new Set([task.id, ...covering.map((other) => other.id), ...task.metBy]);
}
