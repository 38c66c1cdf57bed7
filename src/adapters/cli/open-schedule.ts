import { readRuleGraph, type RuleGraph } from '../../engine.js';
import type { CommandHost } from './command-host.js';
import { compileFile } from './compile-file.js';
import { renderDiagnostics } from '../../render/diagnostics.js';
import { complain } from './complain.js';
import { exitCode } from './exit-code.js';
import { readText } from './read-text.js';
import type { Style } from '../../render/style.js';
import type { Compiled } from '../../index.js';

/**
 * Opens a SCHEDULE argument: a text is compiled, a compiled graph (`.json`) is read. Where that fails it says so, ends the
 * command and gives undefined.
 */
export async function openSchedule(host: CommandHost, style: Style, path: string): Promise<RuleGraph | undefined> {
  return path.endsWith('.json') ? openGraph(host, path) : openText(host, style, path);
}

async function openGraph({ shell, end }: CommandHost, path: string): Promise<RuleGraph | undefined> {
  const { createHash } = await import('node:crypto');
  const text = readText(path);
  const graph = text.ok ? readRuleGraph(text.value, (json) => createHash('sha256').update(json).digest('hex')) : undefined;
  if (graph?.ok === true) return graph.graph;
  complain(shell, text.ok ? `\`${path}\` is not a compiled schedule that can be used: ${graph?.problem ?? ''}.` : text.problem);
  end(exitCode.input);
  return undefined;
}

async function openText(host: CommandHost, style: Style, path: string): Promise<RuleGraph | undefined> {
  const compiled = await openCompiled(host, path);
  if (compiled === undefined) return undefined;
  if (compiled.graph === null) refuseErrors(host, style, compiled, `\`${path}\` has errors and cannot be used until they are put right.`);
  return compiled.graph ?? undefined;
}

/** Compiles a SCHEDULE's text, errors in it or not. Where the file cannot be read it says so, ends the command and gives undefined. */
export async function openCompiled({ shell, end }: CommandHost, path: string): Promise<Compiled | undefined> {
  const compiled = await compileFile(path);
  if (compiled.ok) return compiled.value;
  complain(shell, compiled.problem);
  end(exitCode.input);
  return undefined;
}

/** Ends a command that cannot go on with a schedule that has errors: tells those, and why that is the end. */
export function refuseErrors({ shell, end }: CommandHost, style: Style, { diagnostics, sources }: Compiled, why: string): void {
  const errors = diagnostics.filter(({ severity }) => severity === 'error');
  shell.err(renderDiagnostics(errors, sources, style));
  complain(shell, why);
  end(exitCode.input);
}
