import { meaningText } from '../graph/meaning-fingerprint.js';
import type { NodeId, RuleGraph, Task } from '../graph/rule-graph.js';
import { difference, phrases, type PhrasedAspect } from './aspect-words.js';
import { compareLimit } from './compare-limit.js';
import type { Bearing, TaskChange, TaskComparison } from './comparison.js';
import { type Leaf, leavesOf } from './leaves.js';

export interface Editions {
  readonly before: RuleGraph;
  readonly after: RuleGraph;
}

const bearingOrder: readonly Bearing[] = ['tighter', 'looser', 're-anchored', 'different'];

/** What changed in a task that both editions have; `null` if nothing did. */
export function compareTask(before: Task, after: Task, graphs: Editions): TaskComparison | null {
  const changes = [...compareTiming(before, after, graphs), ...compareGate(before, after, graphs), ...compareRest(before, after, graphs)];
  if (changes.length === 0) return null;
  const bearings = bearingOrder.filter((bearing) => changes.some((change) => change.bearing === bearing));
  return { task: after.id, title: after.title, status: 'changed', bearings, changes };
}

function compareTiming(before: Task, after: Task, graphs: Editions): readonly TaskChange[] {
  if (textOf(before.trigger, graphs.before, 'trigger') === textOf(after.trigger, graphs.after, 'trigger')) return [];
  const [old, fresh] = [leavesOf(graphs.before, before.trigger), leavesOf(graphs.after, after.trigger)];
  const freshByKey = new Map(fresh.map((leaf) => [leaf.key, leaf]));
  const oldKeys = new Set(old.map((leaf) => leaf.key));
  const changes = [
    ...old.flatMap((leaf) => {
      const counterpart = freshByKey.get(leaf.key);
      return counterpart === undefined ? [removed(leaf)] : compareLimit(leaf.node, counterpart.node, graphs);
    }),
    ...fresh.filter((leaf) => !oldKeys.has(leaf.key)).map(added),
  ];
  if (changes.length > 0) return changes;
  return [
    {
      what: 'timing',
      bearing: byMode(old, freshByKey),
      before: { text: wordsOf(before.trigger, graphs.before) },
      after: { text: wordsOf(after.trigger, graphs.after) },
    },
  ];
}

/** The same limits, joined otherwise: "whichever first" turned into "last" asks for less. */
function byMode(old: readonly Leaf[], fresh: ReadonlyMap<string, Leaf>): Bearing {
  const turned = old.find((leaf) => fresh.get(leaf.key)?.under !== leaf.under);
  if (turned === undefined) return 'different';
  return turned.under === 'first' ? 'looser' : 'tighter';
}

/** One more limit of which any decides asks for more; one more of which all must be reached asks for less. */
function added({ node, under }: Leaf): TaskChange {
  return { what: 'timing', bearing: under === 'first' ? 'tighter' : 'looser', after: { text: node.origin.text, origin: node.origin } };
}

function removed({ node, under }: Leaf): TaskChange {
  return { what: 'timing', bearing: under === 'first' ? 'looser' : 'tighter', before: { text: node.origin.text, origin: node.origin } };
}

function wordsOf(id: NodeId | undefined, graph: RuleGraph): string {
  return id === undefined ? 'no timing' : (graph.nodes[id]?.origin.text ?? '');
}

function textOf(id: NodeId | undefined, graph: RuleGraph, key: string): string {
  return id === undefined ? '' : meaningText(id, graph.nodes, key);
}

/** A gate lets a task rest: one that is new loosens, one that is gone tightens. */
function compareGate(before: Task, after: Task, graphs: Editions): readonly TaskChange[] {
  if (textOf(before.gate, graphs.before, 'gate') === textOf(after.gate, graphs.after, 'gate')) return [];
  const bearing: Bearing = before.gate === undefined ? 'looser' : after.gate === undefined ? 'tighter' : 'different';
  return [
    {
      what: 'gate',
      bearing,
      ...(before.gate === undefined ? {} : { before: { text: wordsOf(before.gate, graphs.before) } }),
      ...(after.gate === undefined ? {} : { after: { text: wordsOf(after.gate, graphs.after) } }),
    },
  ];
}

/** Everything else: an aspect that means something else is told by the phrases that only one edition has. */
function compareRest(before: Task, after: Task, graphs: Editions): readonly TaskChange[] {
  return aspects.flatMap((what): readonly TaskChange[] => {
    if (meaningOf(before, what, graphs.before) === meaningOf(after, what, graphs.after)) return [];
    const [old, fresh] = [phrases[what](before, graphs.before), phrases[what](after, graphs.after)];
    const [was, is] = [difference(old, fresh), difference(fresh, old)];
    return [
      {
        what,
        bearing: 'different',
        ...(was === undefined ? {} : { before: { text: was, origin: before.origin } }),
        ...(is === undefined ? {} : { after: { text: is, origin: after.origin } }),
      },
    ];
  });
}

const aspects = Object.keys(phrases) as readonly PhrasedAspect[];

/** What an aspect means, whatever its words. */
const parts: Readonly<Record<PhrasedAspect, (task: Task) => unknown>> = {
  title: (task) => task.title,
  stance: (task) => task.stance,
  readings: (task) => task.reads,
  supplies: (task) => task.uses,
  torques: (task) => task.torques,
  work: ({ site }) => ({ seconds: site.seconds, place: site.place, under: site.under, tools: site.tools, procedure: site.procedure }),
  cautions: ({ site }) => ({ cautions: site.cautions, qualified: site.qualified }),
  dependence: (task) => ({ covers: task.covers, restarts: task.restarts, follows: task.follows, metBy: task.metBy }),
  'defects mended': (task) => task.mends,
  'serial numbers': (task) => task.serial,
  attachment: (task) => task.attachment,
  reason: (task) => task.reason,
  source: (task) => task.source,
};

function meaningOf(task: Task, what: PhrasedAspect, graph: RuleGraph): string {
  return meaningText(parts[what](task) ?? null, graph.nodes, what);
}
