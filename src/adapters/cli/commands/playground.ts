import type { SourceText } from '../../../index.js';
import { basename } from 'node:path';
import type { Desk } from '../../page/playground/desk.js';
import { withDesk } from '../../page/playground/with-desk.js';
import { builtPage, builtPath } from '../built-page.js';
import type { CommandHost } from '../command-host.js';
import { compileFile } from '../compile-file.js';
import { complain } from '../complain.js';
import { exitCode } from '../exit-code.js';
import { type Parsed, understood } from '../parsed.js';
import { readText } from '../read-text.js';
import { writeFile } from '../write-file.js';

const PAGE = 'playground.html';
const NO_LOGBOOK = 'empty.jsonl';

const help = `
Open the page in a browser: it works from disk and asks nothing of a network. Without a schedule it opens with an invented tractor.

Examples:
  duewright playground
  duewright playground tractor.due tractor.jsonl --to playground.html`;

/** `duewright playground`: where the playground is, or a playground with one's own files on the desk. */
export function addPlayground(host: CommandHost): void {
  host.program
    .command('playground')
    .summary('say where the playground is, or make one with your own files')
    .description('Says where the page is on which a schedule can be edited and tried, or writes one that opens with SCHEDULE and LOGBOOK.')
    .argument('[schedule]', 'a schedule to open it with')
    .argument('[logbook]', 'the logbook of a machine')
    .option('--to <file>', 'the file to write')
    .addHelpText('after', help)
    .action((schedule: string | undefined, logbook: string | undefined, { to }: { readonly to?: string }) =>
      runPlayground(host, schedule, logbook, to),
    );
}

async function runPlayground(
  host: CommandHost,
  schedule: string | undefined,
  logbook: string | undefined,
  to: string | undefined,
): Promise<void> {
  if (to === undefined && schedule !== undefined) {
    complain(host.shell, 'Say where to write the page: `--to FILE`.');
    return host.end(exitCode.usage);
  }
  const page = builtPage(PAGE);
  const desk = schedule === undefined ? understood(null) : await deskOf(schedule, logbook);
  if (!page.ok || !desk.ok) {
    complain(host.shell, ...[page, desk].flatMap((each) => (each.ok ? [] : [each.problem])));
    return host.end(exitCode.input);
  }
  if (to === undefined) return host.shell.out(`${builtPath(PAGE)}\n`);
  const written = writeFile(to, desk.value === null ? page.value : withDesk(page.value, desk.value));
  if (written.ok) return;
  complain(host.shell, written.problem);
  host.end(exitCode.input);
}

/** A schedule with errors may be opened as well: that is what an author mends there. */
async function deskOf(schedule: string, logbook: string | undefined): Promise<Parsed<Desk>> {
  const compiled = await compileFile(schedule);
  if (!compiled.ok) return compiled;
  const log = logbook === undefined ? understood('') : readText(logbook);
  if (!log.ok) return log;
  const folder = schedule.slice(0, schedule.length - basename(schedule).length);
  const name = logbook === undefined ? NO_LOGBOOK : `${basename(logbook).replace(/\.jsonl$/, '')}.jsonl`;
  const files = compiled.value.sources.map(
    ({ name: path, text }: SourceText) => [path.startsWith(folder) ? path.slice(folder.length) : path, text] as const,
  );
  return understood({ files: { ...Object.fromEntries(files), [name]: log.value }, main: basename(schedule), logbook: name });
}
