import { addAheadOptions, type AheadOptions } from '../ahead-options.js';
import type { CommandHost } from '../command-host.js';
import { complain } from '../complain.js';
import { exitCode } from '../exit-code.js';
import { openOutlook } from '../open-outlook.js';
import { styleFor } from '../style-for.js';
import { writeFile } from '../write-file.js';

interface YearOptions extends AheadOptions {
  readonly to?: string;
}

const examples = `
The page is complete in itself: it opens in any browser from disk, without a network, and prints on A4.

Examples:
  duewright year tractor.due tractor.jsonl --to tractor-year.html`;

/** `duewright year`: the year ahead, the hours and the levels, as a page to look at and to print. */
export function addYear(host: CommandHost): void {
  const command = host.program
    .command('year')
    .summary('draw the year ahead, the hours and the oil levels as a page')
    .description('Draws what lies ahead by SCHEDULE and LOGBOOK, hours with services, and levels with top-ups, as one page.')
    .argument('<schedule>', 'the schedule of the machine model')
    .argument('<logbook>', 'the logbook of the machine')
    .option('--to <file>', 'the file to write; otherwise it is the answer')
    .addHelpText('after', examples);
  addAheadOptions(command).action((schedule: string, logbook: string, options: YearOptions) => runYear(host, schedule, logbook, options));
}

async function runYear(host: CommandHost, schedule: string, logbook: string, options: YearOptions): Promise<void> {
  const opened = await openOutlook(host, styleFor(host.shell), schedule, logbook, options);
  if (opened === undefined) return;
  // Drawing takes a library that no other answer waits for.
  const { yearPage } = await import('../../page/year/year-page.js');
  const page = yearPage(opened.graph, opened.entries, opened.outlook);
  if (options.to === undefined) return host.shell.out(page);
  const written = writeFile(options.to, page);
  if (written.ok) return;
  complain(host.shell, written.problem);
  host.end(exitCode.input);
}
