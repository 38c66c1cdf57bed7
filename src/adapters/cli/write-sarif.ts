import { isAbsolute, relative, resolve, sep } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Compiled } from '../../index.js';
import type { CommandHost } from './command-host.js';
import { complain } from './complain.js';
import { exitCode } from './exit-code.js';
import { jsonText } from './json-text.js';
import { writeFile } from './write-file.js';

/** Writes the diagnostics of checked schedules as SARIF; `-` is the standard output. Says so and ends the command where that cannot be done. */
export async function writeSarif({ program, shell, end }: CommandHost, path: string, compiled: readonly Compiled[]): Promise<void> {
  const { sarifLog } = await import('../../index.js');
  const checked = compiled.map(({ diagnostics, sources }) => ({
    diagnostics,
    sources: sources.map((source) => ({ ...source, name: fromHere(source.name) })),
  }));
  const text = jsonText(sarifLog(checked, program.version() ?? ''));
  if (path === '-') {
    shell.out(text);
    return;
  }
  const written = writeFile(path, text);
  if (written.ok) return;
  complain(shell, written.problem);
  end(exitCode.input);
}

/** A path from the current folder, with slashes; a file that lies elsewhere is named by its whole URI. */
function fromHere(name: string): string {
  const path = relative('', name);
  const isBelow = path !== '' && path !== '..' && !path.startsWith(`..${sep}`) && !isAbsolute(path);
  return isBelow ? path.replaceAll(sep, '/') : pathToFileURL(resolve(name)).href;
}
