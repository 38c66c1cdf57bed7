/**
 * Hours over time, with where they may go from here; below, each service on the days on which it was done.
 */
import { areaY, dot, lineY, ruleY, text } from '@observablehq/plot';
import type { Markish } from '@observablehq/plot';
import type { CoursePoint, Outlook } from '../../../ahead.js';
import type { MeterTrack, RuleGraph } from '../../../engine.js';
import { dayInWords } from '../../../render/dates-in-words.js';
import { safeText } from '../../../render/safe-text.js';
import type { Day } from '../../../values/moment.js';
import { numberText } from '../../../values/number-text.js';
import { unitsOf } from '../../../values/ticks.js';
import { INK } from './ink.js';
import type { Service } from './services.js';
import { svgDrawing } from './svg-drawing.js';
import { monthGrid, WIDTH } from './time-axis.js';

const MARGIN = { left: 292, right: 74, top: 34, bottom: 4 };
const HOURS = 168;
const GAP = 20;
const ROW = 14;

/** What the two parts are drawn from. */
interface Sky {
  readonly from: Day;
  readonly to: Day;
  readonly today: Day;
  readonly unit: string;
}

/** The drawing as SVG text; `null` where the meter was never read. */
export function drawHours(
  meter: string,
  track: MeterTrack | undefined,
  services: readonly Service[],
  outlook: Outlook,
  graph: RuleGraph,
): string | null {
  const first = track?.points[0];
  const { title, unit } = graph.meters.find(({ id }) => id === meter) ?? { title: meter, unit: 'h' };
  if (track === undefined || first === undefined) return null;
  const sky: Sky = { from: first.when.day, to: outlook.to, today: outlook.from, unit };
  const course = outlook.meters.find((each) => each.meter === meter)?.course ?? [];
  const points = track.points.map(({ when, total }) => ({ day: when.day, hours: unitsOf(total) }));
  const below = services.length === 0 ? 0 : GAP + services.length * ROW;
  const scale = scaleOf(points, course);
  return svgDrawing(
    {
      width: WIDTH,
      height: MARGIN.top + HOURS + below + MARGIN.bottom,
      marginLeft: MARGIN.left,
      marginRight: MARGIN.right,
      marginTop: MARGIN.top,
      marginBottom: MARGIN.bottom,
      x: { type: 'linear', domain: [sky.from, sky.to], axis: null },
      // One scale for both parts, in units of the drawing from its top.
      y: { type: 'linear', domain: [HOURS + below, 0], axis: null },
      marks: [
        ...monthGrid(sky.from, sky.to, sky.today, WIDTH - MARGIN.left - MARGIN.right),
        ...hourMarks(points, course, scale, sky, title),
        ...serviceMarks(services, sky),
      ],
    },
    { id: 'hours', title: `${title}, and services`, description: describe(points, services, unit) },
  );
}

interface HourScale {
  readonly at: (hours: number) => number;
  readonly ticks: readonly number[];
}

/** Hours to units from the top, between round numbers. */
function scaleOf(points: readonly { readonly hours: number }[], course: readonly CoursePoint[]): HourScale {
  const low = points[0]?.hours ?? 0;
  const high = Math.max(points.at(-1)?.hours ?? 0, ...course.map((each) => unitsOf(each.high)));
  const rough = Math.max(1e-9, high - low) / 4;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((each) => each * power).find((each) => each >= rough) ?? 10 * power;
  const [first, last] = [Math.floor(low / step), Math.ceil(high / step)];
  const ticks = Array.from({ length: last - first + 1 }, (_, index) => (first + index) * step);
  return { ticks, at: (hours) => HOURS * (1 - (hours - first * step) / ((last - first) * step || 1)) };
}

