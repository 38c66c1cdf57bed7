/**
 * Finds what in a graph refers to something that is not there: nodes, names, sources; and what goes round in a circle.
 *
 * For graphs that already have the shape of one: see {@link misfits}.
 */
import { circular } from './circular.js';
import type { GraphPart } from './graph-part.js';
import { lists, namesOfSite, type Name, type NameKind } from './names-in-graph.js';
import { conditionsIn, isTrigger, partsOf, triggersIn } from './node-references.js';
import type { Node, RuleGraph, Task } from './rule-graph.js';

/**
 * One sentence without its full stop about the first loose end; undefined where there is none. `parts` have read all that is in the graph.
 *
 * Law: in a graph that passes, each node refers to earlier nodes of the right sort, each name to a thing of the graph, no two things of
 * one sort share an id, and neither covering, restarting, following nor being met by goes round in a circle.
 */
export function looseEnd(graph: RuleGraph, parts: readonly GraphPart[]): string | undefined {
  return (
    twice(graph) ??
    looseNode(graph) ??
    looseName(graph, namesIn(graph, parts)) ??
    first(parts, (part) => part.loose?.(graph)) ??
    looseOrigin(graph, parts) ??
    circular(graph)
  );
}

function first<T, R>(items: readonly T[], of: (item: T) => R | undefined): R | undefined {
  for (const item of items) {
    const found = of(item);
    if (found !== undefined) return found;
  }
  return undefined;
}

function twice(graph: RuleGraph): string | undefined {
  const all: readonly (readonly [string, readonly { readonly id: string }[]])[] = [
    ...lists.map((kind) => [kind, graph[kind]] as const),
    ['access.parts', graph.access.parts],
    ['access.places', graph.access.places],
    ['access.steps', graph.access.steps],
  ];
  const found = all.find(([, things]) => new Set(things.map(({ id }) => id)).size < things.length);
  return found === undefined ? undefined : `two of its \`${found[0]}\` have the same id`;
}

function looseNode(graph: RuleGraph): string | undefined {
  for (const [index, node] of graph.nodes.entries()) {
    if (node.id !== index) return `\`nodes.${index}\` does not stand at its own id`;
    if (partsOf(node).some((id) => id >= index)) return `\`nodes.${index}\` refers to a node that comes later`;
    if (!fit(graph, triggersIn(node), conditionsIn(node))) return `\`nodes.${index}\` refers to a node of the wrong sort`;
  }
  const { stops, access, tasks } = graph;
  const conditions = [
    ...stops.map(({ condition }) => condition),
    ...access.nevers.map(({ condition }) => condition),
    ...access.steps.flatMap((step) => step.while ?? []),
    ...tasks.flatMap((task) => [...(task.gate === undefined ? [] : [task.gate]), ...(task.stance === undefined ? [] : [task.stance])]),
  ];
  const triggers = tasks.flatMap(({ trigger }) => trigger ?? []);
  return fit(graph, triggers, conditions)
    ? undefined
    : 'a task, step, stop or never-rule refers to a node that is missing or of the wrong sort';
}

function fit({ nodes }: RuleGraph, triggers: readonly number[], conditions: readonly number[]): boolean {
  const sortAt = (id: number): boolean | undefined => {
    const node = nodes[id];
    return node === undefined ? undefined : isTrigger(node);
  };
  return triggers.every((id) => sortAt(id) === true) && conditions.every((id) => sortAt(id) === false);
}

function looseName(graph: RuleGraph, names: readonly Name[]): string | undefined {
  const known = new Map<NameKind, ReadonlySet<string>>([
    ...lists.map((kind) => [kind, new Set(graph[kind].map(({ id }) => id))] as const),
    ['parts', new Set(graph.access.parts.map(({ id }) => id))],
    ['places', new Set(graph.access.places.map(({ id }) => id))],
  ]);
  const loose = names.find(([kind, id]) => id !== undefined && known.get(kind)?.has(id) !== true);
  return loose === undefined ? undefined : `it names something that is not among its \`${loose[0]}\``;
}

function namesIn(graph: RuleGraph, parts: readonly GraphPart[]): readonly Name[] {
  const ofNodes: GraphPart['ofNodes'] = Object.assign({}, ...parts.map((part) => part.ofNodes)) as GraphPart['ofNodes'];
  // Which function is for which kind the table says; the type checker cannot follow it through the look-up.
  const namesOf = (node: Node): readonly Name[] => ofNodes[node.kind]?.(node as never) ?? [];
  return [
    ...graph.nodes.flatMap(namesOf),
    ...graph.tasks.flatMap(namesOfTask),
    ...graph.meters.map(({ attachment }): Name => ['attachments', attachment]),
    ...graph.events.flatMap(({ task }): readonly Name[] => (task === undefined ? [] : [['tasks', task]])),
    ...parts.flatMap((part) => part.names?.(graph) ?? []),
  ];
}

function namesOfTask(task: Task): readonly Name[] {
  return [
    ['attachments', task.attachment],
    ...namesOfSite(task.site),
    ...[...task.covers, ...task.restarts, ...task.follows, ...task.metBy].map((id): Name => ['tasks', id]),
    ...task.mends.map((id): Name => ['defects', id]),
    ...task.uses.map(({ supply }): Name => ['supplies', supply]),
  ];
}

function looseOrigin(graph: RuleGraph, parts: readonly GraphPart[]): string | undefined {
  const { sources, nodes, stops } = graph;
  const things = [...lists.flatMap((kind): readonly { readonly origin: { readonly source: number } }[] => graph[kind]), ...stops, ...nodes];
  const inner = parts.flatMap((part) => part.inner?.(graph) ?? []);
  const whole = [...things, ...inner].every(({ origin }) => origin.source < sources.length);
  return whole ? undefined : 'it says that something was written in a source that it does not have';
}
