/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
import { safeSigns } from '../../../render/safe-text.js';

/** What may stand inside an element: elements, text, and nothing. */
export type Child = Node | string | null;

/** Attributes by name; `true` is an attribute without a value, `false` and `null` none at all. */
export type Attributes = Readonly<Record<string, string | number | boolean | null>>;

/**
 * Makes an element. Text goes in as text, never as markup, so that nothing from a schedule or a logbook can become more than words;
 * nor do its words run the wrong way round or hold signs that nobody sees.
 *
 * @example element('p', { class: 'why' }, 'The 100 h of engine are up.')
 */
export function element<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Attributes = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[K] {
  const made = document.createElement(tag);
  setAttributes(made, attributes);
  made.append(...children.filter((child) => child !== null).map((child) => (typeof child === 'string' ? safeSigns(child) : child)));
  return made;
}

/** A button that does something; never one that submits. */
export function button(words: Child, act: () => void, attributes: Attributes = {}): HTMLButtonElement {
  const made = element('button', { type: 'button', ...attributes }, words);
  made.addEventListener('click', act);
  return made;
}

/** Attributes that a person reads or hears. Others may hold ids, which stay as they are. */
const SPOKEN: ReadonlySet<string> = new Set(['aria-label', 'title', 'placeholder', 'label', 'alt']);

/** Sets and removes attributes as {@link Attributes} says. */
function setAttributes(target: Element, attributes: Attributes): void {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === null || value === false) target.removeAttribute(name);
    else target.setAttribute(name, value === true ? '' : SPOKEN.has(name) ? safeSigns(String(value)) : String(value));
  }
}

/** The element with this id, of this kind. @throws Error where the page has none: a fault of the page. */
export function byId<T extends HTMLElement>(id: string, kind: new () => T): T {
  const found = document.getElementById(id);
  if (found instanceof kind) return found;
  throw new Error(`the page has no #${id}`);
}
