/**
 * Visits every node of a tree below a node, parents first, in the order written.
 */

interface AnyNode {
  readonly kind: string;
}

/** Calls `visit` for `root` and everything below it that has a `kind`. Visiting does not depend on what a node is. */
export function walk(root: object, visit: (node: AnyNode) => void): void {
  if (isNode(root)) visit(root);
  for (const value of Object.values(root)) {
    if (typeof value === 'object' && value !== null) walk(value, visit);
  }
}

/** All nodes of one kind at or below `root`. `N` is the type that the tree gives that kind. */
export function nodesOfKind<N extends AnyNode>(root: object, kind: N['kind']): readonly N[] {
  const found: N[] = [];
  walk(root, (node) => {
    if (node.kind === kind) found.push(node as N);
  });
  return found;
}

function isNode(value: object): value is AnyNode {
  return 'kind' in value && typeof value.kind === 'string';
}
