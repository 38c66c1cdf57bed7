/**
 * The rules of one task as a tree of words, the common ground of the text and of the picture.
 */
import type { Margin, Node, NodeId, RuleGraph, Task, Trigger } from '../graph/rule-graph.js';
import { namesOf } from '../explain/names.js';
import { placeOf } from '../explain/rule-outline.js';
import { amountInWords, calendarInWords } from './amounts-in-words.js';
import type { Titles } from './amounts-in-words.js';
import { isCondition, partsOf } from '../graph/node-references.js';
import { asSentence, counted } from './count-in-words.js';
import { nodeInWords } from './rule-in-words.js';
import { placeInWords } from './place-in-words.js';

/** What a rule does for the one above it. */
export type Role = 'task' | 'gate' | 'part' | 'first' | 'then' | 'condition';

export interface RuleTree {
  /** Unique within the tree, stable: the node's id, with the path where one node stands in several places. */
  readonly key: string;
  readonly kind: 'task' | 'joint' | 'limit' | 'occasion' | 'condition';
  readonly role: Role;
  readonly words: string;
  /** Allowances and the like, one a line. */
  readonly details: readonly string[];
  /** `orchard-tractor.due:42:3`. */
  readonly place: string;
  readonly parts: readonly RuleTree[];
}

/** The tree of a task. @throws RangeError for an id that the schedule does not have. */
export function ruleTree(graph: RuleGraph, taskId: string): RuleTree {
  const task = graph.tasks.find((candidate) => candidate.id === taskId);
  if (task === undefined) throw new RangeError(`the schedule has no task \`${taskId}\``);
  const names = namesOf(graph);
  const below = [
    ...(task.gate === undefined ? [] : nodeTree(graph, names, task.gate, 'gate', 'gate')),
    ...(task.trigger === undefined ? [] : nodeTree(graph, names, task.trigger, 'part', 'trigger')),
  ];
  return {
    key: 'task',
    kind: 'task',
    role: 'task',
    words: task.title,
    details: taskDetails(task, names),
    place: placeInWords(placeOf(graph, task.origin)),
    parts: below,
  };
}

function taskDetails(task: Task, names: Titles): readonly string[] {
  const titles = (ids: readonly string[]): string => ids.map((id) => names.tasks[id] ?? names.defects[id] ?? id).join(', ');
  const said = (verb: string, ids: readonly string[]): readonly string[] => (ids.length === 0 ? [] : [`${verb}: ${titles(ids)}`]);
  return [
    ...said('covers', task.covers),
    ...said('restarts', task.restarts),
    ...said('follows', task.follows),
    ...said('met by', task.metBy),
    ...said('mends', task.mends),
  ];
}

function nodeTree(graph: RuleGraph, names: Titles, id: NodeId, role: Role, path: string): readonly RuleTree[] {
  const node = graph.nodes[id];
  if (node === undefined) return [];
  const key = `${path}-${id}`;
  const parts = partsOf(node).flatMap((part, index) => nodeTree(graph, names, part, roleOf(node, index), key));
  const words = asSentence(parts.length > 0 ? jointInWords(node) : nodeInWords(node, (other) => graph.nodes[other], names));
  return [
    { key, kind: kindOf(node), role, words, details: detailsOf(node, names), place: placeInWords(placeOf(graph, node.origin)), parts },
  ];
}

function roleOf(node: Node, index: number): Role {
  if (node.kind === 'first') return index === 0 ? 'first' : 'then';
  if (node.kind === 'when') return 'condition';
  return node.kind === 'while' ? (index === 0 ? 'condition' : 'then') : 'part';
}

function kindOf(node: Node): RuleTree['kind'] {
  if (isCondition(node)) return 'condition';
  switch (node.kind) {
    case 'any':
    case 'whichever':
    case 'first':
    case 'while':
    case 'when':
      return 'joint';
    case 'occasion':
    case 'shortly-before':
    case 'attaching':
    case 'refuelling':
    case 'event':
    case 'asked':
      return 'occasion';
    default:
      return 'limit';
  }
}

function jointInWords(node: Node): string {
  switch (node.kind) {
    case 'any':
      return 'any of these';
    case 'whichever':
      return `whichever comes ${node.mode}`;
    case 'first':
      return 'once at the start, then regularly';
    case 'when':
      return 'when this is so';
    case 'while':
      return 'as long as this is so';
    case 'and':
      return 'all of these';
    case 'or':
      return 'one of these at least';
    default:
      return 'not';
  }
}

function detailsOf(node: Node, names: Titles): readonly string[] {
  if (isCondition(node)) return [];
  return [...countingOf(node), ...marginsOf(node, names)];
}

function countingOf(node: Trigger): readonly string[] {
  if (node.kind !== 'interval' && node.kind !== 'duty-mix') return [];
  if (node.count === 'doing') return ['counted from when it was done'];
  return [
    node.count === 'due-if-late'
      ? 'counted from when it was due, if done late'
      : 'counted from when it was due, if done within the allowance',
  ];
}

function marginsOf(node: Trigger, names: Titles): readonly string[] {
  if (!('lead' in node)) return [];
  const said = (label: string, margin: Margin): readonly string[] =>
    isNone(margin) ? [] : [`${label} ${sizeInWords(node, margin, names)}`];
  const hold =
    node.hold === undefined
      ? []
      : [`holds the machine beyond ${isNone(node.hold.after) ? 'the due point' : `${sizeInWords(node, node.hold.after, names)} late`}`];
  return [...said('may be early by', node.early), ...said('may be late by', node.late), ...said('coming up within', node.lead), ...hold];
}

function isNone({ size, calendar }: Margin): boolean {
  return size === 0 && calendar === undefined;
}

function sizeInWords(node: Trigger, { size, calendar }: Margin, names: Titles): string {
  if (calendar !== undefined) return calendarInWords(calendar);
  const amount =
    node.kind === 'interval' || node.kind === 'marks'
      ? node.amount
      : node.kind === 'stages'
        ? node.amounts[0]
        : node.kind === 'event' || node.kind === 'asked'
          ? node.within
          : undefined;
  if (node.kind === 'duty-mix') return amountInWords({ on: 'meter', meter: node.meter, ticks: size }, names);
  if (amount === undefined || amount.on === 'calendar')
    return amount?.on === 'calendar' && amount.unit === 'minutes' ? counted(size, 'minute') : counted(size, 'day');
  return amountInWords({ ...amount, ticks: size }, names);
}
