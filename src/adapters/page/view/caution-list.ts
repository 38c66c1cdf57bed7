/**
 * Signal words (ANSI Z535.6) and what they say, the gravest first, and the deference that stands before every procedure.
 */
import type { Caution } from '../../../engine.js';
import { DEFERENCE } from '../../../render/cautions.js';
import { safeText } from '../../../render/safe-text.js';
import { element } from './element.js';

const GRAVITY: readonly Caution['signal'][] = ['danger', 'warning', 'caution', 'notice'];

/** The cautions of one line; `null` where there are none. */
export function cautionList(cautions: readonly Caution[], qualified = false): HTMLElement | null {
  if (cautions.length === 0 && !qualified) return null;
  const ordered = [...cautions].sort((a, b) => GRAVITY.indexOf(a.signal) - GRAVITY.indexOf(b.signal));
  return element(
    'ul',
    { class: 'cautions' },
    ...ordered.map(({ signal, text }) =>
      element('li', { class: `caution ${signal}` }, element('strong', {}, signal.toUpperCase()), ' ', safeText(text)),
    ),
    qualified
      ? element('li', { class: 'caution mechanic' }, element('strong', {}, 'MECHANIC'), ' This calls for a qualified mechanic.')
      : null,
  );
}

/** The machine's own manual comes first. */
export function deference(): HTMLElement {
  return element('p', { class: 'deference' }, DEFERENCE);
}
