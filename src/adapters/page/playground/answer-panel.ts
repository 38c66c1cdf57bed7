/// <reference lib="dom" />
/**
 * What is due, as a list to choose from: states told by word and mark, and how much of its limit each task has used up.
 */
import { element } from '../view/element.js';
import type { AnswerView, DueGroup, DueRow } from '../view/answer-view.js';
import { counted } from '../../../render/count-in-words.js';

/** Owns the list; choosing a task is told to the page. */
export class AnswerPanel {
  private chosen: string | null = null;
  private readonly folded = new Set<string>(['clear', 'resting']);

  constructor(
    private readonly verdict: HTMLElement,
    private readonly list: HTMLElement,
    private readonly choose: (task: string) => void,
  ) {}

  show(answer: AnswerView, behind: boolean): void {
    const focused = document.activeElement?.closest<HTMLElement>('[data-task]')?.dataset['task'];
    this.verdict.className = `verdict ${answer.verdict}`;
    this.verdict.replaceChildren(
      element('strong', { class: 'verdict-words' }, `${answer.verdictWords}.`),
      ...[...answer.holds, ...answer.notices].map((text) => element('span', { class: 'verdict-reason' }, text)),
      ...(behind ? [element('span', { class: 'behind' }, 'The text has errors: this is by its last version without.')] : []),
      ...(answer.setAside.length === 0
        ? []
        : [
            element(
              'span',
              { class: 'verdict-reason quiet' },
              `${counted(answer.setAside.length, 'entry', 'entries')} of the logbook set aside: ${answer.setAside.join('; ')}`,
            ),
          ]),
    );
    this.list.replaceChildren(...answer.groups.map((group) => this.group(group)));
    if (focused !== undefined) this.list.querySelector<HTMLElement>(`[data-task="${CSS.escape(focused)}"]`)?.focus();
  }

  none(): void {
    this.verdict.className = 'verdict';
    this.verdict.replaceChildren(element('strong', { class: 'verdict-words' }, 'No answer yet: the text has errors.'));
    this.list.replaceChildren();
  }

  mark(task: string): void {
    this.chosen = task;
    for (const row of this.list.querySelectorAll<HTMLElement>('[data-task]')) {
      row.setAttribute('aria-pressed', String(row.dataset['task'] === task));
    }
  }

  private group({ state, word, mark, rows }: DueGroup): HTMLElement {
    const details = element(
      'details',
      { class: `group ${state}`, open: !this.folded.has(state) },
      element(
        'summary',
        {},
        element('span', { class: 'mark', 'aria-hidden': 'true' }, mark),
        `${word} `,
        element('span', { class: 'count' }, String(rows.length)),
      ),
      element('ul', {}, ...rows.map((row) => element('li', {}, this.row(row)))),
    );
    details.addEventListener('toggle', () => {
      if (details.open) this.folded.delete(state);
      else this.folded.add(state);
    });
    return details;
  }

  private row({ task, title, left, reason, used }: DueRow): HTMLElement {
    const row = element(
      'button',
      { type: 'button', class: 'row', 'data-task': task, 'aria-pressed': String(task === this.chosen) },
      element('span', { class: 'row-title' }, title),
      element('span', { class: 'row-left' }, left),
      element('span', { class: 'row-reason' }, reason),
      used === null ? null : usedBar(used),
    );
    row.addEventListener('click', () => this.choose(task));
    return row;
  }
}

/** A rule with a notch at the due point, filled as far as the limit is used up. The words beside it say the same. */
function usedBar(used: number): HTMLElement {
  const bar = element('span', { class: used >= 1 ? 'used over' : 'used', 'aria-hidden': 'true' }, element('span', { class: 'used-fill' }));
  bar.style.setProperty('--used', String(Math.max(0, Math.min(1.25, used))));
  return bar;
}
