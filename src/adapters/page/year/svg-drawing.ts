import { plot } from '@observablehq/plot';
import type { PlotOptions } from '@observablehq/plot';
import { parseHTML } from 'linkedom/worker';
import { safeText } from '../../../render/safe-text.js';

/** What a drawing is called, for those who cannot see it. */
export interface Described {
  /** Unique on its page; a word of small letters. */
  readonly id: string;
  readonly title: string;
  /** What it shows, in a sentence or two. */
  readonly description: string;
}

/** The part of a document object model that is used here: the library draws into it as it would into a browser's. */
interface Element {
  readonly outerHTML: string;
  setAttribute(name: string, value: string): void;
  removeAttribute(name: string): void;
  prepend(...nodes: readonly Element[]): void;
  querySelector(selector: string): Element | null;
  querySelectorAll(selector: string): Iterable<Element>;
  remove(): void;
  textContent: string;
}

interface Sheet {
  createElementNS(space: string, name: string): Element;
}

const SVG = 'http://www.w3.org/2000/svg';

/**
 * Draws marks as SVG text, without a browser. The same marks give the same bytes; what it looks like is the page's style sheet's business.
 */
export function svgDrawing(options: PlotOptions, { id, title, description }: Described): string {
  const sheet = (parseHTML('<!doctype html><html><body></body></html>') as unknown as { readonly document: Sheet }).document;
  const svg = plot({ ...options, document: sheet as never, className: 'drawing' }) as unknown as Element;
  // The library's own style sheet, which the page's replaces.
  svg.querySelector('style')?.remove();
  // It names its groups for scripts; to a screen reader the drawing is one picture.
  for (const group of svg.querySelectorAll('[aria-label]')) group.removeAttribute('aria-label');
  svg.setAttribute('role', 'img');
  svg.setAttribute('preserveAspectRatio', 'xMinYMin meet');
  svg.setAttribute('aria-labelledby', `${id}-title ${id}-description`);
  for (const name of ['font-family', 'font-size', 'fill']) svg.removeAttribute(name);
  svg.prepend(labelled(sheet, 'title', `${id}-title`, title), labelled(sheet, 'desc', `${id}-description`, description));
  return svg.outerHTML;
}

function labelled(sheet: Sheet, name: string, id: string, text: string): Element {
  const element = sheet.createElementNS(SVG, name);
  element.setAttribute('id', id);
  element.textContent = safeText(text);
  return element;
}
