/**
 * Why a task is or is not due, as a page shows it: words in a few labelled parts, cautions before what is to be done.
 */
import type { Caution, Explanation } from '../../../engine.js';
import { safeText } from '../../../render/safe-text.js';
import { whyParts, type WhyParts } from '../../../render/why-parts.js';
import { cautionList, deference } from './caution-list.js';
import { type Child, element } from './element.js';

/** The words of one explanation: plain data that can be posted between a page and its worker. */
export interface WhyView extends WhyParts {
  readonly task: string;
  readonly cautions: readonly Caution[];
  readonly qualified: boolean;
  readonly procedure: readonly string[];
}

/** Puts an explanation into words. */
export function whyView(explanation: Explanation): WhyView {
  const { id, cautions, qualified, procedure } = explanation.task;
  return { ...whyParts(explanation), task: id, cautions, qualified, procedure: procedure.map(safeText) };
}

/** Shows them. */
export function showWhy(why: WhyView): HTMLElement {
  return element(
    'div',
    { class: 'why' },
    element('p', { class: 'why-headline' }, why.headline),
    ...paragraph(why.others),
    ...why.holds.map((words) => element('p', { class: 'why-hold' }, words)),
    ...paragraph(why.changes),
    evidence(why),
    ...work(why),
  );
}

function paragraph(sentences: readonly string[]): readonly Child[] {
  return sentences.length === 0 ? [] : [element('p', {}, sentences.join(' '))];
}

function evidence(why: WhyView): HTMLElement {
  const entry = (label: string, ...texts: readonly string[]): readonly Child[] =>
    texts.length === 0 ? [] : [element('dt', {}, label), ...texts.map((text) => element('dd', {}, text))];
  return element(
    'dl',
    { class: 'evidence' },
    ...entry('Rule', why.rule),
    ...entry('Reason', ...(why.reason === null ? [] : [why.reason])),
    ...entry('Source', ...(why.source === null ? [] : [why.source])),
    ...entry('Record', ...(why.kept === null ? [] : [why.kept])),
    ...why.numbers.flatMap(({ label, text }) => entry(label, text)),
    ...entry('Unknown', ...why.unknown),
    ...entry('Logbook', ...why.entries),
  );
}

function work({ cautions, qualified, procedure }: WhyView): readonly Child[] {
  if (cautions.length === 0 && procedure.length === 0 && !qualified) return [];
  return [
    deference(),
    cautionList(cautions, qualified),
    procedure.length === 0 ? null : element('ol', { class: 'procedure' }, ...procedure.map((step) => element('li', {}, step))),
  ];
}
