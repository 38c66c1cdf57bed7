/**
 * Why a task is or is not due, as a mechanic would say it, and below it the numbers, the line of the schedule and the entries of
 * the logbook that it rests on.
 */
import type { Explanation } from '../explain/explanation.js';
import { cautionLines, DEFERENCE } from './cautions.js';
import type { Timeline } from '../history/timeline.js';
import { safeText } from './safe-text.js';
import { setAsideSentences } from './set-aside-sentence.js';
import { stateMark } from './state-in-words.js';
import type { Style } from './style.js';
import { whyParts, type WhyParts } from './why-parts.js';
import { labelled, wrap } from './wrap.js';

const MARGIN = 11;

/** Entries of the logbook that are told one by one; of more, the first and the last are. */
const MOST_ENTRIES = 8;

/** How much an explanation shows. */
export interface WhyOptions {
  /** Tell every entry of the logbook, however many there are. */
  readonly all?: boolean;
  /** The history as it was assessed: with it, newer readings that were set aside are told. */
  readonly timeline?: Timeline;
}

/**
 * The whole answer, lines parted by `\n`, without one at the end.
 *
 * Cautions stand before the procedure, with the deference to the machine's own manual, local rules and qualified mechanics.
 *
 * @example renderWhy(explain(graph, assessment, entries, 'change-engine-oil'), plainStyle(80))
 */
export function renderWhy(explanation: Explanation, style: Style, { all = false, timeline }: WhyOptions = {}): string {
  const whole = whyParts(explanation);
  const parts = all ? whole : { ...whole, entries: inShort(whole.entries) };
  const setAside = timeline === undefined ? [] : setAsideSentences(timeline, explanation);
  const blocks = [
    answer(explanation, parts, style),
    changeBlock(parts, style),
    [...evidenceBlock(parts, style), ...rows('Set aside', setAside, style)],
    workBlock(explanation, style),
  ];
  return blocks
    .filter((block) => block.length > 0)
    .map((block) => block.join('\n'))
    .join('\n\n');
}

function answer({ state }: Explanation, { headline, others, holds }: WhyParts, style: Style): readonly string[] {
  const [first = '', ...rest] = wrap([headline, ...others].join(' '), style.width - 2);
  return [
    style.paint.state(state, stateMark(state, style)) + style.paint.strong(first),
    ...rest.map((line) => `  ${line}`),
    ...holds.flatMap((line) => wrap(line, style.width - 2).map((part) => `  ${part}`)),
  ];
}

function changeBlock({ changes }: WhyParts, style: Style): readonly string[] {
  return changes.length === 0 ? [] : wrap(changes.join(' '), style.width - 2).map((line) => `  ${line}`);
}

function evidenceBlock(parts: WhyParts, style: Style): readonly string[] {
  return [
    ...row('Rule', parts.rule, style),
    ...(parts.reason === null ? [] : row('Reason', parts.reason, style)),
    ...(parts.source === null ? [] : row('Source', parts.source, style)),
    ...(parts.kept === null ? [] : row('Record', parts.kept, style)),
    ...parts.numbers.flatMap((line) => row(line.label, line.text, style)),
    ...rows('Unknown', parts.unknown, style),
    ...rows('Logbook', parts.entries, style),
  ];
}

/** What to do, with what could hurt before it. */
function workBlock({ task, state }: Explanation, style: Style): readonly string[] {
  const wanted = state !== 'clear' && state !== 'resting';
  if (!wanted || (task.cautions.length === 0 && task.procedure.length === 0 && !task.qualified)) return [];
  const steps = task.procedure.flatMap((step, index) => labelled(`${index + 1}.`, safeText(step), style.width, MARGIN));
  const mechanic = task.qualified ? ['This calls for a qualified mechanic.'] : [];
  return [...cautionLines(task.cautions, style, MARGIN), ...[...mechanic, DEFERENCE].flatMap((line) => wrap(line, style.width)), ...steps];
}

function inShort(entries: readonly string[]): readonly string[] {
  const [first, last] = [entries[0], entries.at(-1)];
  if (entries.length <= MOST_ENTRIES || first === undefined || last === undefined) return entries;
  return [first, `… ${entries.length - 2} more entries in between; --all tells each …`, last];
}

/** The label stands once, before the first. */
function rows(label: string, texts: readonly string[], style: Style): readonly string[] {
  return texts.flatMap((text, index) => row(index === 0 ? label : '', text, style));
}

function row(label: string, text: string, style: Style): readonly string[] {
  return labelled(label, text, style.width, Math.max(MARGIN, label.length + 1), style.paint.quiet);
}
