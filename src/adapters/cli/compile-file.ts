import type { Compiled } from '../../index.js';
import { readText } from './read-text.js';
import { type Parsed, refused, understood } from './parsed.js';
import { scheduleFiles } from './schedule-files.js';

/**
 * Compiles a schedule's file, with the files beside it that it uses. Refused only if the file itself cannot be read; what is
 * wrong in it is in the result's diagnostics.
 *
 * The compiler is loaded here and nowhere else, so that a question to a compiled graph does not wait for it.
 */
export async function compileFile(path: string): Promise<Parsed<Compiled>> {
  const read = readText(path);
  if (!read.ok) return refused(read.problem);
  const files = scheduleFiles(path);
  const { compile } = await import('../../index.js');
  const { createHash } = await import('node:crypto');
  const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex');
  const result = compile(files.name, (name) => (name === files.name ? read.value : files.load(name)), { sha256 });
  return understood({ ...result, sources: result.sources.map((source) => ({ ...source, name: files.shown(source.name) })) });
}
