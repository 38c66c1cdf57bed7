/**
 * One fluid: levels between the marks of its dipstick, top-ups, and about when it will stand at low.
 */
import { dot, lineY, type Markish, rect, ruleX, ruleY, text } from '@observablehq/plot';
import type { DateRange, FluidAhead } from '../../../ahead.js';
import type { Timeline } from '../../../engine.js';
import { safeText } from '../../../render/safe-text.js';
import type { Day } from '../../../values/moment.js';
import { numberText } from '../../../values/number-text.js';
import { INK } from './ink.js';
import { svgDrawing } from './svg-drawing.js';
import { monthGrid } from './time-axis.js';

const WIDTH = 330;
const HEIGHT = 154;
const MARGIN = { left: 34, right: 8, top: 34, bottom: 4 };
/** Levels are drawn a little beyond the marks, where a dipstick can still be read. */
const [LOWEST, HIGHEST] = [-0.25, 1.25];

interface Level {
  readonly day: Day;
  readonly value: number;
  /** Below low or above full, nobody knows how far. */
  readonly off: boolean;
}

interface TopUpMark {
  readonly day: Day;
  readonly label: string;
}

/** The days that the drawing runs over, and from where to where low may come. */
interface Reach {
  readonly from: Day;
  readonly last: Day;
  readonly low: DateRange | null;
  readonly lowEnds: number;
}

/** The drawing as SVG text; `null` with fewer than two levels. */
export function drawLevel(fluid: FluidAhead, title: string, timeline: Timeline, today: Day, to: Day): string | null {
  const levels = levelsOf(fluid.dipstick, timeline);
  const first = levels[0];
  if (first === undefined || levels.length < 2) return null;
  const topUps = topUpsOf(fluid.dipstick, timeline);
  const low = fluid.loss?.low ?? null;
  const lowEnds = low === null ? today : Math.min(to, low.late ?? to);
  const reach = { from: first.day, last: Math.max(today, lowEnds) as Day, low, lowEnds };
  return svgDrawing(
    {
      width: WIDTH,
      height: HEIGHT,
      marginLeft: MARGIN.left,
      marginRight: MARGIN.right,
      marginTop: MARGIN.top,
      marginBottom: MARGIN.bottom,
      x: { type: 'linear', domain: [reach.from, reach.last], axis: null },
      y: { type: 'linear', domain: [LOWEST, HIGHEST], axis: null },
      marks: [...dipstickMarks(reach, today), ...levelMarks(levels), ...topUpMarks(topUps), ...lowMarks(reach)],
    },
    {
      id: `level-${levelId(fluid.dipstick)}`,
      title,
      description: `${levels.length} levels between the low and the full mark, ${topUps.length} top-ups.`,
    },
  );
}

function levelsOf(dipstick: string, timeline: Timeline): readonly Level[] {
  return (timeline.instruments.get(dipstick) ?? []).map(({ when, value }) => ({
    day: when.day,
    value: Math.min(HIGHEST, Math.max(LOWEST, value)),
    off: !Number.isFinite(value),
  }));
}

function topUpsOf(dipstick: string, timeline: Timeline): readonly TopUpMark[] {
  return timeline.topUps
    .filter((topUp) => topUp.dipstick === dipstick)
    .map(({ when, litres }) => ({ day: when.day, label: `${numberText(litres)} L` }));
}

/** What lies below: the stick between its two marks, and the months. */
function dipstickMarks({ from, last }: Reach, today: Day): readonly Markish[] {
  return [
    rect([0], { x1: from, x2: last, y1: 0, y2: 1, fill: INK.wash }),
    ...monthGrid(from, last, today, WIDTH - MARGIN.left - MARGIN.right),
    ruleY([0, 1], { stroke: INK.soft, strokeWidth: 1 }),
    text([0, 1], {
      x: () => from,
      y: (mark: number) => mark,
      text: (mark: number) => (mark === 0 ? 'low' : 'full'),
      dx: -6,
      textAnchor: 'end',
      fontSize: 11,
      fill: INK.ink,
    }),
  ];
}

function levelMarks(levels: readonly Level[]): readonly Markish[] {
  return [
    lineY(levels, { x: 'day', y: 'value', stroke: INK.accent, strokeWidth: 1.25 }),
    dot(
      levels.filter(({ off }) => !off),
      { x: 'day', y: 'value', r: 1.6, fill: INK.accent },
    ),
    dot(
      levels.filter(({ off }) => off),
      { x: 'day', y: 'value', symbol: 'times', r: 3, stroke: INK.ink, strokeWidth: 1.5 },
    ),
  ];
}

function topUpMarks(topUps: readonly TopUpMark[]): readonly Markish[] {
  return [
    ruleX(topUps, { x: 'day', y1: LOWEST, y2: 1.08, stroke: INK.ink, strokeWidth: 1 }),
    dot(topUps, { x: 'day', y: 1.08, symbol: 'triangle', r: 4, fill: INK.ink }),
    text(topUps, { x: 'day', y: 1.17, text: 'label', fontSize: 10.5, fill: INK.ink, stroke: INK.paper, strokeWidth: 3 }),
  ];
}

/** When it may stand at low: a bar for the range, a dot for the likeliest day. */
function lowMarks({ low, lowEnds }: Reach): readonly Markish[] {
  if (low === null) return [];
  const bar = ruleY([low], { y: 0, x1: () => low.early, x2: () => lowEnds, stroke: INK.band, strokeWidth: 7 });
  return low.likely == null ? [bar] : [bar, dot([low.likely], { x: (day: number) => day, y: 0, r: 4, fill: INK.accent })];
}

function levelId(dipstick: string): string {
  return safeText(dipstick).replace(/[^a-z0-9-]/g, '-');
}
