/**
 * The graph that a schedule's text was last compiled to, kept so that a question about the same text need not compile it again.
 *
 * Law: it is used only if every file that the compiler asked for then still says the same, to the letter, and this is the same build of the command. Kept
 * with it are therefore those texts. Only what compiled without an error is kept; `check` and `compile` never look here.
 */
import { resolve } from 'node:path';
import type { RuleGraph } from '../../engine.js';
import { cacheFolder, keep, readKept } from './kept-files.js';

/** What is written, as JSON. A file that was asked for and was not there is remembered as `null`. */
interface Kept {
  readonly path: string;
  readonly texts: readonly (readonly [name: string, text: string | null])[];
  readonly graph: RuleGraph;
}

/** Says which build this is; `start.ts` gives it to what it runs. Where nothing was bundled there is none, and nothing is kept. */
declare const BUILD: string;

/** The files of a schedule, as they are asked for. */
export type TextOf = (name: string) => string | undefined;

/** The graph that belongs to the texts as they are now; undefined where none is kept. */
export function keptGraph(path: string, textOf: TextOf): RuleGraph | undefined {
  const folder = folderOfThis();
  const bytes = folder === null ? undefined : readKept(folder, nameFor(path));
  if (bytes === undefined) return undefined;
  try {
    const kept = JSON.parse(bytes.toString('utf8')) as Kept;
    const isSame = kept.path === resolve(path) && kept.texts.every(([name, text]) => (textOf(name) ?? null) === text);
    return isSame ? kept.graph : undefined;
  } catch {
    return undefined;
  }
}

/** Keeps a graph with the texts that it came from: all that was asked for while it was compiled. */
export function keepGraph(path: string, texts: Kept['texts'], graph: RuleGraph): void {
  const folder = folderOfThis();
  const kept: Kept = { path: resolve(path), texts, graph };
  if (folder !== null) keep(folder, BUILD, nameFor(path), Buffer.from(JSON.stringify(kept)));
}

function folderOfThis(): string | null {
  return typeof BUILD === 'undefined' ? null : cacheFolder(process.env, process.platform);
}

/** Two paths may come to one name: then the later one takes the place of the earlier. */
function nameFor(path: string): string {
  let hash = 0;
  for (const sign of resolve(path)) hash = (Math.imul(hash, 31) + (sign.codePointAt(0) ?? 0)) >>> 0;
  return `${BUILD}-${hash.toString(16)}.graph`;
}
