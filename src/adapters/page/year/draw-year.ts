/**
 * The year ahead: one row a task, a bar for the range of days on which it may fall due, a mark on the likeliest one.
 */
import { dot, ruleX, ruleY, text } from '@observablehq/plot';
import type { DateRange, Outlook, TaskAhead } from '../../../ahead.js';
import type { NodeId, RuleGraph } from '../../../engine.js';
import { namesOf } from '../../../engine.js';
import type { Names } from '../../../engine.js';
import { byDay } from '../../../render/outlook/ahead.js';
import { decidesInWords } from '../../../render/outlook/decides-in-words.js';
import { safeText } from '../../../render/safe-text.js';
import type { Day } from '../../../values/moment.js';
import { INK } from './ink.js';
import { svgDrawing } from './svg-drawing.js';
import { monthGrid, WIDTH } from './time-axis.js';

const ROW = 14.5;
const MARGIN = { left: 292, right: 262, top: 34, bottom: 4 };
/** A task that comes round more often than this is shown as a series of ticks: bars would lie on each other. */
const SERIES = 9;

/** What a task is told to wait for: use, the calendar, or nothing, for it is due. */
export type Cause = 'now' | 'use' | 'calendar';

interface Row {
  readonly y: number;
  readonly title: string;
  readonly cause: Cause;
  readonly range: DateRange;
  readonly later: readonly DateRange[];
  readonly decides: string;
}

/** The drawing as SVG text, and whether there is anything on it. */
export function drawYear(outlook: Outlook, graph: RuleGraph): string {
  const rows = rowsOf(outlook, graph);
  const { from, to } = outlook;
  const height = MARGIN.top + MARGIN.bottom + rows.length * ROW;
  const room = WIDTH - MARGIN.left - MARGIN.right;
  const bars = rows.flatMap((row) => barsOf(row, to));
  return svgDrawing(
    {
      width: WIDTH,
      height,
      marginLeft: MARGIN.left,
      marginRight: MARGIN.right,
      marginTop: MARGIN.top,
      marginBottom: MARGIN.bottom,
      x: { type: 'linear', domain: [from, to], axis: null },
      y: { type: 'linear', domain: [rows.length - 0.5, -0.5], axis: null },
      marks: [
        ruleY(
          rows.filter(({ y }) => y % 2 === 1),
          { y: 'y', stroke: INK.wash, strokeWidth: ROW, insetLeft: -MARGIN.left, insetRight: -MARGIN.right },
        ),
        ...monthGrid(from, to, from, room),
        ...barMarks(bars),
        ...pointMarks(rows, to),
        text(rows, {
          x: () => from,
          y: 'y',
          text: 'title',
          dx: -MARGIN.left + 2,
          textAnchor: 'start',
          fill: INK.ink,
          fontSize: 11.5,
          lineWidth: 24.5,
          textOverflow: 'ellipsis-end',
        }),
        text(rows, {
          x: () => to,
          y: 'y',
          text: 'decides',
          dx: 10,
          textAnchor: 'start',
          fill: INK.soft,
          fontSize: 11,
          lineWidth: 20.5,
          textOverflow: 'ellipsis-end',
        }),
      ],
    },
    {
      id: 'year',
      title: 'The year ahead',
      description: `${rows.length} tasks with the range of days in which each may fall due. The same stands in the table below.`,
    },
  );
}

/** Due now first, then by the likeliest day. */
function rowsOf({ tasks, to }: Outlook, graph: RuleGraph): readonly Row[] {
  const names = namesOf(graph);
  const dated = tasks.filter(({ next, foreseen }) => next !== null && foreseen !== 'now').sort(byDay);
  return [...tasks.filter(({ foreseen }) => foreseen === 'now'), ...dated].flatMap((task, y): readonly Row[] =>
    task.next === null ? [] : [{ y, ...rowOf(task, task.next, graph, names, to) }],
  );
}

function rowOf(task: TaskAhead, range: DateRange, graph: RuleGraph, names: Names, to: Day): Omit<Row, 'y'> {
  const cause = causeOf(task, graph);
  const beyond = range.likely === null ? ', or later' : '';
  return {
    title: safeText(names.tasks[task.task] ?? task.task),
    cause,
    range,
    later: task.later.filter(({ early }) => early < to),
    decides: cause === 'now' ? nowWords(task) : `${decidesInWords(task, graph, names)}${beyond}`,
  };
}

function nowWords({ state }: TaskAhead): string {
  return state === 'unrecorded' ? 'never recorded' : state === 'overdue' ? 'overdue' : 'due';
}

/** By the rule that decides in most courses of use. */
function causeOf({ foreseen, decides }: TaskAhead, graph: RuleGraph): Cause {
  if (foreseen === 'now') return 'now';
  return decides[0] !== undefined && isByCalendar(decides[0].node, graph) ? 'calendar' : 'use';
}

function isByCalendar(id: NodeId, graph: RuleGraph): boolean {
  const node = graph.nodes[id];
  if (node === undefined) return false;
  if (node.kind === 'interval') return node.amount.on === 'calendar';
  return node.kind === 'calendar-marks' || node.kind === 'calendar-window' || node.kind === 'event' || node.kind === 'asked';
}

interface Bar {
  readonly y: number;
  readonly from: number;
  readonly to: number;
  readonly first: boolean;
}

function barsOf({ y, range, later, cause }: Row, to: Day): readonly Bar[] {
  const bar = ({ early, late }: DateRange, first: boolean): Bar => ({ y, from: early, to: Math.min(to, late ?? to), first });
  const rest = later.length >= SERIES ? [] : later.map((each) => bar(each, false));
  return [...rest, ...(cause === 'now' ? [] : [bar(range, true)])].filter((each) => each.to > each.from);
}

function barMarks(bars: readonly Bar[]) {
  const ends = { x1: 'from', x2: 'to', y: 'y', strokeLinecap: 'butt' } as const;
  return [
    ruleY(
      bars.filter(({ first }) => !first),
      { ...ends, stroke: INK.band, strokeWidth: 2 },
    ),
    ruleY(
      bars.filter(({ first }) => first),
      { ...ends, stroke: INK.band, strokeWidth: 7 },
    ),
  ];
}

function pointMarks(rows: readonly Row[], to: Day) {
  const of = (cause: Cause): readonly Row[] => rows.filter((row) => row.cause === cause && row.range.likely !== null);
  const later = rows.flatMap(({ y, later: rounds }) =>
    rounds.flatMap(({ likely }) => (likely === null || likely > to ? [] : [{ y, x: likely }])),
  );
  const at = { x: (row: Row) => row.range.likely, y: 'y' } as const;
  return [
    ruleX(later, {
      x: 'x',
      y1: ({ y }: { readonly y: number }) => y - 0.26,
      y2: ({ y }: { readonly y: number }) => y + 0.26,
      stroke: INK.soft,
      strokeWidth: 1.25,
    }),
    dot(of('now'), { ...at, symbol: 'square', r: 4.5, fill: INK.ink }),
    dot(of('use'), { ...at, r: 4, fill: INK.accent }),
    dot(of('calendar'), { ...at, symbol: 'diamond', r: 4.5, fill: INK.paper, stroke: INK.accent, strokeWidth: 1.75 }),
  ];
}
