/**
 * What to have on the shelf, for people.
 */
import { namesOf } from '../../explain/names.js';
import type { RuleGraph } from '../../graph/rule-graph.js';
import type { Outlook } from '../../outlook/outlook.js';
import type { SuppliesAhead } from '../../outlook/supplies-ahead.js';
import type { SupplyNeeded } from '../../outlook/supplies-needed.js';
import { theMeter, type Titles } from '../amounts-in-words.js';
import { DEFERENCE } from '../cautions.js';
import { listed } from '../../base/listed.js';
import { inSentence } from '../count-in-words.js';
import { dayInWords, momentInWords } from '../dates-in-words.js';
import { safeText } from '../safe-text.js';
import type { Style } from '../style.js';
import { table } from '../table.js';
import { wrap } from '../wrap.js';
import { amountOf, timeInWords } from './takes-in-words.js';
import { ENOUGH_READ } from './use-in-words.js';

/** The supplies as text, lines parted by `\n`, without one at the end. Of `meters`, those that were read too seldom to look ahead are named. */
export function renderSupplies(supplies: SuppliesAhead, graph: RuleGraph, style: Style, meters: Outlook['meters'] = []): string {
  const { likely, most, time } = supplies;
  const names = namesOf(graph);
  const what = time === null ? 'what the work takes' : `what the time up to ${dayInWords(time.to)} takes`;
  const rows = most.supplies.map((atMost) =>
    row(
      likely.supplies.find(({ supply }) => supply === atMost.supply),
      atMost,
      graph,
      names,
    ),
  );
  const blocks = [
    wrap(`${safeText(graph.schedule.title)}, on ${momentInWords(supplies.now)}: ${what}`, style.width).map(style.paint.quiet),
    rows.length === 0 ? ['Nothing that the schedule names.'] : table(rows, [34, 22, 20, 34], style.width, style.paint),
    restLines(supplies, style),
    time === null ? [] : seldomLines(meters, names, style),
    footLines(supplies, style),
  ];
  return blocks
    .filter((block) => block.length > 0)
    .map((block) => block.join('\n'))
    .join('\n\n');
}

/** Supply, needed, shelf and missing, for what. */
function row(likely: SupplyNeeded | undefined, most: SupplyNeeded, graph: RuleGraph, names: Titles): readonly string[] {
  const { supply, title, unit, onShelf } = most;
  const code = graph.supplies.find(({ id }) => id === supply)?.knownAs;
  const range = (a: number, b: number): string =>
    a === b ? amountOf(a, unit) : a === 0 ? `perhaps ${amountOf(b, unit)}` : `${amountOf(a, unit)}, at most ${amountOf(b, unit)}`;
  const missing = most.missing === 0 ? 'enough there' : `get ${range(likely?.missing ?? 0, most.missing)}`;
  return [
    `${safeText(title)}${code === undefined ? '' : ` [${safeText(code)}]`}`,
    range(likely?.needed ?? 0, most.needed),
    `${onShelf === 0 ? '' : `${amountOf(onShelf, unit)} there: `}${missing}`,
    listed(most.for.map(({ task, amount }) => `${inSentence(safeText(names.tasks[task] ?? task))} (${amountOf(amount, unit)})`)),
  ];
}

/** Where nobody can tell how a meter will go on, work by it is missing from the sum. */
function seldomLines(meters: Outlook['meters'], names: Titles, style: Style): readonly string[] {
  const seldom = meters.filter(({ course }) => course.length === 0).map(({ meter }) => theMeter(meter, names));
  if (seldom.length === 0) return [];
  return wrap(`Not counted: what will fall due by ${listed(seldom)}, read too seldom to look ahead. It takes ${ENOUGH_READ}.`, style.width);
}

function restLines({ likely }: SuppliesAhead, style: Style): readonly string[] {
  const sentences = [
    likely.tools.length === 0 ? '' : `Tools: ${likely.tools.map(safeText).join(', ')}.`,
    `Time: ${timeInWords(likely)}; opening up and walking not counted.`,
  ];
  return sentences.filter((sentence) => sentence !== '').flatMap((sentence) => wrap(sentence, style.width));
}

function footLines({ time }: SuppliesAhead, style: Style): readonly string[] {
  const method =
    time === null
      ? ''
      : 'Counted along simulated courses of use: as much as half of them take, at most what nine in ten take task by task. What a reading or a defect asks for (a top-up, a repair) is not foreseen; what another task covers is not counted twice.';
  return [method, DEFERENCE]
    .filter((sentence) => sentence !== '')
    .flatMap((sentence) => wrap(sentence, style.width).map(style.paint.quiet));
}