function hourMarks(
  points: readonly { readonly day: Day; readonly hours: number }[],
  course: readonly CoursePoint[],
  { at, ticks }: HourScale,
  { from, to, unit }: Pick<Sky, 'from' | 'to' | 'unit'>,
  title: string,
): readonly Markish[] {
  const last = points.at(-1);
  const end = course.at(-1);
  const label = { dx: 6, textAnchor: 'start', fontSize: 11, fill: INK.soft } as const;
  return [
    ruleY(ticks, { y: (hours: number) => at(hours), stroke: INK.grid }),
    text(ticks, {
      x: () => from,
      y: (hours: number) => at(hours),
      text: (hours: number) => `${numberText(hours)} ${safeText(unit)}`,
      dx: -8,
      textAnchor: 'end',
      fill: INK.soft,
      fontSize: 11,
    }),
    ...captionMarks(points, course, { from, to, unit }, title),
    areaY(course, {
      x: 'day',
      y1: (each: CoursePoint) => at(unitsOf(each.low)),
      y2: (each: CoursePoint) => at(unitsOf(each.high)),
      fill: INK.band,
    }),
    lineY(course, {
      x: 'day',
      y: (each: CoursePoint) => at(unitsOf(each.middle)),
      stroke: INK.accent,
      strokeWidth: 1.5,
      strokeDasharray: '5 3',
    }),
    lineY(points, { x: 'day', y: (each: { readonly hours: number }) => at(each.hours), stroke: INK.accent, strokeWidth: 2 }),
    ...(last === undefined ? [] : [dot([last], { x: 'day', y: () => at(last.hours), r: 3.5, fill: INK.accent })]),
    ...(end === undefined
      ? []
      : [
          text(['low', 'high'] as const, {
            x: () => to,
            y: (which: 'low' | 'high') => at(unitsOf(end[which])),
            text: (which: 'low' | 'high') => `${numberText(unitsOf(end[which]), 0)} ${safeText(unit)}`,
            ...label,
          }),
        ]),
  ];
}

/** What the meter shows and where it may go, in the empty corner beside the curve. */
function captionMarks(
  points: readonly { readonly day: Day; readonly hours: number }[],
  course: readonly CoursePoint[],
  { from, to, unit }: Pick<Sky, 'from' | 'to' | 'unit'>,
  title: string,
): readonly Markish[] {
  const [last, end] = [points.at(-1), course.at(-1)];
  const lines = [
    safeText(title),
    ...(last === undefined ? [] : [`${numberText(last.hours)} ${safeText(unit)} on ${dayInWords(last.day)}`]),
    ...(end === undefined
      ? []
      : [`${numberText(unitsOf(end.low), 0)} to ${numberText(unitsOf(end.high), 0)} ${safeText(unit)} on ${dayInWords(to)}`]),
  ];
  const at = (line: string): number => 6 + 16 * lines.indexOf(line);
  const [first = '', ...rest] = lines;
  const style = { x: () => from, y: at, text: (line: string) => line, dx: -MARGIN.left + 2, textAnchor: 'start', fontSize: 11.5 } as const;
  return [text([first], { ...style, fontWeight: 700, fill: INK.ink }), text(rest, { ...style, fill: INK.soft })];
}

interface Done {
  readonly day: Day;
  readonly y: number;
  readonly timing: Service['done'][number]['timing'];
}

function serviceMarks(services: readonly Service[], { from, to }: Sky): readonly Markish[] {
  const rows = services.map((service, index) => ({ ...service, y: HOURS + GAP + (index + 0.5) * ROW }));
  const done = rows.flatMap(({ y, done: days }) => days.map((each): Done => ({ ...each, y })));
  const next = rows.flatMap(({ y, next: day }) => (day === null || day > to ? [] : [{ day, y }]));
  const at = { x: 'day', y: 'y' } as const;
  return [
    ruleY(rows, { y: 'y', stroke: INK.grid }),
    text(rows, {
      x: () => from,
      y: 'y',
      text: ({ title }: Service) => safeText(title),
      dx: -MARGIN.left + 2,
      textAnchor: 'start',
      fontSize: 11.5,
      fill: INK.ink,
      lineWidth: 24.5,
      textOverflow: 'ellipsis-end',
    }),
    dot(next, { x: 'day', y: 'y', r: 3, fill: INK.paper, stroke: INK.accent, strokeWidth: 1.5 }),
    dot(
      done.filter(({ timing }) => timing !== 'late'),
      { ...at, r: 3, fill: INK.accent, stroke: INK.paper, strokeWidth: 0.75 },
    ),
    dot(
      done.filter(({ timing }) => timing === 'late'),
      { ...at, symbol: 'triangle', r: 4, fill: INK.paper, stroke: INK.ink, strokeWidth: 1.5 },
    ),
  ];
}

function describe(points: readonly { readonly hours: number }[], services: readonly Service[], unit: string): string {
  const [low, high] = [points[0]?.hours ?? 0, points.at(-1)?.hours ?? 0];
  const late = services.flatMap(({ done }) => done).filter(({ timing }) => timing === 'late').length;
  return `The meter rose from ${numberText(low)} to ${numberText(high)} ${unit}. ${services.length} services are marked on the days on which they were done, ${late} times late. The same stands in the table below.`;
}
