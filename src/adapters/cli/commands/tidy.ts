import { sourceText } from '../../../base/source-text.js';
import { renderDiagnostics } from '../../../render/diagnostics.js';
import type { CommandHost } from '../command-host.js';
import { complain } from '../complain.js';
import { type ExitCode, exitCode } from '../exit-code.js';
import { readText } from '../read-text.js';
import { styleFor, type StyleOptions } from '../style-for.js';
import { writeFile } from '../write-file.js';

interface TidyOptions extends StyleOptions {
  readonly check?: true;
}

const examples = `
Only white space changes: words, numbers and comments stay as they are, in their order. What a file says is compared before it is written.
With - in place of a file, the standard input is laid out to the standard output.

Examples:
  duewright tidy tractor.due
  duewright tidy schedules/*.due --check

With --check it ends with 1 if a file is not laid out so, and names it.`;

/** `duewright tidy`: schedules in the one layout that there is. */
export function addTidy(host: CommandHost): void {
  host.program
    .command('tidy')
    .summary('lay schedules out')
    .description('Writes each SCHEDULE in the one layout that there is.')
    .argument('<schedule...>', 'the files to lay out')
    .option('--check', 'write nothing; name the files that would change')
    .option('--plain', 'neither colour nor signs beyond ASCII')
    .addHelpText('after', examples)
    .action((schedules: string[], options: TidyOptions) => runTidy(host, schedules, options));
}

async function runTidy(host: CommandHost, schedules: readonly string[], options: TidyOptions): Promise<void> {
  const codes: ExitCode[] = [];
  for (const schedule of schedules) codes.push(await tidyOne(host, schedule, options));
  host.end(codes.includes(exitCode.input) ? exitCode.input : codes.includes(exitCode.no) ? exitCode.no : exitCode.fine);
}

async function tidyOne({ shell }: CommandHost, path: string, options: TidyOptions): Promise<ExitCode> {
  const read = readText(path);
  if (!read.ok) {
    complain(shell, read.problem);
    return exitCode.input;
  }
  const { format } = await import('../../../index.js');
  const result = format(read.value);
  if (!('text' in result)) {
    shell.err(renderDiagnostics(result.diagnostics, [sourceText(path, read.value)], styleFor(shell, options)));
    complain(shell, `\`${path}\` cannot be read and stays as it is.`);
    return exitCode.no;
  }
  if (path === '-' && options.check !== true) {
    shell.out(result.text);
    return exitCode.fine;
  }
  if (result.text === read.value) return exitCode.fine;
  if (options.check === true) {
    shell.out(`${path}\n`);
    return exitCode.no;
  }
  const written = writeFile(path, result.text);
  if (!written.ok) complain(shell, written.problem);
  else shell.out(`${path}\n`);
  return written.ok ? exitCode.fine : exitCode.input;
}
