/**
 * The door of this folder: a schedule compiled to its rule graph.
 */
import { check, type Checked } from '../check/check.js';
import type { Loader } from '../check/load/shelf.js';
import { accessCheck } from './access-check.js';
import { everyMaker } from './every-maker.js';
import { graphFrom, type Compiled, type CompileOptions } from './graph-of.js';

/**
 * Compiles the schedule at `path`, with all that it uses.
 *
 * Pure: files come from `load`, which is asked for `path` and for nothing but paths below the folders of the files that name them. The same text
 * gives the same bytes and the same fingerprint. A mistake in the schedule is a diagnostic; nothing is thrown.
 *
 * @example
 * const { graph, diagnostics } = compile('tarn-55.due', (path) => files.get(path));
 */
export function compile(path: string, load: Loader, options: CompileOptions = {}): Compiled {
  return compileChecked(check(path, load, options), options);
}

/**
 * The rest of {@link compile}, for whoever has checked the files already: an editor tells what is wrong first, and goes on from there.
 *
 * @example compileChecked(live.check('tarn-55.due', load)).graph
 */
export function compileChecked(checked: Checked, options: CompileOptions = {}): Compiled {
  return graphFrom(checked, everyMaker, [accessCheck], options);
}
