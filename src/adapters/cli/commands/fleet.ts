import { createReadStream, existsSync } from 'node:fs';
import { InvalidArgumentError, Option } from 'commander';
import { assess, type Entry, type RuleGraph } from '../../../engine.js';
import { lineProblem } from '../../../fleet/line-problem.js';
import { renderDueList } from '../../../render/due-list.js';
import { safeText } from '../../../render/safe-text.js';
import type { DialectName } from '../../../sql/dialect.js';
import { toSql } from '../../../sql/to-sql.js';
import { numberText } from '../../../values/number-text.js';
import { type Day, onDay } from '../../../values/moment.js';
import { assessFleet, type FleetProgress } from '../../fleet/assess-fleet.js';
import { findMachine } from '../../fleet/find-machine.js';
import type { LineSource } from '../../fleet/fleet-blocks.js';
import type { BlockAnswer, FleetFormat } from '../../fleet/judge-block.js';
import { type LineNote, noteOf } from '../../fleet/line-note.js';
import type { CommandHost } from '../command-host.js';
import { complain } from '../complain.js';
import { describeFileFailure } from '../describe-file-failure.js';
import { type ExitCode, exitCode } from '../exit-code.js';
import { count, type FleetTally, machineAsJson, machineInWords, newTally, noteInWords, sumsInWords } from '../fleet-report.js';
import { jsonText } from '../json-text.js';
import { openSchedule } from '../open-schedule.js';
import { parseWhen } from '../parse-when.js';
import { styleFor } from '../style-for.js';

interface FleetCommandOptions {
  readonly on?: string;
  readonly json?: true;
  readonly machine?: string;
  readonly sql?: DialectName;
  readonly workers: number;
}

/** What is kept from one file to the next. */
interface FleetRun {
  readonly host: CommandHost;
  readonly graph: RuleGraph;
  readonly today: Day;
  readonly options: FleetCommandOptions;
  readonly tally: FleetTally;
  readonly files: readonly string[];
  /** Machine → on which line of which file it stood first, as in {@link placeNumber}; no more than {@link MOST_NAMES}. */
  readonly seen: Map<string, number>;
  /** Codes whose help was said. */
  readonly helped: Set<string>;
}

/** So many names are remembered to tell when one comes again. */
const MOST_NAMES = 1_000_000;

const help = `
A FILE holds one machine a line, as JSON or, if its name ends in .csv, as a table with a heading; - is the standard input:
  {"machine":"north-17","on":"2026-06-14","meters":{"engine":1299.9},"done":{"change-oil":{"on":"2026-03-02","meters":{"engine":1200}}}}
  machine,on,meters.engine,done.change-oil,done.change-oil.engine
All that may stand there, and what each remark on a line means, is in docs/fleets.md.

Examples:
  duewright fleet tractor.due machines.jsonl
  duewright fleet tractor.due machines.csv --on 2026-06-15 --json > due.jsonl
  duewright fleet tractor.due machines.jsonl --machine north-17
  duewright fleet tractor.due --sql duckdb > due.sql

Ends with 1 if a machine is held or cannot be told to be safe, if a line is not read, or if there is no machine at all.`;

/** `duewright fleet`: what is due on many machines of one model, or the rules in SQL. */
export function addFleet(host: CommandHost): void {
  host.program
    .command('fleet')
    .summary('say what is due on many machines, or write the rules as SQL')
    .description('Says what each machine of a fleet is due for, by one SCHEDULE, from what is last known of it.')
    .argument('<schedule>', 'the schedule of the machine model')
    .argument('[files...]', 'what is known of the machines, one a line')
    .option('--on <day>', 'as of another day; otherwise today')
    .option('--json', 'answer with one JSON object a machine (grammar/fleet-line.schema.json)')
    .option('--machine <name>', 'what one of them is due for, and why it must not be used')
    .addOption(new Option('--sql <dialect>', 'write tables and a view for a database instead').choices(['duckdb', 'postgresql']))
    .addOption(new Option('--workers <number>', 'threads beside this one').argParser(parseWorkers).default(0))
    .addHelpText('after', help)
    .action((schedule: string, files: readonly string[], options: FleetCommandOptions) => runFleet(host, schedule, files, options));
}

function parseWorkers(text: string): number {
  const workers = Number(text);
  if (!/^\d+$/.test(text) || workers > 256) throw new InvalidArgumentError('That is a number from 0 to 256.');
  return workers;
}

async function runFleet(host: CommandHost, schedule: string, files: readonly string[], options: FleetCommandOptions): Promise<void> {
  const { shell } = host;
  const now = options.on === undefined ? { ok: true as const, value: shell.now() } : parseWhen(options.on);
  if (!now.ok || (files.length === 0 && options.sql === undefined)) {
    complain(shell, now.ok ? 'A FILE with the machines is missing.' : now.problem);
    return host.end(exitCode.usage);
  }
  const graph = await openSchedule(host, styleFor(shell), schedule);
  if (graph === undefined) return;
  if (options.sql !== undefined) return writeSql(host, graph, options.sql);
  const today = now.value.day;
  const run: FleetRun = { host, graph, today, options, files, tally: newTally(graph), seen: new Map(), helped: new Set() };
  if (options.machine !== undefined) return showMachine(run, files, options.machine);
  for (const file of files) if (!(await reading(run, file, () => judgeFile(run, file)))) return host.end(exitCode.input);
  if (options.json !== true) shell.out(sumsInWords(graph, run.tally));
  host.end(codeOf(run.tally));
}

