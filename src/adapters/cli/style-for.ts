import type { Style } from '../../render/style.js';
import { paintFor } from './paint.js';
import type { Shell } from './shell.js';

/** How the answer is to look, as asked for on the command line. */
export interface StyleOptions {
  readonly width?: number;
  readonly plain?: true;
}

/** For a file or a pipe: wide enough for a table, narrow enough to read. */
const pipeWidth = 100;
const narrowest = 40;

/** How text looks where it goes to. Plain means neither colour nor anything beyond ASCII. */
export function styleFor(shell: Shell, options: StyleOptions = {}): Style {
  const plain = options.plain === true;
  return {
    width: Math.max(narrowest, options.width ?? shell.columns ?? pipeWidth),
    unicode: !plain && speaksUnicode(shell.env),
    paint: paintFor(!plain && wantsColour(shell)),
  };
}

/**
 * Colour on a terminal, unless `NO_COLOR` (https://no-color.org) or a dumb terminal says otherwise; `FORCE_COLOR` turns it on
 * everywhere (and off with 0). An empty variable is as good as none, and `NO_COLOR` has the last word.
 */
export function wantsColour({ env, columns }: Shell): boolean {
  if ((env['NO_COLOR'] ?? '') !== '') return false;
  const force = env['FORCE_COLOR'] ?? '';
  if (force !== '') return force !== '0' && force !== 'false';
  return columns !== undefined && env['TERM'] !== 'dumb';
}

/** POSIX: the first of these that is set names the locale. None at all is what editors and services start us with: UTF-8 by now. */
function speaksUnicode(env: Shell['env']): boolean {
  const locale = [env['LC_ALL'], env['LC_CTYPE'], env['LANG']].find((value) => value !== undefined && value !== '');
  return locale === undefined || /utf-?8/i.test(locale);
}
