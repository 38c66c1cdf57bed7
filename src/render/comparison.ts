/**
 * What a new edition changes, as its author and the owners of the machines read it: what became tighter first.
 */
import type { Comparison, Move, TaskChange, TaskComparison } from '../compare/comparison.js';
import type { RuleGraph } from '../graph/rule-graph.js';
import { numberText, durationText } from '../values/number-text.js';
import { unitsOf } from '../values/ticks.js';
import { counted } from './count-in-words.js';
import { pointText } from './point-text.js';
import { safeText } from './safe-text.js';
import { stateInWords } from './state-in-words.js';
import type { Style } from './style.js';
import { labelled, wrap } from './wrap.js';

/** The graphs that were compared: words are found in them. */
export interface ComparedGraphs {
  readonly before: RuleGraph;
  readonly after: RuleGraph;
}

/** The whole comparison, without a line end at the end. */
export function renderComparison(comparison: Comparison, graphs: ComparedGraphs, style: Style): string {
  const blocks = [
    headLines(comparison, style),
    ...groups(comparison.tasks).map(([title, tasks]) => [style.paint.strong(title), ...tasks.flatMap((task) => taskLines(task, style))]),
    declarationLines(comparison, style),
    ...moveBlocks(comparison, graphs, style),
  ];
  return blocks
    .filter((block) => block.length > 0)
    .map((block) => block.join('\n'))
    .join('\n\n');
}

function headLines({ before, after, same, tasks }: Comparison, style: Style): readonly string[] {
  const verdict = same
    ? 'Both mean the same, however they are laid out.'
    : `${counted(tasks.length, 'task')} of ${safeText(after.name)} ${tasks.length === 1 ? 'is' : 'are'} new, gone or changed.`;
  return [
    style.paint.strong(verdict),
    `before  ${editionWords(before)}, meaning ${before.meaning}`,
    `after   ${editionWords(after)}, meaning ${after.meaning}`,
  ];
}

function editionWords({ name, edition }: Comparison['before']): string {
  return `${safeText(name)}${edition === null ? '' : ` edition ${edition}`}`;
}

/** A task with changes in several directions stands with the one that asks most of the owner. */
function groups(tasks: readonly TaskComparison[]): readonly (readonly [string, readonly TaskComparison[]])[] {
  const of = (test: (task: TaskComparison) => boolean): readonly TaskComparison[] => tasks.filter(test);
  const changed = (bearing: TaskChange['bearing']): readonly TaskComparison[] =>
    of(({ status, bearings }) => status === 'changed' && bearings[0] === bearing);
  const all: readonly (readonly [string, readonly TaskComparison[]])[] = [
    ['Tighter: asked for sooner or more often', changed('tighter')],
    ['New tasks', of(({ status }) => status === 'new')],
    ['Re-anchored: counted from elsewhere', changed('re-anchored')],
    ['Looser: asked for later or less often', changed('looser')],
    ['Gone', of(({ status }) => status === 'gone')],
    ['Said differently', changed('different')],
  ];
  return all.filter(([, found]) => found.length > 0);
}

function taskLines({ task, title, changes }: TaskComparison, style: Style): readonly string[] {
  const head = `${safeText(title)} (${safeText(task)})`;
  return [...wrap(head, style.width - 2).map((line) => `  ${line}`), ...changes.flatMap((change) => changeLines(change, style))];
}

function changeLines({ what, bearing, before, after }: TaskChange, style: Style): readonly string[] {
  const arrow = style.unicode ? '→' : '->';
  const words = [before === undefined ? 'nothing' : safeText(before.text), after === undefined ? 'nothing' : safeText(after.text)];
  const text = before?.text === after?.text ? (words[0] ?? '') : words.join(` ${arrow} `);
  return labelled(`    ${what}`, `${text}${bearing === 'different' ? '' : ` (${bearing})`}`, style.width, 24);
}

function declarationLines({ declarations }: Comparison, style: Style): readonly string[] {
  if (declarations.length === 0) return [];
  const words = declarations.map(({ kind, id, status }) => `${kind}: ${safeText(id)} ${status}`);
  return [style.paint.strong('Other declarations'), ...words.map((line) => `  ${line}`)];
}

function moveBlocks({ moves }: Comparison, graphs: ComparedGraphs, style: Style): readonly (readonly string[])[] {
  return [...new Set(moves.map(({ machine }) => machine))].map((machine) => [
    style.paint.strong(`Moves for ${safeText(machine)}`),
    ...moves.filter((move) => move.machine === machine).flatMap((move) => moveLines(move, graphs, style)),
  ]);
}

function moveLines(move: Move, graphs: ComparedGraphs, style: Style): readonly string[] {
  const arrow = style.unicode ? '→' : '->';
  const by = distanceWords(move, graphs.after);
  const text = `${sideWords(move.before, graphs.before)} ${arrow} ${sideWords(move.after, graphs.after)}${by === '' ? '' : `, ${by}`} (${whyWords(move)})`;
  return wrap(`${safeText(move.task)}: ${text}`, style.width - 4).map((line, index) => `${index === 0 ? '  ' : '    '}${line}`);
}

function whyWords({ why, before, after }: Move): string {
  if (before.state === 'absent') return 'new task';
  if (after.state === 'absent') return 'gone';
  return why.length === 0 ? 'through another task' : [...new Set(why.map(({ what }) => what))].join(', ');
}

function sideWords({ state, due }: Move['before'], graph: RuleGraph): string {
  const words = state === 'absent' ? 'absent' : stateInWords(state);
  return due === null ? words : `${words} (due ${pointText(due, graph)})`;
}

function distanceWords({ by, after }: Move, graph: RuleGraph): string {
  if (by === null || by === 0 || after.due === null) return '';
  const way = by < 0 ? 'sooner' : 'later';
  const size = Math.abs(by);
  const { due } = after;
  if (due.on === 'calendar') return `${counted(size, 'day')} ${way}`;
  if (due.on !== 'meter') return `${durationText(size)} ${way}`;
  return `${numberText(unitsOf(size))} ${graph.meters.find(({ id }) => id === due.meter)?.unit ?? 'h'} ${way}`;
}
