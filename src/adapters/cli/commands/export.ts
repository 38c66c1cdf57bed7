import { Argument } from 'commander';
import { lookAhead } from '../../../ahead.js';
import type { Outlook } from '../../../ahead.js';
import { assess } from '../../../engine.js';
import { formatDate } from '../../../values/civil.js';
import { formatTime } from '../../../values/moment.js';
import { writeCalendar } from '../../exchange/calendar-file.js';
import { dueCalendar } from '../../exchange/due-calendar.js';
import type { ExpectedDays } from '../../exchange/due-calendar.js';
import { entriesToCsv } from '../../exchange/entries-csv.js';
import { serviceRecordCsv } from '../../exchange/service-record-csv.js';
import { serviceRecordPage } from '../../exchange/service-record-page.js';
import { serviceRecord } from '../../exchange/service-record.js';
import { fileLogbook } from '../../logbook/file-logbook.js';
import type { ChainHead } from '../../logbook/logbook.js';
import { orComplain } from '../append-drafts.js';
import type { CommandHost } from '../command-host.js';
import { complain } from '../complain.js';
import { counted } from '../../../render/count-in-words.js';
import { exitCode } from '../exit-code.js';
import { openQuestion } from '../open-question.js';
import type { Question } from '../open-question.js';
import type { Shell } from '../shell.js';
import { styleFor } from '../style-for.js';
import { writeFile } from '../write-file.js';

interface ExportOptions {
  readonly on?: string;
  readonly to?: string;
}

/** Makes the text of one kind of export. */
type Writer = (question: Question, shell: Shell, head: ChainHead | null) => string;

const writers: ReadonlyMap<string, Writer> = new Map<string, Writer>([
  ['calendar', calendar],
  ['entries', ({ entries }) => entriesToCsv(entries)],
  ['record', (question, _, head) => serviceRecordPage(recordOf(question), head)],
  ['record-table', (question) => serviceRecordCsv(recordOf(question))],
]);

const help = `
WHAT is one of
  calendar      iCalendar: the tasks that fall due on a day, or about one; importing it again moves them
  entries       CSV: every entry of the logbook
  record        a page to print: what was done when, on time or late, by this edition of the schedule
  record-table  the same as CSV

Examples:
  duewright export record tractor.due tractor.jsonl --to service-record.html
  duewright export calendar tractor.due tractor.jsonl --to tractor.ics`;

/** `duewright export`: the logbook, and what follows from it, for other programs and for paper. */
export function addExport(host: CommandHost): void {
  host.program
    .command('export')
    .summary('give out a calendar, a table or the service record')
    .description('Writes what the LOGBOOK holds, or what follows from it by the SCHEDULE, for other programs or for paper.')
    .addArgument(new Argument('<what>', 'what to give out').choices([...writers.keys()]))
    .argument('<schedule>', 'the schedule of the machine model')
    .argument('<logbook>', 'the logbook of the machine')
    .option('--on <when>', 'as of another day; otherwise now')
    .option('--to <file>', 'the file to write; otherwise it is the answer')
    .addHelpText('after', help)
    .action((what: string, schedule: string, logbook: string, options: ExportOptions) => runExport(host, what, schedule, logbook, options));
}

async function runExport(host: CommandHost, what: string, schedule: string, path: string, options: ExportOptions): Promise<void> {
  const question = await openQuestion(host, styleFor(host.shell), schedule, path, options.on === undefined ? {} : { on: options.on });
  const writer = writers.get(what);
  if (question === undefined || writer === undefined) return;
  const logbook = path === '-' ? null : await orComplain(host, () => fileLogbook(path).read());
  if (logbook === undefined) return;
  const text = writer(question, host.shell, logbook?.head ?? null);
  if (options.to === undefined) return host.shell.out(text);
  const written = writeFile(options.to, text);
  if (written.ok) return;
  complain(host.shell, written.problem);
  host.end(exitCode.input);
}

function calendar(question: Question, shell: Shell): string {
  const { graph, entries, now } = question;
  const outlook = lookAhead(graph, entries, now);
  const rates = new Map(outlook.meters.flatMap(({ meter, rate }) => (rate === null ? [] : [[meter, rate.perDay] as const])));
  const assessment = assess(graph, entries, now, { withoutRecord: true, rates });
  const serial = entries.flatMap((entry) => (entry.kind === 'machine' && entry.serial !== undefined ? [String(entry.serial)] : [])).at(-1);
  const expected = expectedDays(outlook);
  const items = dueCalendar(graph, assessment, `${graph.schedule.name} ${serial ?? entries[0]?.id ?? ''}`, expected);
  const left = assessment.tasks.filter(({ task, due }) => (due?.on === 'meter' || due?.on === 'work') && !expected.has(task)).length;
  if (left > 0) complain(shell, `${counted(left, 'task')} due by a meter whose day cannot be told well enough: not in the calendar.`);
  const stamp = shell.instant?.() ?? `${formatDate(now.day)}T${formatTime(now.minute ?? 0)}:00Z`;
  return writeCalendar(items, { stamp, name: graph.schedule.title });
}

/** Forecasts that end within the time looked at: one that may lie beyond it would promise too much. */
function expectedDays({ tasks }: Outlook): ReadonlyMap<string, ExpectedDays> {
  return new Map(
    tasks.flatMap(({ task, foreseen, next }): readonly (readonly [string, ExpectedDays])[] =>
      foreseen !== 'simulated' || next?.likely == null || next.late === null
        ? []
        : [[task, { from: next.early, to: next.late, likely: next.likely }]],
    ),
  );
}

function recordOf({ graph, entries, now }: Question): ReturnType<typeof serviceRecord> {
  return serviceRecord([{ from: null, graph }], entries, now);
}
