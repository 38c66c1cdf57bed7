import { fieldPage } from '../../page/field/field-page.js';
import { builtPage } from '../built-page.js';
import type { CommandHost } from '../command-host.js';
import { complain } from '../complain.js';
import { exitCode } from '../exit-code.js';
import { openLogbook } from '../open-logbook.js';
import { openSchedule } from '../open-schedule.js';
import { styleFor } from '../style-for.js';
import { writeFile } from '../write-file.js';

const help = `
The page holds the schedule, the logbook as it is now, and everything that it takes to say what is due: it opens from the phone's own
storage, without a network. What is written down on the phone is kept there until it is handed over as a file or as text.

Examples:
  duewright field-page tractor.due tractor.jsonl --to tractor.html
  duewright merge tractor.jsonl from-the-phone.jsonl`;

/** `duewright field-page`: what is due, the walk-round and a notebook, as one page for a phone. */
export function addFieldPage(host: CommandHost): void {
  host.program
    .command('field-page')
    .summary('make a page for a phone, for use without a network')
    .description('Writes one page with the SCHEDULE and the LOGBOOK: what is due and why, the walk-round, a timer, quick entries.')
    .argument('<schedule>', 'the schedule of the machine model')
    .argument('<logbook>', 'the logbook of the machine')
    .requiredOption('--to <file>', 'the file to write')
    .addHelpText('after', help)
    .action((schedule: string, logbook: string, { to }: { readonly to: string }) => runFieldPage(host, schedule, logbook, to));
}

async function runFieldPage(host: CommandHost, schedule: string, logbook: string, to: string): Promise<void> {
  const script = builtPage('pages/field-page.js');
  const opened = openLogbook(logbook);
  if (!script.ok || !opened.ok) {
    complain(host.shell, ...[script, opened].flatMap((each) => (each.ok ? [] : [each.problem])));
    return host.end(exitCode.input);
  }
  const graph = await openSchedule(host, styleFor(host.shell), schedule);
  if (graph === undefined) return;
  complain(host.shell, ...opened.value.remarks);
  const written = writeFile(to, fieldPage({ graph, entries: opened.value.entries, script: script.value }));
  if (written.ok) return;
  complain(host.shell, written.problem);
  host.end(exitCode.input);
}
