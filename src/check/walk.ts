/**
 * Finding nodes of a tree by their kind.
 */

interface AnyNode {
  readonly kind: string;
}

/** Nodes by kind, each list in the order written. */
export interface NodeIndex {
  /** All nodes of one kind. `N` is the type that the tree gives that kind. */
  readonly all: <N extends AnyNode>(kind: N['kind']) => readonly N[];
}

/** Looks once through everything at or below the roots. */
export function nodeIndex(roots: readonly object[]): NodeIndex {
  const byKind = new Map<string, AnyNode[]>();
  const note = (node: AnyNode): void => {
    const known = byKind.get(node.kind);
    if (known === undefined) byKind.set(node.kind, [node]);
    else known.push(node);
  };
  for (const root of roots) walk(root, note);
  return { all: <N extends AnyNode>(kind: N['kind']) => (byKind.get(kind) ?? []) as readonly AnyNode[] as readonly N[] };
}

function walk(value: object, visit: (node: AnyNode) => void): void {
  if (isNode(value)) visit(value);
  const children: readonly unknown[] = Array.isArray(value)
    ? value
    : Object.entries(value).map(([key, child]) => (key === 'at' ? undefined : child));
  for (const child of children) {
    if (typeof child === 'object' && child !== null) walk(child, visit);
  }
}

function isNode(value: object): value is AnyNode {
  return 'kind' in value && typeof value.kind === 'string';
}
