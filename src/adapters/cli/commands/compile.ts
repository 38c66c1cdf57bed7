import { renderDiagnostics } from '../../../render/diagnostics.js';
import type { CommandHost } from '../command-host.js';
import { complain } from '../complain.js';
import { exitCode } from '../exit-code.js';
import { jsonText } from '../json-text.js';
import { openCompiled } from '../open-schedule.js';
import { styleFor } from '../style-for.js';
import { addAnswerOptions, type AnswerOptions } from '../answer-options.js';
import { writeFile } from '../write-file.js';

interface CompileOptions extends AnswerOptions {
  readonly to?: string;
}

const examples = `
The graph is JSON (grammar/rule-graph.schema.json). Wherever a SCHEDULE is asked for, it may stand in its place: the answers are the
same, and come sooner. The same text always gives the same bytes.

Examples:
  duewright compile tractor.due --to tractor.json
  duewright due tractor.json tractor.jsonl`;

/** `duewright compile`: a schedule as the graph that engines run. */
export function addCompile(host: CommandHost): void {
  const command = host.program
    .command('compile')
    .summary('write a schedule as the graph that engines run')
    .description('Compiles a SCHEDULE, with the files that it uses, into one rule graph.')
    .argument('<schedule>', 'the schedule to compile')
    .option('--to <file>', 'the file to write; otherwise the graph is the answer')
    .addHelpText('after', examples);
  addAnswerOptions(command, 'rule-graph.schema.json').action((schedule: string, options: CompileOptions) =>
    runCompile(host, schedule, options),
  );
}

async function runCompile(host: CommandHost, schedule: string, options: CompileOptions): Promise<void> {
  const compiled = await openCompiled(host, schedule);
  if (compiled === undefined) return;
  const { shell, end } = host;
  const { graph, diagnostics, sources } = compiled;
  shell.err(renderDiagnostics(diagnostics, sources, styleFor(shell, options)));
  if (graph === null) {
    complain(shell, `\`${schedule}\` has errors: nothing is written.`);
    end(exitCode.no);
  } else if (options.to === undefined) shell.out(jsonText(graph));
  else {
    const written = writeFile(options.to, jsonText(graph));
    if (written.ok) return;
    complain(shell, written.problem);
    end(exitCode.input);
  }
}
