/**
 * Signal words and what they say, and the deference that stands wherever a procedure is shown.
 */
import type { Caution } from '../graph/rule-graph.js';
import { safeText } from './safe-text.js';
import type { Style } from './style.js';
import { labelled } from './wrap.js';

/** Shown with every procedure, before its first step. */
export const DEFERENCE = "The machine's own manual, local rules and qualified mechanics come first.";

/** Danger before warning before caution before notice (ANSI Z535.6); equal ones as written. */
const GRAVITY: readonly Caution['signal'][] = ['danger', 'warning', 'caution', 'notice'];

/** Cautions, the gravest first, as lines with the signal word in the margin. */
export function cautionLines(cautions: readonly Caution[], style: Style, margin = 10): readonly string[] {
  const ordered = [...cautions].sort((a, b) => GRAVITY.indexOf(a.signal) - GRAVITY.indexOf(b.signal));
  return ordered.flatMap(({ signal, text }) =>
    labelled(signal.toUpperCase(), safeText(text), style.width, margin, (label) => style.paint.signal(signal, label)),
  );
}
