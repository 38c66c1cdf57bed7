/**
 * Finding nodes of a tree by their kind.
 */
import { addTo } from '../base/gather.js';

interface AnyNode {
  readonly kind: string;
}

/** Nodes by kind, each list in the order written. */
export interface NodeIndex {
  /** All nodes of one kind. `N` is the type that the tree gives that kind. */
  readonly all: <N extends AnyNode>(kind: N['kind']) => readonly N[];
}

/** Looks once through everything at or below the roots, when the first question is asked. */
export function nodeIndex(roots: readonly object[]): NodeIndex {
  let byKind: ReadonlyMap<string, readonly AnyNode[]> | undefined;
  return {
    all: <N extends AnyNode>(kind: N['kind']) => ((byKind ??= nodesByKind(roots)).get(kind) ?? []) as readonly N[],
  };
}

function nodesByKind(roots: readonly object[]): ReadonlyMap<string, readonly AnyNode[]> {
  const byKind = new Map<string, AnyNode[]>();
  for (const root of roots) walk(root, (node) => addTo(byKind, node.kind, node));
  return byKind;
}

function walk(value: object, visit: (node: AnyNode) => void): void {
  if (Array.isArray(value)) {
    for (const item of value as readonly unknown[]) if (isObject(item)) walk(item, visit);
    return;
  }
  if (isNode(value)) {
    visit(value);
    if (leaves.has(value.kind)) return;
  }
  // Plain data without a prototype of its own, so every key is the node's own; places hold no nodes.
  for (const key in value) {
    const child: unknown = key === 'at' ? undefined : value[key as keyof typeof value];
    if (isObject(child)) walk(child, visit);
  }
}

/** Nodes without nodes in them: most of all. */
const leaves: ReadonlySet<string> = new Set(['name', 'text', 'number', 'unit', 'date', 'time']);

function isObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null;
}

function isNode(value: object): value is AnyNode {
  return 'kind' in value && typeof value.kind === 'string';
}
