/**
 * An outing from end to end, for people: what to do before it, what falls due during it by the clock, what to do after it.
 */
import type { TaskAssessment } from '../assess/assessment.js';
import { namesOf } from '../explain/names.js';
import type { RuleGraph } from '../graph/rule-graph.js';
import type { DuringLine, OutingOutlook } from '../outlook/during-outing.js';
import { durationText } from '../values/number-text.js';
import { TICKS_PER_MINUTE } from '../values/ticks.js';
import { pointInWords, type Titles } from './amounts-in-words.js';
import { DEFERENCE } from './cautions.js';
import { listed } from '../base/listed.js';
import { counted } from './count-in-words.js';
import { clockTime, momentInWords } from './dates-in-words.js';
import { nodeInWords } from './rule-in-words.js';
import { safeText } from './safe-text.js';
import { verdictInWords } from './state-in-words.js';
import type { Style } from './style.js';
import { table } from './table.js';
import { wrap } from './wrap.js';

/** So many times of one task are told one by one; the rest are counted. */
const toldTimes = 6;
/** Seconds of a task from which nobody cares to interrupt work for it. */
const longFrom = 15 * 60;

/** The outing as text, lines parted by `\n`, without one at the end. */
export function renderOuting(outlook: OutingOutlook, graph: RuleGraph, style: Style): string {
  const names = namesOf(graph);
  const blocks = [
    head(outlook, graph, style),
    part('Before it', taskRows(outlook.before, graph, names), 'Nothing is due.', style),
    part('During it', duringRows(outlook.during, graph, names), 'Nothing falls due.', style),
    outlook.cut ? wrap(`Only the first ${counted(outlook.during.length, 'line')} are shown.`, style.width) : [],
    longWork(outlook.during, graph, names, style),
    part('After it', taskRows(outlook.after, graph, names), 'Nothing is due.', style),
    foot(style),
  ];
  return blocks
    .filter((block) => block.length > 0)
    .map((block) => block.join('\n'))
    .join('\n\n');
}

function head({ outing, now, verdict }: OutingOutlook, graph: RuleGraph, style: Style): readonly string[] {
  const start = outing.start === undefined ? '' : ` from ${clockTime(outing.start)}`;
  const title = `${safeText(graph.schedule.title)}: ${durationText(Math.round(outing.hours * 60) * TICKS_PER_MINUTE)} of work${start}, asked on ${momentInWords(now)}`;
  return [...wrap(title, style.width).map(style.paint.quiet), ...wrap(`${verdictInWords(verdict)}.`, style.width).map(style.paint.strong)];
}

function part(title: string, rows: readonly (readonly string[])[], none: string, style: Style): readonly string[] {
  const lines = rows.length === 0 ? [none] : table(rows, [34, 34, 32], style.width - 2, style.paint);
  return [style.paint.strong(title), ...lines.map((line) => `  ${line}`)];
}

function taskRows(tasks: readonly TaskAssessment[], graph: RuleGraph, names: Titles): readonly (readonly string[])[] {
  return tasks.map((task) => [titleOf(task.task, names), '', reasonOf(task.governing, graph, names)]);
}

/** One row a task: the times at which it falls due, or after how long where the start is not known. */
function duringRows(lines: readonly DuringLine[], graph: RuleGraph, names: Titles): readonly (readonly string[])[] {
  const tasks = [...new Set(lines.map((line) => line.task))];
  return tasks.map((task) => {
    const times = lines.filter((line) => line.task === task);
    const told = times.slice(0, toldTimes).map(timeOf);
    const more = times.length - told.length;
    const first = times[0];
    const at = first?.due?.on === 'meter' ? `, at ${pointInWords(first.due, names)}` : '';
    const when = more > 0 ? `${told.join(', ')} and ${counted(more, 'more time')}` : listed(told);
    return [titleOf(task, names), `${when}${at}`, reasonOf(first?.governing ?? null, graph, names)];
  });
}

/** What falls due once on the way and takes long, or a mechanic: better done before setting out. */
function longWork(lines: readonly DuringLine[], graph: RuleGraph, names: Titles, style: Style): readonly string[] {
  const long = graph.tasks.filter(
    ({ id, site }) => lines.filter((line) => line.task === id).length === 1 && (site.seconds >= longFrom || site.qualified),
  );
  if (long.length === 0) return [];
  const told = long.map(({ id, site }) => {
    const time = site.seconds === 0 ? [] : [durationText(Math.round(site.seconds / 60) * TICKS_PER_MINUTE)];
    const words = [...time, ...(site.qualified ? ['for a qualified mechanic'] : [])].join(', ');
    return `${titleOf(id, names)} (${words})`;
  });
  return wrap(`Falls due on the way and is better done before you set out, if you can: ${told.join('; ')}.`, style.width);
}

function timeOf({ at, afterMinutes }: DuringLine): string {
  return at?.minute == null ? `after ${durationText(afterMinutes * TICKS_PER_MINUTE)}` : clockTime(at.minute);
}

function titleOf(task: string, names: Titles): string {
  return safeText(names.tasks[task] ?? task);
}

function reasonOf(node: number | null, graph: RuleGraph, names: Titles): string {
  const rule = node === null ? undefined : graph.nodes[node];
  return rule === undefined ? '' : nodeInWords(rule, (id) => graph.nodes[id], names);
}

function foot(style: Style): readonly string[] {
  const assumed =
    'Reckoned with hour meters that run with the clock, and with each thing done when it falls due. Gauges are not foreseen: read them as you work.';
  return [...wrap(assumed, style.width).map(style.paint.quiet), ...wrap(DEFERENCE, style.width).map(style.paint.quiet)];
}
