/**
 * For the author: every stance that can be reached and the steps between them, drawn; each box lists the parts that are not at rest
 * and how many tasks can be done there.
 */
import dagre from '@dagrejs/dagre';
import { machineOf } from '../../access/machine.js';
import { moveTitle } from '../../access/move-title.js';
import { holds } from '../../access/stance-set.js';
import { exploreStances } from '../../access/stance-space.js';
import type { RuleGraph } from '../../graph/rule-graph.js';
import { escapeHtml } from '../escape-html.js';

/** More boxes than this cannot be taken in. */
const MOST_DRAWN = 120;

interface Drawn {
  readonly lines: readonly string[];
  readonly width: number;
  readonly height: number;
}

/** An SVG document, or `null` where more than {@link MOST_DRAWN} stances can be reached. */
export function renderStancePicture(graph: RuleGraph): string | null {
  const machine = machineOf(graph);
  const space = exploreStances(machine, MOST_DRAWN);
  if (!space.isWhole) return null;
  const layout = new dagre.graphlib.Graph({ multigraph: true });
  layout.setGraph({ rankdir: 'LR', nodesep: 22, ranksep: 110, marginx: 16, marginy: 16 });
  layout.setDefaultEdgeLabel(() => ({}));
  const boxes = Array.from({ length: space.size }, (_, number): Drawn => {
    const stance = space.stance(number);
    const unusual = graph.access.parts.flatMap((part, index) =>
      stance[index] === machine.rest[index] ? [] : [`${part.id} ${part.positions[stance[index] ?? 0]?.name ?? ''}`],
    );
    const tasks = graph.tasks.filter((task) => task.stance !== undefined && holds(machine.condition(task.stance) ?? [], stance)).length;
    const lines = [...(unusual.length === 0 ? ['at rest'] : unusual), `${tasks} ${tasks === 1 ? 'task' : 'tasks'}`];
    return { lines, width: 24 + 7 * Math.max(...lines.map((line) => line.length)), height: 14 + 16 * lines.length };
  });
  boxes.forEach(({ width, height }, stance) => layout.setNode(String(stance), { width, height }));
  const leads = (from: number, to: number): boolean => space.exits(from).some((value, index) => index % 2 === 1 && value === to);
  for (let from = 0; from < space.size; from++) {
    const out = space.exits(from);
    for (let index = 0; index < out.length; index += 2) {
      const to = out[index + 1] ?? 0;
      if (to > from || !leads(to, from)) layout.setEdge(String(from), String(to), {}, String(out[index] ?? -1));
    }
  }
  dagre.layout(layout);
  const { width = 0, height = 0 } = layout.graph() as { width?: number; height?: number };
  const edges = layout
    .edges()
    .map((edge: { v: string; w: string; name?: string }) =>
      edgeSvg(
        layout.edge(edge) as { points: readonly { x: number; y: number }[] },
        moveTitle(machine, Number(edge.name)),
        leads(Number(edge.w), Number(edge.v)),
      ),
    );
  const nodes = boxes.map((box, stance) => boxSvg(box, layout.node(String(stance)) as { x: number; y: number }, stance === 0));
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${Math.ceil(width)}" height="${Math.ceil(height)}" viewBox="0 0 ${Math.ceil(width)} ${Math.ceil(height)}" font-family="Noto Sans, system-ui, sans-serif" font-size="12"><title>${escapeHtml(`Stances and steps of ${graph.schedule.title}`)}</title><rect width="100%" height="100%" fill="#fff"/>${edges.join('')}${nodes.join('')}</svg>\n`;
}

function edgeSvg(
  { points }: { readonly points: readonly { readonly x: number; readonly y: number }[] },
  title: string,
  isTwoWay: boolean,
): string {
  const path = points.map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('');
  const middle = points[Math.floor(points.length / 2)] ?? { x: 0, y: 0 };
  const end = points.at(-1) ?? middle;
  const words = title.length > 26 ? `${title.slice(0, 25)}…` : title;
  const tip = isTwoWay ? '' : `<circle cx="${end.x.toFixed(1)}" cy="${end.y.toFixed(1)}" r="4" fill="#2c4a5e"/>`;
  return `<path d="${path}" fill="none" stroke="#7d858c" stroke-width="1.3"${isTwoWay ? '' : ' stroke-dasharray="5 3"'}><title>${escapeHtml(title)}</title></path>${tip}<text x="${middle.x.toFixed(1)}" y="${(middle.y - 4).toFixed(1)}" text-anchor="middle" font-size="9" fill="#555c63" paint-order="stroke" stroke="#fff" stroke-width="3">${escapeHtml(words)}</text>`;
}

function boxSvg({ lines, width, height }: Drawn, { x, y }: { readonly x: number; readonly y: number }, isRest: boolean): string {
  const [left, top] = [x - width / 2, y - height / 2];
  const texts = lines.map((line, index) => {
    const last = index === lines.length - 1;
    return `<text x="${(left + 12).toFixed(1)}" y="${(top + 19 + 16 * index).toFixed(1)}" fill="${last ? '#555c63' : '#1f2428'}">${escapeHtml(line)}</text>`;
  });
  return `<rect x="${left.toFixed(1)}" y="${top.toFixed(1)}" width="${width}" height="${height}" rx="3" fill="${isRest ? '#eef1f3' : '#fff'}" stroke="#1f2428" stroke-width="${isRest ? 2 : 1.2}"/>${texts.join('')}`;
}
