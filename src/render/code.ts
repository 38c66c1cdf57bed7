import type { CatalogueEntry } from '../diagnostics/catalogue-entry.js';
import type { Style } from './style.js';
import { wrap } from './wrap.js';

/** What a code of the catalogue means: the text of docs/diagnostics.md for a terminal. */
export function renderCode({ code, severity, title, explanation, wrong, right }: CatalogueEntry, style: Style): string {
  const sample = (text: string): readonly string[] => text.split('\n').map((line) => `    ${line}`.trimEnd());
  return [
    style.paint.strong(`${code} (${severity}): ${title}`),
    '',
    ...wrap(explanation, style.width),
    '',
    'Draws it:',
    ...sample(wrong),
    'Put right:',
    ...sample(right),
  ].join('\n');
}
