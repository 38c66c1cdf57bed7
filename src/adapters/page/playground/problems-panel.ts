/// <reference lib="dom" />
/**
 * What is wrong, as a list: each problem leads to its place, each fix can be applied from here.
 */
import { counted } from '../../../render/count-in-words.js';
import { button, element } from '../view/element.js';
import type { Editor } from './editor.js';
import type { Problem } from './told.js';

const MARKS: Readonly<Record<Problem['severity'], string>> = { error: '✕', warning: '△', note: '–' };
const MOST = 50;

export function showProblems(root: HTMLElement, status: HTMLElement, problems: readonly Problem[], editor: Editor): void {
  const errors = problems.filter(({ severity }) => severity === 'error').length;
  const others = problems.length - errors;
  const words = [errors === 0 ? '' : counted(errors, 'error'), others === 0 ? '' : counted(others, 'remark')].filter((each) => each !== '');
  const said = words.length === 0 ? 'No problems' : words.join(', ');
  if (status.textContent !== said) status.textContent = said;
  status.dataset['worst'] = errors > 0 ? 'error' : others > 0 ? 'warning' : 'none';
  root.replaceChildren(...problems.slice(0, MOST).map((problem) => item(problem, editor)));
  if (problems.length > MOST) root.append(element('li', {}, `and ${problems.length - MOST} more`));
}

function item(problem: Problem, editor: Editor): HTMLElement {
  const { severity, path, line, column, message, help, fixes } = problem;
  const words = element(
    'button',
    { type: 'button', class: 'problem' },
    element('span', { class: 'problem-mark', 'aria-hidden': 'true' }, MARKS[severity]),
    element(
      'span',
      {},
      element('strong', {}, severity),
      ` ${path}:${line}:${column} `,
      message,
      help === '' ? null : element('em', {}, ` ${help}`),
    ),
  );
  words.addEventListener('click', () => editor.goTo(problem));
  const offered = fixes.map(({ title, edits }) => button(title, () => editor.apply(edits), { class: 'fix' }));
  return element('li', { class: severity }, words, ...offered);
}
