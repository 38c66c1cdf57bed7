/**
 * A walk-round as one page of HTML that needs nothing else, prints on a sheet or two, and can be ticked off on a screen or on paper.
 */
import type { WalkRound, WalkRoundLine } from '../../access/walk-round.js';
import type { RuleGraph } from '../../graph/rule-graph.js';
import { DEFERENCE } from '../cautions.js';
import { escapeHtml } from '../escape-html.js';
import { passageSvg } from './passage-svg.js';
import { secondsInWords } from './seconds-in-words.js';
import { SHEET_CSS } from './sheet-css.js';
import { details } from './sheet-text.js';
import { type BesideWalk, sheetWords, timeWords } from './sheet-words.js';

/** A whole document. Everything that comes from the schedule is escaped. */
export function renderWalkRoundHtml(walk: WalkRound, graph: RuleGraph, { held = [], apart = [] }: BesideWalk = {}): string {
  const words = sheetWords(walk, graph);
  const forward = walk.lines.filter((line) => line.number < walk.backFrom);
  const back = walk.lines.filter((line) => line.number >= walk.backFrom);
  const paragraphs = (texts: readonly (string | null)[]): string =>
    texts.flatMap((text) => (text === null ? [] : [`<p>${escapeHtml(text)}</p>`])).join('');
  const first = [
    ...held,
    DEFERENCE,
    walk.qualified ? 'Some of this calls for a qualified mechanic.' : null,
    'Read the words above a line before you do it.',
    ...words.warnings,
    ...words.leftOut,
  ];
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width,initial-scale=1">
<title>${escapeHtml(`Walk-round: ${words.title}`)}</title>
<style>${SHEET_CSS}</style>
</head>
<body>
<main>
<h1>${escapeHtml(`Walk-round: ${words.title}`)}</h1>
<div class="first">${paragraphs(first)}</div>
<div class="facts">${paragraphs([`${words.summary} ${words.proof}`, `${words.starts} ${words.ends}`, words.tools, words.supplies, ...apart])}</div>
${passageSvg(walk, graph)}
${forward.length === 0 ? '' : section('In this order', forward, walk, graph)}
${back.length === 0 ? '' : section('Putting the machine back', back, walk, graph)}
</main>
</body>
</html>
`;
}

function section(title: string, lines: readonly WalkRoundLine[], walk: WalkRound, graph: RuleGraph): string {
  return `<h2>${title}</h2>\n<ol>\n${lines.map((line) => item(line, walk, graph)).join('\n')}\n</ol>`;
}

const GRAVITY = ['danger', 'warning', 'caution', 'notice'];

function item(line: WalkRoundLine, walk: WalkRound, graph: RuleGraph): string {
  const cautions = [...line.cautions]
    .sort((a, b) => GRAVITY.indexOf(a.signal) - GRAVITY.indexOf(b.signal))
    .map(({ signal, text }) => `<span class="caution ${signal}"><b>${signal.toUpperCase()}</b>${escapeHtml(text)}</span>`);
  if (line.qualified) cautions.push('<span class="caution"><b>MECHANIC</b>For a qualified mechanic.</span>');
  const more = details(line, walk, graph).filter((text) => text !== '');
  const id = `line-${line.number}`;
  return [
    `<li class="${line.kind}">`,
    cautions.length === 0 ? '' : `<span class="cautions">${cautions.join('')}</span>`,
    `<input type="checkbox" id="${id}"><span class="no">${line.number}</span>`,
    `<label for="${id}">${escapeHtml(line.title)}</label>`,
    `<span class="time">${timeWords(line)} <small>${secondsInWords(line.total)}</small></span>`,
    more.length === 0
      ? ''
      : `<span class="more">${more.map((text) => (text.startsWith('If you stop here') ? `<span class="open">${escapeHtml(text)}</span>` : escapeHtml(text))).join(' ')}</span>`,
    '</li>',
  ].join('');
}
