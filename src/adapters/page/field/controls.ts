/// <reference lib="dom" />
/**
 * Controls that a gloved hand can hit: each is at least 48 px high, its whole row answers.
 */
import { type Child, element } from '../view/element.js';

// Ids must differ within the page and mean nothing beyond it.
let made = 0;

/** An id that this page has not used yet. */
function freshId(): string {
  made += 1;
  return `made-${made}`;
}

/** A box to tick, with its words. */
export function tickBox(words: Child, ticked: boolean, act: (on: boolean) => void): HTMLElement {
  const box = element('input', { type: 'checkbox', checked: ticked });
  box.addEventListener('change', () => act(box.checked));
  return element('label', { class: 'tick' }, box, element('span', {}, words));
}

/** A labelled input. */
export function textField(words: string, attributes: Readonly<Record<string, string | number | boolean>>): LabelledInput {
  const id = freshId();
  const input = element('input', { id, autocomplete: 'off', ...attributes });
  return { root: element('div', { class: 'labelled' }, element('label', { for: id }, words), input), input };
}

export interface LabelledInput {
  readonly root: HTMLElement;
  readonly input: HTMLInputElement;
}

/** One of several, by value. The empty value stands for none. */
export function choiceField(words: string, options: readonly (readonly [value: string, words: string])[]): LabelledSelect {
  const id = freshId();
  const select = element('select', { id }, ...options.map(([value, text]) => element('option', { value }, text)));
  return { root: element('div', { class: 'labelled' }, element('label', { for: id }, words), select), select };
}

export interface LabelledSelect {
  readonly root: HTMLElement;
  readonly select: HTMLSelectElement;
}

/** A decimal as people type it, with a point or a comma; `null` where there is none. */
export function decimalOf(text: string): number | null {
  const trimmed = text.trim().replace(',', '.');
  const value = Number(trimmed);
  return trimmed === '' || !Number.isFinite(value) ? null : value;
}
