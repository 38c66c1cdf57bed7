import type { CommandHost } from '../command-host.js';
import { type CheckReport, checkReport } from '../check-report.js';
import { exitCode } from '../exit-code.js';
import { jsonText } from '../json-text.js';
import { openCompiled } from '../open-schedule.js';
import { counted } from '../../../render/count-in-words.js';
import { renderDiagnostics } from '../../../render/diagnostics.js';
import type { Style } from '../../../render/style.js';
import { styleFor } from '../style-for.js';
import { addAnswerOptions, type AnswerOptions } from '../answer-options.js';
import { writeSarif } from '../write-sarif.js';
import type { Compiled } from '../../../index.js';

interface CheckOptions extends AnswerOptions {
  readonly sarif?: string;
}

/** A schedule that could be read, and what is wrong in it. */
interface CheckedSchedule {
  readonly report: CheckReport;
  readonly compiled: Compiled;
}

const examples = `
Examples:
  duewright check tractor.due
  duewright check schedules/*.due --json
  duewright check schedules/*.due --sarif check.sarif

Ends with 1 if a schedule has errors; warnings and notes do not stand in the way.`;

/** `duewright check`: what is wrong in a schedule, where, and what to do about it. */
export function addCheck(host: CommandHost): void {
  const command = host.program
    .command('check')
    .summary('say what is wrong in a schedule')
    .description('Reads each SCHEDULE and says what is wrong in it, where, and what to do.')
    .argument('<schedule...>', 'schedules to check')
    .option('--sarif <file>', 'also write what is wrong as SARIF 2.1.0, with paths from the current folder')
    .addHelpText('after', examples);
  addAnswerOptions(command, 'check-report.schema.json').action((schedules: string[], options: CheckOptions) =>
    runCheck(host, schedules, options),
  );
}

async function runCheck(host: CommandHost, schedules: readonly string[], options: CheckOptions): Promise<void> {
  const style = styleFor(host.shell, options);
  const checked: CheckedSchedule[] = [];
  for (const schedule of schedules) {
    const one = await checkOne(host, style, schedule, options.json === true);
    if (one !== undefined) checked.push(one);
  }
  const reports = checked.map(({ report }) => report);
  if (options.json === true) host.shell.out(jsonText(reports));
  if (reports.some(({ errors }) => errors > 0)) host.end(exitCode.no);
  if (reports.length < schedules.length) host.end(exitCode.input);
  if (options.sarif !== undefined)
    await writeSarif(
      host,
      options.sarif,
      checked.map(({ compiled }) => compiled),
    );
}

async function checkOne(host: CommandHost, style: Style, schedule: string, quiet: boolean): Promise<CheckedSchedule | undefined> {
  const compiled = await openCompiled(host, schedule);
  if (compiled === undefined) return undefined;
  const report = checkReport(schedule, compiled);
  if (!quiet) {
    const { diagnostics, sources } = compiled;
    if (diagnostics.length > 0) host.shell.out(`${renderDiagnostics(diagnostics, sources, style)}\n`);
    host.shell.out(`${schedule}: ${verdict(report)}\n`);
  }
  return { report, compiled };
}

function verdict({ errors, warnings, tasks }: CheckReport): string {
  if (errors > 0) return `${counted(errors, 'error')}${warnings > 0 ? `, ${counted(warnings, 'warning')}` : ''}.`;
  return `${counted(tasks, 'task')}, ${warnings > 0 ? counted(warnings, 'warning') : 'nothing wrong'}.`;
}
