/**
 * The stances passed through, as a drawing: one lane for each part that moves, one column for each line of the sheet. A lane runs
 * along the bottom while the part is at rest and rises where it is not; a dot marks a task, a bar on the lane a step.
 */
import type { WalkRound } from '../../access/walk-round.js';
import type { RuleGraph } from '../../graph/rule-graph.js';
import { escapeHtml } from '../escape-html.js';

const LEFT = 190;
const LANE = 34;
const TOP = 24;

/** An `<svg>` element; empty text where no part moves. */
export function passageSvg(walk: WalkRound, graph: RuleGraph): string {
  const parts = graph.access.parts.filter((part) => walk.lines.some((line) => line.kind === 'step' && line.part === part.id));
  if (parts.length === 0) return '';
  const column = Math.max(14, Math.min(30, Math.floor(820 / walk.lines.length)));
  const width = LEFT + column * walk.lines.length + 12;
  const height = TOP + LANE * parts.length + 22;
  const x = (number: number): number => LEFT + column * (number - 0.5);
  const body = [
    ...walk.lines.map((line) => `<text class="no" x="${x(line.number)}" y="14">${line.number}</text>`),
    ...walk.lines.flatMap((line) =>
      line.kind === 'task'
        ? [
            `<line class="task" x1="${x(line.number)}" x2="${x(line.number)}" y1="${TOP}" y2="${height - 16}"/><circle class="dot" cx="${x(line.number)}" cy="${height - 10}" r="4"/>`,
          ]
        : [],
    ),
    `<text class="small" x="0" y="${height - 6}">a task is done</text>`,
    ...parts.map((part, lane) => laneSvg(walk, graph, part.id, TOP + LANE * lane, x, column)),
  ];
  const label = `The positions of ${parts.map((part) => part.title ?? part.id).join(', ')} from line to line`;
  return `<svg class="passage" viewBox="0 0 ${width} ${height}" role="img" aria-label="${escapeHtml(label)}">${body.join('')}</svg>`;
}

function laneSvg(walk: WalkRound, graph: RuleGraph, part: string, top: number, x: (number: number) => number, column: number): string {
  const declared = graph.access.parts.find((each) => each.id === part);
  const rest = graph.access.rest[part];
  const others = declared?.positions.filter((position) => position.name !== rest).map((position) => position.name) ?? [];
  const y = (position: string): number => {
    const level = position === rest ? 0 : (others.indexOf(position) + 1) / Math.max(1, others.length);
    return top + LANE - 9 - level * (LANE - 16);
  };
  let at = walk.start.stance[part] ?? rest ?? '';
  let path = `M${LEFT} ${y(at)}`;
  const labels = at === rest ? [] : [`<text class="pos" x="${LEFT + 2}" y="${y(at) - 3}">${escapeHtml(at)}</text>`];
  for (const line of walk.lines) {
    if (line.kind !== 'step' || line.part !== part) continue;
    at = line.to;
    path += `H${x(line.number)}V${y(at)}`;
    const nearEnd = line.number > walk.lines.length - 3;
    const anchor = nearEnd ? ` text-anchor="end"` : '';
    labels.push(`<text class="pos"${anchor} x="${x(line.number) + (nearEnd ? -3 : 3)}" y="${y(at) - 3}">${escapeHtml(at)}</text>`);
  }
  path += `H${x(walk.lines.length) + column / 2}`;
  const base = `<line class="base" x1="${LEFT}" x2="${x(walk.lines.length) + column / 2}" y1="${y(rest ?? '')}" y2="${y(rest ?? '')}"/>`;
  return `<text class="lane" x="0" y="${top + LANE - 10}">${escapeHtml(declared?.title ?? part)}</text>${base}<path class="run" d="${path}"/>${labels.join('')}`;
}
