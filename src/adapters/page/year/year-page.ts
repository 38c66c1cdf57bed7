/**
 * The year page: what lies ahead, the hours behind, and the levels, complete in itself.
 *
 * Works from disk with no network: no script, no font, no picture from elsewhere. Shapes and words, not colours, tell things apart.
 */
import { namesOf, readTimeline } from '../../../engine.js';
import type { Outlook } from '../../../ahead.js';
import type { Entry, RuleGraph, Timeline } from '../../../engine.js';
import { DEFERENCE } from '../../../render/cautions.js';
import { listed } from '../../../base/listed.js';
import { counted, inSentence } from '../../../render/count-in-words.js';
import { dayInWords } from '../../../render/dates-in-words.js';
import { escapeHtml } from '../../../render/escape-html.js';
import { daysNoted, fluidRow } from '../../../render/outlook/use-in-words.js';
import { numberAndRange } from '../../../render/outlook/range-in-words.js';
import { numberText } from '../../../values/number-text.js';
import { unitsOf } from '../../../values/ticks.js';
import { pageHead } from '../view/page-head.js';
import { drawHours } from './draw-hours.js';
import { drawLevel } from './draw-level.js';
import { drawYear } from './draw-year.js';
import { INK } from './ink.js';
import { servicesOf } from './services.js';
import { YEAR_PAGE_CSS } from './year-page-css.js';
import { htmlTable, servicesTable, yearTable } from './year-table.js';

/** The page as HTML. Every text from outside is escaped. Same inputs, same bytes. */
export function yearPage(graph: RuleGraph, entries: readonly Entry[], outlook: Outlook): string {
  const timeline = readTimeline(entries, graph, outlook.now);
  const title = `The year ahead: ${graph.schedule.title}`;
  return [
    pageHead({ title, allows: ["style-src 'unsafe-inline'"], css: YEAR_PAGE_CSS }),
    '<body><main>',
    head(graph, timeline, outlook),
    ahead(graph, outlook),
    behind(graph, entries, timeline, outlook),
    foot(graph, outlook),
    '</main></body></html>',
    '',
  ].join('\n');
}

function head(graph: RuleGraph, { machine }: Timeline, outlook: Outlook): string {
  const serial = machine.serial === null ? '' : `, serial ${machine.serial}`;
  return `<header><h1>${escapeHtml(graph.schedule.title)}${serial}</h1><p>${escapeHtml(`${dayInWords(outlook.from)}, looking ahead to ${dayInWords(outlook.to)}`)}</p></header>
<ul class="facts">${facts(graph, outlook)
    .map(([value, what]) => `<li><strong>${escapeHtml(value)}</strong> <span>${escapeHtml(what)}</span></li>`)
    .join('')}</ul>`;
}

function facts(graph: RuleGraph, { tasks, meters }: Outlook): readonly (readonly [string, string])[] {
  const now = tasks.filter(({ foreseen }) => foreseen === 'now').length;
  const unknown = tasks.filter(({ foreseen, next }) => next === null && (foreseen === 'unknown' || foreseen === 'use-unknown')).length;
  const rates = meters.flatMap(({ meter, rate, fromOutings }): readonly (readonly [string, string])[] => {
    const { title, unit } = graph.meters.find(({ id }) => id === meter) ?? { title: meter, unit: 'h' };
    if (rate === null) return [];
    const weekly = (ticks: number): number => unitsOf(ticks * 7);
    const range = rate.range === null ? null : { low: weekly(rate.range.low), high: weekly(rate.range.high) };
    return [[`${numberAndRange(weekly(rate.value), range, 1)} ${unit} a week`, `${title}, ${daysNoted(rate.n, fromOutings)}`]];
  });
  const unknowns: readonly (readonly [string, string])[] = unknown === 0 ? [] : [[String(unknown), 'cannot be told: something is missing']];
  return [[String(now), now === 1 ? 'task due now' : 'tasks due now'], ...unknowns, ...rates.slice(0, 2)];
}

function ahead(graph: RuleGraph, outlook: Outlook): string {
  const { tasks } = outlook;
  const shown = tasks.some(({ next }) => next !== null);
  return `<section class="year"><h2 id="ahead">When each thing will fall due</h2>
${shown ? `${yearKey()}\n<div class="wide" role="region" aria-labelledby="ahead" tabindex="0">${drawYear(outlook, graph)}</div>` : '<p>Nothing has a date in that time.</p>'}
${withoutDates(outlook, graph)}
${shown ? `<details><summary>The same as a table</summary>${yearTable(outlook, graph)}</details>` : ''}
</section>`;
}

/** What is not on the drawing, and why: unknown is said to be unknown. */
function withoutDates({ tasks, to }: Outlook, graph: RuleGraph): string {
  const names = namesOf(graph);
  const titles = (some: readonly { readonly task: string }[]): string =>
    listed(some.map(({ task }) => inSentence(names.tasks[task] ?? task)));
  const of = (...kinds: readonly string[]) => tasks.filter(({ foreseen }) => kinds.includes(foreseen));
  const unknown = of('unknown', 'use-unknown').filter(({ next }) => next === null);
  const beyond = of('simulated', 'calendar').filter(({ next }) => next === null);
  const sentences = [
    unknown.length === 0 ? '' : `Unknown, because something is missing: ${titles(unknown)}.`,
    beyond.length === 0 ? '' : `By use and the calendar hardly before ${dayInWords(to)}: ${titles(beyond)}.`,
    of('no-date').length === 0
      ? ''
      : `${counted(of('no-date').length, 'task')} without a date: they come with work, a reading or an event.`,
  ].filter((sentence) => sentence !== '');
  return sentences.length === 0 ? '' : `<p>${escapeHtml(sentences.join(' '))}</p>`;
}