function codeOf({ verdicts, refused }: FleetTally): ExitCode {
  const [ready = 0, work = 0, unknown = 0, held = 0] = verdicts;
  return unknown + held + refused > 0 || ready + work === 0 ? exitCode.no : exitCode.fine;
}

function writeSql({ shell }: CommandHost, graph: RuleGraph, dialect: DialectName): void {
  const { tables, view, refused } = toSql(graph, dialect);
  for (const { task, because, at } of refused)
    complain(
      shell,
      `${safeText(at.path)}:${at.line}: ${task} is left out of the view (not-in-sql): SQL cannot say “${safeText(because)}”.`,
    );
  if (refused.length > 0)
    complain(shell, `${refused.length} of ${graph.tasks.length} tasks are left out. \`duewright fleet SCHEDULE FILE\` judges them all.`);
  shell.out(`${tables}\n${view}`);
}

/** Does what needs a file; `false`, and a sentence on it, where the file gives trouble. */
async function reading({ host: { shell } }: FleetRun, file: string, work: () => Promise<void>): Promise<boolean> {
  try {
    await work();
    return true;
  } catch (error) {
    if (error instanceof RangeError) complain(shell, `\`${safeText(file)}\` cannot be read: ${error.message}.`);
    else complain(shell, describeFileFailure(file, 'read', error));
    return false;
  }
}

async function judgeFile(run: FleetRun, file: string): Promise<void> {
  const { host, graph, today, options, tally } = run;
  const script = new URL('./fleet-worker.js', import.meta.url);
  const workers = existsSync(script) ? options.workers : 0;
  const onProgress = ({ lines }: FleetProgress): void => host.shell.progress?.(`${numberText(lines)} lines of ${safeText(file)}`);
  const before = machinesOf(tally);
  for await (const block of assessFleet(graph, open(file), { today, format: formatOf(file), workers, script, onProgress })) {
    count(tally, graph, block);
    for (const note of [...block.notes, ...repeatsIn(run, file, block)]) tell(run, file, note);
    const inWords = options.json === true ? machineAsJson : machineInWords;
    host.shell.out(block.machines.map((_, machine) => inWords(graph, block, machine)).join(''));
  }
  host.shell.progress?.('');
  if (machinesOf(tally) === before)
    complain(host.shell, `\`${safeText(file)}\` holds no machine. One machine is one line: see \`duewright fleet --help\`.`);
}

/** Machines that stood somewhere before. */
function repeatsIn({ seen, files }: FleetRun, file: string, block: BlockAnswer): readonly LineNote[] {
  return block.machines.flatMap((name, machine) => {
    const line = block.at[machine] ?? 0;
    const first = seen.get(name);
    // A copy of the name: a part of the text would keep the whole of it in memory.
    if (first === undefined && seen.size < MOST_NAMES) seen.set(Buffer.from(name).toString(), placeNumber(files, file, line));
    if (first === undefined) return [];
    const place = `${files[first % files.length] ?? ''}:${Math.floor(first / files.length)}`;
    return [noteOf(line, lineProblem('same-machine', `\`${name}\` stands here again, after ${place}`), false)];
  });
}

/** A line of a file as one number. */
function placeNumber(files: readonly string[], file: string, line: number): number {
  return line * files.length + files.indexOf(file);
}

function tell({ host, helped }: FleetRun, file: string, note: LineNote): void {
  host.shell.progress?.('');
  complain(host.shell, noteInWords(file, note, !helped.has(note.code)));
  helped.add(note.code);
}

/** What `duewright due` would say of one machine. */
async function showMachine(run: FleetRun, files: readonly string[], name: string): Promise<void> {
  const { host, graph, today, options } = run;
  let entries: readonly Entry[] | null = null;
  for (const file of files) {
    const look = async (): Promise<void> => void (entries ??= await findMachine(graph, open(file), name, today, formatOf(file)));
    if (!(await reading(run, file, look))) return host.end(exitCode.input);
  }
  if (entries === null) {
    complain(host.shell, `There is no machine \`${safeText(name)}\` in ${files.map((file) => `\`${safeText(file)}\``).join(', ')}.`);
    return host.end(exitCode.usage);
  }
  const assessment = assess(graph, entries, onDay(today));
  host.shell.out(options.json === true ? jsonText(assessment) : `${renderDueList(assessment, graph, styleFor(host.shell))}\n`);
  host.end(assessment.verdict === 'held' || assessment.verdict === 'cannot-tell' ? exitCode.no : exitCode.fine);
}

function open(file: string): LineSource {
  return file === '-' ? process.stdin : createReadStream(file);
}

function formatOf(file: string): FleetFormat {
  return file.toLowerCase().endsWith('.csv') ? 'csv' : 'jsonl';
}

function machinesOf({ verdicts }: FleetTally): number {
  return verdicts.reduce((sum, each) => sum + each, 0);
}
