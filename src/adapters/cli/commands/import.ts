import { Argument } from 'commander';
import type { RuleGraph } from '../../../engine.js';
import type { Digest } from '../../../base/sha256.js';
import { counted } from '../../../render/count-in-words.js';
import { formatDate } from '../../../values/civil.js';
import { formatTime } from '../../../values/moment.js';
import type { Moment } from '../../../values/moment.js';
import { parseFrame } from '../../exchange/can-frame.js';
import { engineReading } from '../../exchange/engine-frames.js';
import { entriesFromCsv } from '../../exchange/entries-csv.js';
import { readFleetJson, readFleetXml } from '../../exchange/fleet-feed.js';
import { snapshotReadings } from '../../exchange/meter-snapshot.js';
import type { Draft } from '../../logbook/plan-append.js';
import { fileLogbook } from '../../logbook/file-logbook.js';
import { nameProblems } from '../../logbook/recording/name-problems.js';
import { orComplain } from '../append-drafts.js';
import type { CommandHost } from '../command-host.js';
import { complain } from '../complain.js';
import { exitCode } from '../exit-code.js';
import { hostSha256 } from '../host-sha256.js';
import { openSchedule } from '../open-schedule.js';
import { readText } from '../read-text.js';
import { styleFor } from '../style-for.js';

interface ImportOptions {
  readonly machine?: string;
  readonly meter?: string;
  readonly gauge?: string;
  readonly zone?: string;
}

/** What a file held: entries to record, and a sentence for everything that was left out. */
interface Imported {
  readonly drafts: readonly Draft[];
  readonly problems: readonly string[];
}

/** What the machine that the command runs on gives to the reading of a file. */
interface Given {
  readonly now: Moment;
  readonly sha256: Digest;
}

type Reader = (text: string, graph: RuleGraph, options: ImportOptions, given: Given) => Imported;

const readers: ReadonlyMap<string, Reader> = new Map<string, Reader>([
  ['entries', readTable],
  ['feed', readFeed],
  ['frames', readFrames],
]);

const help = `
WHAT is one of
  entries  CSV with a heading row, as \`duewright export entries\` writes it
  feed     XML or JSON of ISO 15143-3, or XML of AEMP 1.2; needs --machine
  frames   SAE J1939 frames, one a line; recorded as read now

Importing the same file again adds nothing.

Examples:
  duewright import feed tractor.due tractor.jsonl fleet.xml --machine 0001234 --zone Europe/Berlin
  duewright import entries tractor.due tractor.jsonl old-notes.csv`;

/** `duewright import`: entries from tables, machine feeds and the engine's bus. */
export function addImport(host: CommandHost): void {
  host.program
    .command('import')
    .summary('take in a table, a machine feed or engine frames')
    .description('Reads FILE and records in the LOGBOOK what it holds and the LOGBOOK lacks.')
    .addArgument(new Argument('<what>', 'what the file holds').choices([...readers.keys()]))
    .argument('<schedule>', 'the schedule of the machine model')
    .argument('<logbook>', 'the logbook of the machine')
    .argument('<file>', 'the file to read; - is the standard input')
    .option('--machine <number>', 'of a feed: the serial number, PIN or equipment id of this machine')
    .option('--meter <name>', 'the hour meter; otherwise the first of the schedule')
    .option('--gauge <name>', 'of frames: the coolant gauge, in °C')
    .option('--zone <zone>', 'of a feed: the time zone where the machine stands, like Europe/Berlin')
    .addHelpText('after', help)
    .action((what: string, schedule: string, logbook: string, file: string, options: ImportOptions) =>
      runImport(host, what, { schedule, logbook, file }, options),
    );
}

interface Paths {
  readonly schedule: string;
  readonly logbook: string;
  readonly file: string;
}

