/**
 * The rules of a task as a page that stands alone: a drawing, its legend, and the same in words for those who cannot see it.
 *
 * Works from disk with no network: no script, no font, no picture from elsewhere. Shapes, not colours, tell the kinds apart.
 */
import type { RuleGraph } from '../graph/rule-graph.js';
import { DEFERENCE } from './cautions.js';
import { escapeHtml } from './escape-html.js';
import { BOX, layOut } from './rule-graph-layout.js';
import type { PlacedBox, PlacedEdge, PlacedGraph } from './rule-graph-layout.js';
import { RULE_GRAPH_CSS } from './rule-graph-css.js';
import type { Role, RuleTree } from './rule-tree.js';
import { ruleTree } from './rule-tree.js';

const ROLES: Readonly<Record<Role, string>> = { task: '', gate: 'only if', part: '', first: 'first', then: 'then', condition: 'if' };

const KINDS: readonly { readonly kind: RuleTree['kind']; readonly words: string }[] = [
  { kind: 'task', words: 'The task' },
  { kind: 'joint', words: 'How the rules below it go together' },
  { kind: 'limit', words: 'A limit: so many hours, months or a mark' },
  { kind: 'occasion', words: 'An occasion: before work, after an event' },
  { kind: 'condition', words: 'A condition that is so, is not so, or cannot be told' },
];

/** The page. @throws RangeError for a task that the schedule does not have. */
export function renderRuleGraphHtml(graph: RuleGraph, taskId: string): string {
  const tree = ruleTree(graph, taskId);
  const placed = layOut(tree);
  const title = escapeHtml(`${tree.words}: when it is due`);
  return [
    '<!doctype html>',
    `<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>${title}</title>`,
    `<style>${RULE_GRAPH_CSS}</style></head>`,
    `<body><main><h1>${escapeHtml(tree.words)}</h1>`,
    `<p class="schedule">${escapeHtml(graph.schedule.title)}${editionOf(graph)}</p>`,
    `<figure>${drawing(placed, tree)}<figcaption>${legend()}</figcaption></figure>`,
    `<section aria-labelledby="in-words"><h2 id="in-words">In words</h2><ul class="words">${item(tree)}</ul></section>`,
    `<p class="deference">${escapeHtml(DEFERENCE)}</p>`,
    '</main></body></html>',
    '',
  ].join('\n');
}

function editionOf({ schedule: { edition } }: RuleGraph): string {
  return edition === undefined ? '' : `, edition ${edition.number} of ${escapeHtml(edition.date)}`;
}

function drawing(placed: PlacedGraph, tree: RuleTree): string {
  const { width, height } = placed;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="drawing-title drawing-desc" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}">`,
    `<title id="drawing-title">${escapeHtml(tree.words)}</title>`,
    `<desc id="drawing-desc">The rules that make this task due, from the task on the left to its single rules on the right. The same stands in words below the drawing.</desc>`,
    '<defs><marker id="tip" viewBox="0 0 8 8" refX="7" refY="4" markerWidth="7" markerHeight="7" orient="auto"><path d="M0 0L8 4L0 8z" class="tip"/></marker></defs>',
    ...placed.edges.map(edge),
    ...placed.boxes.map(box),
    '</svg>',
  ].join('\n');
}

function edge({ from, to, role }: PlacedEdge): string {
  const middle = Math.round((from.x + to.x) / 2);
  const label =
    ROLES[role] === '' ? '' : `<text class="role" x="${to.x - 10}" y="${to.y + (from.y < to.y ? 15 : -7)}">${ROLES[role]}</text>`;
  return `<path class="edge" d="M${from.x} ${from.y}C${middle} ${from.y} ${middle} ${to.y} ${to.x} ${to.y}" marker-end="url(#tip)"/>${label}`;
}

function box({ tree, lines, small, x, y, height }: PlacedBox): string {
  const left = x + BOX.padding + (tree.kind === 'limit' ? 4 : tree.kind === 'condition' ? 6 : 0);
  const first = y + BOX.padding + BOX.line - 5;
  const words = lines.map((line, index) => `<text class="line" x="${left}" y="${first + index * BOX.line}">${escapeHtml(line)}</text>`);
  const smallFirst = y + BOX.padding + lines.length * BOX.line + BOX.small - 3;
  const details = small.map(
    (line, index) => `<text class="small" x="${left}" y="${smallFirst + index * BOX.small}">${escapeHtml(line)}</text>`,
  );
  return `<g class="${tree.kind}">${shape(tree.kind, x, y, BOX.width, height)}${[...words, ...details].join('')}</g>`;
}

/** Each kind has an outline of its own. */
function shape(kind: RuleTree['kind'], x: number, y: number, w: number, h: number): string {
  switch (kind) {
    case 'task':
      return `<rect class="outline" x="${x}" y="${y}" width="${w}" height="${h}"/><rect class="inner" x="${x + 3}" y="${y + 3}" width="${w - 6}" height="${h - 6}"/>`;
    case 'joint':
      return `<rect class="outline" x="${x}" y="${y}" width="${w}" height="${h}" rx="${Math.min(18, h / 2)}"/>`;
    case 'limit':
      return `<rect class="outline" x="${x}" y="${y}" width="${w}" height="${h}"/><rect class="edge-bar" x="${x}" y="${y}" width="6" height="${h}"/>`;
    case 'occasion':
      return `<path class="outline" d="M${x} ${y}H${x + w - 14}L${x + w} ${y + 14}V${y + h}H${x}z"/><path class="fold" d="M${x + w - 14} ${y}V${y + 14}H${x + w}"/>`;
    case 'condition':
      return `<path class="outline" d="M${x + 10} ${y}H${x + w - 10}L${x + w} ${y + h / 2}L${x + w - 10} ${y + h}H${x + 10}L${x} ${y + h / 2}z"/>`;
  }
}

function legend(): string {
  const items = KINDS.map(
    ({ kind, words }) =>
      `<li><svg aria-hidden="true" width="44" height="26" viewBox="-1 -1 46 28"><g class="${kind}">${shape(kind, 0, 0, 44, 26)}</g></svg> ${words}</li>`,
  );
  return `<ul class="legend">${items.join('')}</ul>`;
}

function item(tree: RuleTree): string {
  const role = ROLES[tree.role] === '' ? '' : `<em>${ROLES[tree.role]}</em> `;
  const details = [...tree.details, tree.place].map(escapeHtml).join('; ');
  const parts = tree.parts.length === 0 ? '' : `<ul>${tree.parts.map(item).join('')}</ul>`;
  return `<li>${role}${escapeHtml(tree.words)} <small>${details}</small>${parts}</li>`;
}
