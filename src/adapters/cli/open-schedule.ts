import { readRuleGraph, type RuleGraph } from '../../engine.js';
import type { CommandHost } from './command-host.js';
import { compileFile, type OnText } from './compile-file.js';
import { renderDiagnostics } from '../../render/diagnostics.js';
import { complain } from './complain.js';
import { exitCode } from './exit-code.js';
import { hostSha256 } from './host-sha256.js';
import { keepGraph, keptGraph, type TextOf } from './kept-graph.js';
import { readText } from './read-text.js';
import { scheduleFiles } from './schedule-files.js';
import type { Style } from '../../render/style.js';
import type { Compiled } from '../../index.js';

/** From so many characters on Node's own hashing is worth the time that it takes to load. */
const MUCH = 50_000;

/**
 * Opens a SCHEDULE argument: a text is compiled, a compiled graph (`.json`) is read. Where that fails it says so, ends the
 * command and gives undefined.
 */
export async function openSchedule(host: CommandHost, style: Style, path: string): Promise<RuleGraph | undefined> {
  return path.endsWith('.json') ? openGraph(host, path) : openText(host, style, path);
}

async function openGraph({ shell, end }: CommandHost, path: string): Promise<RuleGraph | undefined> {
  const text = readText(path);
  const graph = text.ok ? readRuleGraph(text.value, text.value.length > MUCH ? await hostSha256() : undefined) : undefined;
  if (graph?.ok === true) return graph.graph;
  complain(shell, text.ok ? `\`${path}\` is not a compiled schedule that can be used: ${graph?.problem ?? ''}.` : text.problem);
  end(exitCode.input);
  return undefined;
}

async function openText(host: CommandHost, style: Style, path: string): Promise<RuleGraph | undefined> {
  const kept = path === '-' ? undefined : keptGraph(path, textsOf(path));
  if (kept !== undefined) return kept;
  const texts = new Map<string, string | null>();
  const compiled = await openCompiled(host, path, (name, text) => texts.set(name, text ?? null));
  if (compiled === undefined) return undefined;
  if (compiled.graph === null) refuseErrors(host, style, compiled, `\`${path}\` has errors and cannot be used until they are put right.`);
  else if (path !== '-') keepGraph(path, [...texts], compiled.graph);
  return compiled.graph ?? undefined;
}

/** Compiles a SCHEDULE's text, errors in it or not. Where the file cannot be read it says so, ends the command and gives undefined. */
export async function openCompiled({ shell, end }: CommandHost, path: string, onText?: OnText): Promise<Compiled | undefined> {
  const compiled = await compileFile(path, onText);
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

/** The files of a schedule as the compiler would be given them. */
function textsOf(path: string): TextOf {
  const files = scheduleFiles(path);
  return (name) => {
    if (name !== files.name) return files.load(name);
    const read = readText(path);
    return read.ok ? read.value : undefined;
  };
}
