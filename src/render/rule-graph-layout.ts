/**
 * Where each box of a rule tree stands: boxes of wrapped words, laid out from left to right by dagre.
 */
import dagre from '@dagrejs/dagre';
import type { Role, RuleTree } from './rule-tree.js';
import { safeText } from './safe-text.js';
import { wrap } from './wrap.js';

/** Sizes in user units of the drawing; letters are about 7 wide at this size of type. */
export const BOX = { width: 236, padding: 10, line: 17, small: 14, letters: 31, smallLetters: 38 } as const;

interface Point {
  readonly x: number;
  readonly y: number;
}

export interface PlacedBox {
  readonly tree: RuleTree;
  readonly lines: readonly string[];
  readonly small: readonly string[];
  /** Upper left corner. */
  readonly x: number;
  readonly y: number;
  readonly height: number;
}

/** From the right side of a box to the left side of one that it is made of. */
export interface PlacedEdge {
  readonly from: Point;
  readonly to: Point;
  readonly role: Role;
}

export interface PlacedGraph {
  readonly width: number;
  readonly height: number;
  readonly boxes: readonly PlacedBox[];
  readonly edges: readonly PlacedEdge[];
}

interface Sized {
  readonly tree: RuleTree;
  readonly lines: readonly string[];
  readonly small: readonly string[];
  readonly height: number;
}

/** The same tree gives the same layout. */
export function layOut(tree: RuleTree): PlacedGraph {
  const graph = new dagre.graphlib.Graph();
  graph.setGraph({ rankdir: 'LR', nodesep: 18, ranksep: 56, marginx: 12, marginy: 12 });
  graph.setDefaultEdgeLabel(() => ({}));
  const sized = new Map<string, Sized>();
  const links: { readonly from: string; readonly to: string; readonly role: Role }[] = [];
  addBoxes(tree, sized, links);
  for (const [key, { height }] of sized) graph.setNode(key, { width: BOX.width, height });
  for (const { from, to } of links) graph.setEdge(from, to);
  dagre.layout(graph, { constraints: siblingsInOrder(tree) });
  const boxes = [...sized].map(([key, box]): PlacedBox => {
    const at = graph.node(key) as Point;
    return { ...box, x: round(at.x - BOX.width / 2), y: round(at.y - box.height / 2) };
  });
  const edges = links.map(({ from, to, role }): PlacedEdge => {
    return { from: sideOf(graph, from, 1), to: sideOf(graph, to, -1), role };
  });
  const size = graph.graph() as { readonly width?: number; readonly height?: number };
  return { width: Math.ceil(size.width ?? BOX.width), height: Math.ceil(size.height ?? BOX.line), boxes, edges };
}

function addBoxes(
  tree: RuleTree,
  into: Map<string, Sized>,
  links: { readonly from: string; readonly to: string; readonly role: Role }[],
): void {
  const lines = wrap(safeText(tree.words), BOX.letters);
  const small = [...tree.details, tree.place].flatMap((text) => wrap(safeText(text), BOX.smallLetters));
  into.set(tree.key, { tree, lines, small, height: 2 * BOX.padding + lines.length * BOX.line + small.length * BOX.small });
  for (const part of tree.parts) {
    addBoxes(part, into, links);
    links.push({ from: tree.key, to: part.key, role: part.role });
  }
}

/** Rules stand one below the other as their author wrote them. */
function siblingsInOrder({ parts }: RuleTree): { left: string; right: string }[] {
  const own = parts.slice(1).map((part, index) => ({ left: parts[index]?.key ?? part.key, right: part.key }));
  return [...own, ...parts.flatMap(siblingsInOrder)];
}

function sideOf(graph: { readonly node: (key: string) => unknown }, key: string, side: 1 | -1): Point {
  const { x, y } = graph.node(key) as Point;
  return { x: round(x + (side * BOX.width) / 2), y: round(y) };
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
