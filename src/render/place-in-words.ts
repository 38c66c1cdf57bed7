import type { Place } from '../explain/explanation.js';
import { safeText } from './safe-text.js';

/** `orchard-tractor.due:42:3`: file, line and column, so that an editor finds it. */
export function placeInWords({ file, line, column }: Place): string {
  return `${safeText(file)}:${line}:${column}`;
}
