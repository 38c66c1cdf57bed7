/// <reference lib="dom" />
/**
 * What is due before the engine is started, and why: the verdict first, then the tasks, the gravest first.
 */
import type { Assessment, RuleGraph } from '../../../engine.js';
import { explain, namesOf } from '../../../engine.js';
import { counted } from '../../../render/count-in-words.js';
import { notNotedSentence } from '../../../render/not-noted-sentence.js';
import { type AnswerView, answerView, type DueGroup, type DueRow } from '../view/answer-view.js';
import { deference } from '../view/caution-list.js';
import { button, element } from '../view/element.js';
import { showWhy, whyView } from '../view/why-view.js';
import type { Asked, Field } from './field.js';
import type { Screen } from './screen.js';
import { planInWords, workPlanForm } from './work-plan.js';

/** @param writeDone goes to where work done is written down, with this task ticked. */
export function dueScreen(field: Field, writeDone: (task: string) => void): Screen {
  const answer = element('div', {});
  const planWords = element('span', {});
  const form = element('div', {});
  const plan = element('details', { class: 'plan' }, element('summary', {}, planWords), form);
  const open = new Set<string>();
  const refresh = (): void => {
    planWords.textContent = planInWords(field.plan, field);
    const asked = field.ask();
    const { assessment } = asked;
    const shown = showAnswer(answerView(field.graph, assessment), (row) => dueRow(field, assessment, row, open, writeDone));
    answer.replaceChildren(...shown, ...notNoted(field.graph, asked));
  };
  // A change of the plan must not rebuild the form under the finger.
  form.append(workPlanForm(field));
  return { id: 'due', title: 'What is due', tab: 'Due', body: [deference(), plan, answer], refresh };
}

function showAnswer(view: AnswerView, row: (row: DueRow) => HTMLElement): readonly HTMLElement[] {
  return [
    element('p', { class: `verdict ${view.verdict}`, role: 'status' }, `${view.verdictWords}.`),
    ...list('reasons', view.holds),
    ...list('reasons', view.notices),
    ...view.groups.map((group) => showGroup(group, row)),
    ...setAside(view.setAside),
  ];
}

function notNoted(graph: RuleGraph, { timeline, assessment }: Asked): readonly HTMLElement[] {
  const sentence = notNotedSentence(timeline, graph, assessment, namesOf(graph));
  return sentence === '' ? [] : [element('p', { class: 'note' }, sentence)];
}

function list(kind: string, texts: readonly string[]): readonly HTMLElement[] {
  return texts.length === 0 ? [] : [element('ul', { class: kind }, ...texts.map((text) => element('li', {}, text)))];
}

/** What is clear or rests is counted, and shown when asked for. */
function showGroup({ state, word, mark, rows }: DueGroup, row: (row: DueRow) => HTMLElement): HTMLElement {
  const title = [
    element('span', { class: 'mark', 'aria-hidden': 'true' }, mark),
    ` ${word} `,
    element('span', { class: 'count' }, `${rows.length}`),
  ];
  const items = element('ul', { class: 'rows' }, ...rows.map(row));
  if (state !== 'clear' && state !== 'resting') return element('section', { class: `group ${state}` }, element('h3', {}, ...title), items);
  return element('details', { class: `group quiet ${state}` }, element('summary', {}, ...title), items);
}

function dueRow(field: Field, assessment: Assessment, row: DueRow, open: Set<string>, writeDone: (task: string) => void): HTMLElement {
  // Of an occasion the due point is the moment itself, which says nothing.
  const numbers = row.left === '' ? '' : [row.left, row.due].filter((words) => words !== '').join(' · ');
  const why = element('div', {});
  const details = element(
    'details',
    {},
    element(
      'summary',
      {},
      element('span', { class: 'row-title' }, row.title),
      numbers === '' ? null : element('span', { class: 'row-numbers' }, numbers),
      element('span', { class: 'row-reason' }, row.reason),
    ),
    why,
  );
  const fill = (): void => {
    if (why.childElementCount > 0) return;
    why.append(
      showWhy(whyView(explain(field.graph, assessment, field.entries, row.task))),
      button('I have done it: write it down', () => writeDone(row.task), { class: 'wide' }),
    );
  };
  details.addEventListener('toggle', () => {
    if (details.open) open.add(row.task);
    else open.delete(row.task);
    if (details.open) fill();
  });
  if (open.has(row.task)) {
    fill();
    details.open = true;
  }
  return element('li', {}, details);
}

function setAside(texts: readonly string[]): readonly HTMLElement[] {
  if (texts.length === 0) return [];
  return [
    element(
      'details',
      { class: 'group quiet' },
      element('summary', {}, `${counted(texts.length, 'entry', 'entries')} of the logbook set aside, kept but not used`),
      ...list('reasons', texts),
    ),
  ];
}
