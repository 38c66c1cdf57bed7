import { renderCoverage } from '../../../render/coverage.js';
import { renderExamples } from '../../../render/examples.js';
import { type AnswerOptions, addAnswerOptions } from '../answer-options.js';
import type { CommandHost } from '../command-host.js';
import { exitCode } from '../exit-code.js';
import { jsonText } from '../json-text.js';
import { openCompiled, refuseErrors } from '../open-schedule.js';
import { styleFor } from '../style-for.js';

interface ProveOptions extends AnswerOptions {
  readonly coverage?: true;
}

const examples = `
States, due points and reasons are held against what the engine says; a reason is compared with the part of the rules that decided.

Examples:
  duewright prove tractor.due
  duewright prove tractor.due --coverage

Ends with 1 if an example does not hold.`;

/** `duewright prove`: the worked examples of a schedule, run. */
export function addProve(host: CommandHost): void {
  const command = host.program
    .command('prove')
    .summary('run the worked examples of a schedule')
    .description('Runs the worked examples that a SCHEDULE carries.')
    .argument('<schedule>', 'the schedule, as text')
    .option('--coverage', 'say which rules no example shows, and propose examples for them')
    .addHelpText('after', examples);
  addAnswerOptions(command, 'examples.schema.json').action((schedule: string, options: ProveOptions) => runProve(host, schedule, options));
}

async function runProve(host: CommandHost, schedule: string, options: ProveOptions): Promise<void> {
  const { shell, end } = host;
  const style = styleFor(shell, options);
  const compiled = await openCompiled(host, schedule);
  if (compiled === undefined) return;
  const { graph } = compiled;
  const { runExamples } = await import('../../../index.js');
  const report = runExamples(compiled, { propose: options.coverage === true });
  if (graph === null || report === null)
    return refuseErrors(host, style, compiled, `\`${schedule}\` has errors: its examples cannot be run.`);
  if (options.json === true) shell.out(jsonText(report));
  else {
    shell.out(`${renderExamples(report, graph, style)}\n`);
    if (options.coverage === true) shell.out(`\n${renderCoverage(report, style)}\n`);
  }
  if (!report.holds) end(exitCode.no);
}
