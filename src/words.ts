/**
 * The words for answers, in English: what the command says, for software that shows an answer and does not want to write its own sentences.
 *
 * Strings and nothing else; a `Style` says how wide and how dressed. Pieces for a page (`whyParts`, `dueReason` …) come without layout. The words get
 * better from release to release: show them, and go by the data.
 */
export { cautionLines, DEFERENCE } from './render/cautions.js';
export { renderDueList } from './render/due-list.js';
export { dueInWords, dueReason, holdInWords, leftInWords, noticeInWords } from './render/due-row.js';
export { missingSentence, settlingSentence } from './render/missing-sentence.js';
export { renderAhead } from './render/outlook/ahead.js';
export { renderSupplies } from './render/outlook/supplies.js';
export { renderVisits } from './render/outlook/visits.js';
export { renderOuting } from './render/outing.js';
export { stateInWords, verdictInWords } from './render/state-in-words.js';
export { NO_PAINT, plainStyle } from './render/style.js';
export { renderWalkRoundHtml } from './render/walk-round/sheet-html.js';
export { apartWords, heldWords } from './render/walk-round/sheet-words.js';
export { renderWalkRound } from './render/walk-round/sheet-text.js';
export { renderWhy } from './render/why.js';
export { whyParts } from './render/why-parts.js';

export type { DueListOptions } from './render/due-list.js';
export type { Paint, Style } from './render/style.js';
export type { WhyOptions } from './render/why.js';
export type { NumberLine } from './render/number-lines.js';
export type { BesideWalk } from './render/walk-round/sheet-words.js';
export type { WhyParts } from './render/why-parts.js';
export type { Names } from './explain/explanation.js';
