import type { Compiled } from '../../index.js';
import { hostSha256 } from './host-sha256.js';
import { readText } from './read-text.js';
import { type Parsed, refused, understood } from './parsed.js';
import { scheduleFiles } from './schedule-files.js';

/** Told of each file that the compiler asks for, and of its text; undefined where there is none to be had. */
export type OnText = (name: string, text: string | undefined) => void;

/**
 * Compiles a schedule's file, with the files beside it that it uses. Refused only if the file itself cannot be read; what is
 * wrong in it is in the result's diagnostics.
 *
 * The compiler is loaded here and nowhere else, so that a question to a compiled graph does not wait for it.
 */
export async function compileFile(path: string, onText: OnText = () => undefined): Promise<Parsed<Compiled>> {
  const read = readText(path);
  if (!read.ok) return refused(read.problem);
  const files = scheduleFiles(path);
  const { compile } = await import('../../index.js');
  const textOf = (name: string): string | undefined => {
    const text = name === files.name ? read.value : files.load(name);
    onText(name, text);
    return text;
  };
  const result = compile(files.name, textOf, { sha256: await hostSha256() });
  return understood({ ...result, sources: result.sources.map((source) => ({ ...source, name: files.shown(source.name) })) });
}