function key(items: readonly (readonly [string, string])[]): string {
  const item = ([shape, words]: readonly [string, string]): string =>
    `<li><svg aria-hidden="true" width="26" height="14" viewBox="-13 -7 26 14">${shape}</svg>${words}</li>`;
  return `<ul class="key">${items.map(item).join('')}</ul>`;
}

const SHAPES = {
  now: `<rect x="-4" y="-4" width="8" height="8" fill="${INK.ink}"/>`,
  bar: `<path d="M-12 0H12" stroke="${INK.band}" stroke-width="7"/>`,
  use: `<path d="M-12 0H12" stroke="${INK.band}" stroke-width="7"/><circle r="4" fill="${INK.accent}"/>`,
  calendar: `<path d="M0 -5L4 0L0 5L-4 0z" fill="#fff" stroke="${INK.accent}" stroke-width="1.75"/>`,
  later: `<path d="M-12 0H12" stroke="${INK.band}" stroke-width="2"/><path d="M0 -4V4" stroke="${INK.soft}" stroke-width="1.25"/>`,
  done: `<circle r="3" fill="${INK.accent}"/>`,
  late: `<path d="M0 -5L4.5 3.5H-4.5z" fill="#fff" stroke="${INK.ink}" stroke-width="1.5"/>`,
  next: `<circle r="3" fill="#fff" stroke="${INK.accent}" stroke-width="1.5"/>`,
  fan: `<rect x="-12" y="-5" width="24" height="10" fill="${INK.band}"/><path d="M-12 0H12" stroke="${INK.accent}" stroke-width="1.5" stroke-dasharray="5 3"/>`,
  topUp: `<path d="M0 -5L4.5 3.5H-4.5z" fill="${INK.ink}"/>`,
} as const;

function yearKey(): string {
  return key([
    [SHAPES.now, 'due now'],
    [SHAPES.use, 'by use: likeliest day, and the range that holds it in four cases of five'],
    [SHAPES.calendar, 'by the calendar'],
    [SHAPES.later, 'again, if done each time it falls due'],
  ]);
}

function behind(graph: RuleGraph, entries: readonly Entry[], timeline: Timeline, outlook: Outlook): string {
  const services = servicesOf(graph, entries, outlook);
  const meter = graph.meters.find(({ unit, fromOutings }) => unit === 'h' && !fromOutings)?.id ?? '';
  const hours = drawHours(meter, timeline.meters.get(meter), services, outlook, graph);
  const levels = levelFigures(graph, timeline, outlook);
  const hoursPart =
    hours === null
      ? '<h2 id="hours-behind">Hours and services</h2><p>The meter was never read.</p>'
      : `<h2 id="hours-behind">Hours and services</h2>
${key([
  [SHAPES.done, 'done'],
  [SHAPES.late, 'done late'],
  [SHAPES.next, 'next, most likely'],
  [SHAPES.fan, 'where the hours may go: four cases of five'],
])}
<div class="wide" role="region" aria-labelledby="hours-behind" tabindex="0">${hours}</div>
<details><summary>The services as a table</summary>${servicesTable(services)}</details>`;
  return `<section class="behind">${hoursPart}</section>
<section><h2 id="levels">Levels and top-ups</h2>
${
  levels === ''
    ? '<p>Fewer than two levels are on record.</p>'
    : `${key([
        [SHAPES.topUp, 'topped up'],
        [SHAPES.use, 'about when it stands at low, if nobody tops up'],
      ])}<div class="levels">${levels}</div>`
}
${fluidsTable(graph, outlook)}
</section>`;
}

function levelFigures(graph: RuleGraph, timeline: Timeline, { fluids, from, to }: Outlook): string {
  const names = namesOf(graph);
  return fluids
    .flatMap((fluid) => {
      const title = names.dipsticks[fluid.dipstick]?.title ?? fluid.dipstick;
      const svg = drawLevel(fluid, title, timeline, from, to);
      const [, loss = ''] = fluidRow(fluid, names, to);
      return svg === null ? [] : [`<figure><h3>${escapeHtml(title)}</h3>${svg}<figcaption>${escapeHtml(loss)}</figcaption></figure>`];
    })
    .join('\n');
}

function fluidsTable(graph: RuleGraph, { fluids, to }: Outlook): string {
  if (fluids.length === 0) return '';
  const names = namesOf(graph);
  const rows = fluids.map((fluid) => fluidRow(fluid, names, to));
  return `<details><summary>The losses as a table</summary>${htmlTable('What goes of the fluids', ['Dipstick', 'Loss', 'Until low', 'Rests on'], rows)}</details>`;
}

function foot({ schedule }: RuleGraph, { tasks }: Outlook): string {
  const edition =
    schedule.edition === undefined ? '' : `, edition ${schedule.edition.number} of ${schedule.edition.date} by ${schedule.edition.by}`;
  const methods = [...new Set(tasks.filter(({ foreseen }) => foreseen === 'simulated').map(({ method }) => method))];
  const days = tasks.map(({ n }) => n).filter((n) => n > 0);
  const isWorked = tasks.some(({ fromOutings }) => fromOutings);
  const basis =
    days.length === 0
      ? ''
      : ` They rest on ${numberText(Math.min(...days))} to ${numberText(Math.max(...days))} days with a reading${isWorked ? ' or an outing' : ''}.`;
  return `<footer><p>${escapeHtml(`By the schedule “${schedule.title}”${edition}.`)} ${escapeHtml(methods.length === 0 ? '' : `Dates by use: ${listed(methods)}, if the use goes on as it was.${basis}`)}</p>
<p><strong>${escapeHtml(DEFERENCE)}</strong> An estimate is no promise: look at the machine.</p></footer>`;
}
