import pc from 'picocolors';
import type { Paint } from '../../render/style.js';
import { NO_PAINT } from '../../render/style.js';

/**
 * Dresses words for a terminal. Colour never says anything that the words do not say as well.
 *
 * Signal words wear the colours of ANSI Z535.6 as near as a terminal has them: red, orange (the dark yellow), yellow, blue.
 */
export function paintFor(colour: boolean): Paint {
  if (!colour) return NO_PAINT;
  const { bold, dim, magenta, cyan, white, black, bgRed, bgYellowBright, bgYellow, bgBlue } = pc.createColors(true);
  const states: Readonly<Record<Parameters<Paint['state']>[0], (text: string) => string>> = {
    overdue: (text) => bold(magenta(text)),
    due: bold,
    unrecorded: cyan,
    unknown: cyan,
    'coming-up': (text) => text,
    clear: dim,
    resting: dim,
  };
  const signals: Readonly<Record<Parameters<Paint['signal']>[0], (text: string) => string>> = {
    danger: (text) => bgRed(white(bold(text))),
    warning: (text) => bgYellow(black(bold(text))),
    caution: (text) => bgYellowBright(black(text)),
    notice: (text) => bgBlue(white(text)),
  };
  return { strong: bold, quiet: dim, state: (state, text) => states[state](text), signal: (signal, text) => signals[signal](text) };
}