async function runImport(host: CommandHost, what: string, paths: Paths, options: ImportOptions): Promise<void> {
  const problem =
    what === 'feed' && options.machine === undefined
      ? 'Say which machine of the feed is meant: --machine NUMBER.'
      : zoneProblem(options.zone);
  if (problem !== null) return refuse(host, exitCode.usage, problem);
  const graph = await openSchedule(host, styleFor(host.shell), paths.schedule);
  const reader = readers.get(what);
  if (graph === undefined || reader === undefined) return;
  const text = readText(paths.file);
  if (!text.ok) return refuse(host, exitCode.input, text.problem);
  const { drafts, problems } = reader(text.value, graph, options, { now: host.shell.now(), sha256: await hostSha256() });
  const strays = [...new Set(drafts.flatMap((draft) => nameProblems(graph, draft)))];
  const store = fileLogbook(paths.logbook);
  const there = what === 'frames' ? await orComplain(host, async () => (await store.read()).entries) : [];
  if (there === undefined) return;
  const fresh = drafts.filter(({ id }) => !there.some((entry) => entry.id === id));
  const receipts = fresh.length === 0 ? [] : await orComplain(host, () => store.append(fresh));
  if (receipts === undefined) return;
  const added = receipts.filter(({ seq }) => seq !== null).length;
  host.shell.out(`${counted(added, 'entry', 'entries')} recorded, ${drafts.length - added} there already.\n`);
  complain(host.shell, ...strays.map((stray) => `${stray} It is kept, and not used.`), ...problems);
  if (problems.length > 0) host.end(exitCode.no);
}

function readTable(text: string, _graph: RuleGraph, _options: ImportOptions, { sha256 }: Given): Imported {
  const { entries, problems } = entriesFromCsv(text, { sha256 });
  return {
    drafts: entries,
    problems: problems.map(({ row, what }) => `${row === 1 ? 'Nothing is read' : `Row ${row} is left out`}: ${what}.`),
  };
}

function readFeed(text: string, graph: RuleGraph, { machine = '', meter, zone }: ImportOptions): Imported {
  const feed = /^\s*[[{]/.test(text) ? readFleetJson(text) : readFleetXml(text);
  const target = {
    machine,
    meters: new Map([['operating-hours', hourMeter(graph, meter)] as const]),
    ...(zone === undefined ? {} : { zone }),
  };
  const { entries, problems } = snapshotReadings(feed, target);
  const none = entries.length === 0 && problems.length === 0 ? [`There is no machine \`${machine}\` with operating hours in it.`] : [];
  return { drafts: entries, problems: [...problems, ...none].map((each) => (/^[A-Z]/.test(each) ? each : `In the feed, ${each}.`)) };
}

function readFrames(text: string, graph: RuleGraph, { meter, gauge }: ImportOptions, { now, sha256 }: Given): Imported {
  const { day, minute } = now;
  const frames = text.split('\n').flatMap((line) => parseFrame(line) ?? []);
  const when = { on: formatDate(day), ...(minute === null ? {} : { at: formatTime(minute) }) };
  const { entry, refused } = engineReading(frames, { ...when, meter: hourMeter(graph, meter), ...(gauge === undefined ? {} : { gauge }) });
  // Named for the frames and not for the moment of taking them in, so that the same file taken in again adds nothing.
  if (entry !== null) return { drafts: [{ ...entry, id: `frames-${sha256(text.trim()).slice(0, 12)}` }], problems: [] };
  const why =
    refused.length === 0 ? 'no frame with engine hours' : `only values that the sender marks as ${[...new Set(refused)].join(', ')}`;
  return { drafts: [], problems: [`Nothing is recorded: there is ${why}.`] };
}

function hourMeter(graph: RuleGraph, named: string | undefined): string {
  return named ?? graph.meters.find(({ unit, fromOutings }) => unit === 'h' && !fromOutings)?.id ?? 'engine';
}

function zoneProblem(zone: string | undefined): string | null {
  if (zone === undefined) return null;
  try {
    new Intl.DateTimeFormat('en', { timeZone: zone });
    return null;
  } catch {
    return `There is no time zone \`${zone}\`.`;
  }
}

function refuse({ shell, end }: CommandHost, code: typeof exitCode.usage | typeof exitCode.input, problem: string): void {
  complain(shell, problem);
  end(code);
}
