/**
 * A walk-round as text for a terminal or a notebook.
 */
import type { WalkRound, WalkRoundLine } from '../../access/walk-round.js';
import type { RuleGraph } from '../../graph/rule-graph.js';
import { cautionLines, DEFERENCE } from '../cautions.js';
import { safeText } from '../safe-text.js';
import type { Style } from '../style.js';
import { wrap } from '../wrap.js';
import { secondsInWords } from './seconds-in-words.js';
import { type BesideWalk, openWords, sheetWords, supplyWords, timeWords } from './sheet-words.js';
import { whySentence } from './why-sentence.js';

const INDENT = '        ';
/** Cautions stand as far to the left as the line that they open, and apart from the line before. */
const AHEAD = '    ';

/** The whole sheet, without a line end at its end. Cautions stand before the line that they belong to. */
export function renderWalkRound(walk: WalkRound, graph: RuleGraph, style: Style, { held = [], apart = [] }: BesideWalk = {}): string {
  const words = sheetWords(walk, graph);
  const say = (text: string, indent = ''): readonly string[] =>
    wrap(safeText(text), style.width - indent.length).map((line) => indent + line);
  const head = [
    style.paint.strong(safeText(words.title)),
    ...held.flatMap((text) => say(`! ${text}`)),
    ...say(words.summary),
    ...say(words.proof),
    ...say(`${words.starts} ${words.ends}`),
    ...[words.tools, words.supplies].flatMap((text) => (text === null ? [] : say(text))),
    ...[...words.warnings, ...words.leftOut].flatMap((text) => say(`! ${text}`)),
    ...(walk.qualified ? say('Some of this calls for a qualified mechanic.') : []),
    ...apart.flatMap((text) => say(text)),
    ...say(DEFERENCE),
  ];
  const lines = walk.lines.flatMap((line) => [
    ...(line.number === walk.backFrom ? ['', style.paint.strong('Putting the machine back')] : []),
    ...lineText(line, walk, graph, style, say),
  ]);
  return [...head, ...(lines[0] === '' ? [] : ['']), ...lines].join('\n').trimEnd();
}

type Say = (text: string, indent?: string) => readonly string[];

function lineText(line: WalkRoundLine, walk: WalkRound, graph: RuleGraph, style: Style, say: Say): readonly string[] {
  const number = String(line.number).padStart(3);
  const title = say(`${line.title} (${timeWords(line)}, ${secondsInWords(line.total)} so far)`, INDENT);
  const first = `[ ] ${number} ${(title[0] ?? '').trimStart()}`;
  return [
    ...aheadOf(line, style, say),
    style.paint.strong(first),
    ...title.slice(1),
    ...details(line, walk, graph).flatMap((text) => say(text, INDENT).map(style.paint.quiet)),
  ];
}

/** What has to be read before the line is begun, under an empty line: it belongs to what follows. */
function aheadOf(line: WalkRoundLine, style: Style, say: Say): readonly string[] {
  const cautions = cautionLines(line.cautions, { ...style, width: style.width - AHEAD.length }).map((each) => AHEAD + each);
  const qualified = line.qualified ? say('For a qualified mechanic.', AHEAD) : [];
  const ahead = [...cautions, ...qualified];
  return ahead.length === 0 ? [] : ['', ...ahead];
}

/** What stands below a line. */
export function details(line: WalkRoundLine, walk: WalkRound, graph: RuleGraph): readonly string[] {
  const open = openWords(line);
  const ifStopped = open === '' || line.kind === 'walk' ? [] : [`If you stop here: ${open}.`];
  if (line.kind === 'walk') return [];
  const tools = line.tools.length === 0 ? [] : [`With: ${line.tools.join(', ')}.`];
  if (line.kind === 'step')
    return [whySentence(line, walk, graph), ...line.procedure, ...tools, ...(line.reason === null ? [] : [line.reason]), ...ifStopped];
  const titles = line.covers.map((task) => graph.tasks.find((each) => each.id === task)?.title ?? task);
  return [
    ...line.procedure,
    ...line.torques.map(({ what, written }) => `Tighten ${what} to ${written}.`),
    ...(line.uses.length === 0 ? [] : [`Takes ${line.uses.map((each) => supplyWords(each, graph)).join(', ')}.`]),
    ...tools,
    ...(titles.length === 0 ? [] : [`Counts as done with it: ${titles.join('; ')}.`]),
    ...(line.broughtBy === null
      ? []
      : [`Comes along because "${graph.tasks.find((task) => task.id === line.broughtBy)?.title ?? line.broughtBy}" must follow it.`]),
    ...ifStopped,
  ];
}
