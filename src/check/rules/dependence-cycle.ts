import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { DependenceNode, NameNode, TaskNode } from '../../syntax/tree.js';
import { clausesOf } from '../clauses-of.js';
import type { Rule } from '../context.js';
import { tasksIn } from '../limits.js';
import type { Model } from '../model.js';
import { diagnostic } from '../report.js';
import { type NamedTask, tasksNamed } from '../tasks-named.js';
import { ticked } from '../words.js';

const kinds: readonly DependenceNode['kind'][] = ['covers', 'restarts', 'follows', 'met-by'];

type Edges = ReadonlyMap<TaskNode, readonly NamedTask[]>;

/** Each kind of dependence comes to an end. A circle is told once, at the task in it that is written first. */
export const dependenceCycle: Rule = {
  codes: ['dependenceCycle'],
  scope: 'schedule',
  check: ({ model }) => kinds.flatMap((kind) => circles(model, kind)),
};

function circles(model: Model, kind: DependenceNode['kind']): readonly Diagnostic[] {
  const edges = edgesOf(model, kind);
  const done = new Set<TaskNode>();
  const found: Diagnostic[] = [];
  for (const node of edges.keys()) {
    const trail = done.has(node) ? undefined : circleFrom(edges, node, done);
    if (trail === undefined) continue;
    found.push(describe(kind, trail));
  }
  return found;
}

interface Link {
  readonly from: TaskNode;
  readonly name: NameNode;
}

/** Searches depth first, without recursion; the links of the first circle found, or undefined. Everything visited is marked done. */
function circleFrom(edges: Edges, start: TaskNode, done: Set<TaskNode>): readonly Link[] | undefined {
  const path: { readonly node: TaskNode; next: number; readonly via?: Link }[] = [{ node: start, next: 0 }];
  const places = new Map([[start, 0]]);
  let circle: readonly Link[] | undefined;
  for (let top = path.at(-1); top !== undefined; top = path.at(-1)) {
    const edge = edges.get(top.node)?.[top.next];
    if (edge === undefined) {
      done.add(top.node);
      places.delete(top.node);
      path.pop();
      continue;
    }
    top.next += 1;
    const link = { from: top.node, name: edge.name };
    const place = places.get(edge.task);
    if (place !== undefined) circle ??= [...path.slice(place + 1).flatMap(({ via }) => via ?? []), link];
    else if (!done.has(edge.task)) places.set(edge.task, path.push({ node: edge.task, next: 0, via: link }) - 1);
  }
  return circle;
}

/** From each task that names others of this kind, in the order written. */
function edgesOf(model: Model, kind: DependenceNode['kind']): Edges {
  const naming = tasksIn(model).filter(({ node }) => clausesOf(node.clauses, kind).length > 0);
  return new Map(naming.map(({ node }) => [node, tasksNamed(model, node, kind)]));
}

function describe(kind: DependenceNode['kind'], links: readonly Link[]): Diagnostic {
  const word = kind === 'met-by' ? 'is met by' : kind;
  const [first, ...others] = links;
  if (first === undefined) throw new Error('a circle has a link');
  const round = links.map(({ from }) => ticked(from.name.text)).join(` ${word} `);
  const message =
    links.length === 1
      ? `${ticked(first.from.name.text)} ${word} itself.`
      : `${round} ${word} ${ticked(first.from.name.text)}: this goes round in a circle.`;
  return diagnostic('dependenceCycle', {
    at: first.name.at,
    message,
    labels: others.map(({ name }) => ({ at: name.at, text: 'and on from here' })),
    help: 'Take out one of these.',
  });
}
