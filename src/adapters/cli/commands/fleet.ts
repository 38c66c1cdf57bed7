import { existsSync } from 'node:fs';
import { createReadStream } from 'node:fs';
import { InvalidArgumentError, Option } from 'commander';
import type { RuleGraph } from '../../../engine.js';
import { STATES, VERDICTS } from '../../../fleet/fleet-states.js';
import { counted } from '../../../render/count-in-words.js';
import { safeText } from '../../../render/safe-text.js';
import { stateInWords } from '../../../render/state-in-words.js';
import type { DialectName } from '../../../sql/dialect.js';
import { toSql } from '../../../sql/to-sql.js';
import { assessFleet } from '../../fleet/assess-fleet.js';
import type { BlockAnswer } from '../../fleet/judge-block.js';
import type { CommandHost } from '../command-host.js';
import { complain } from '../complain.js';
import { describeFileFailure } from '../describe-file-failure.js';
import { exitCode } from '../exit-code.js';
import { openSchedule } from '../open-schedule.js';
import { parseWhen } from '../parse-when.js';
import { styleFor } from '../style-for.js';

interface FleetCommandOptions {
  readonly on?: string;
  readonly json?: true;
  readonly sql?: DialectName;
  readonly workers: number;
}

/** How many of each verdict, and how many lines were no machine. */
interface Tally {
  readonly verdicts: number[];
  refused: number;
}

const help = `
A FILE holds one machine a line, as JSON or, if its name ends in .csv, as a table with a heading; - is the standard input. How a line is
written stands in docs/fleets.md.

Examples:
  duewright fleet tractor.due machines.jsonl
  duewright fleet tractor.due machines.csv --on 2026-06-15 --json > due.jsonl
  duewright fleet tractor.due --sql duckdb > due.sql

Ends with 1 if a machine is held or cannot be told to be safe, or if a line is no machine.`;

/** `duewright fleet`: what is due on many machines of one model, or the rules in SQL. */
export function addFleet(host: CommandHost): void {
  host.program
    .command('fleet')
    .summary('say what is due on many machines, or write the rules as SQL')
    .description('Says what each machine of a fleet is due for, by one SCHEDULE, from what is last known of it.')
    .argument('<schedule>', 'the schedule of the machine model')
    .argument('[files...]', 'what is known of the machines, one a line')
    .option('--on <day>', 'as of another day; otherwise today')
    .option('--json', 'answer with one JSON object a machine')
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
  const tally: Tally = { verdicts: VERDICTS.map(() => 0), refused: 0 };
  for (const file of files) if (!(await judgeFile(host, graph, file, now.value.day, options, tally))) return host.end(exitCode.input);
  if (options.json !== true) shell.out(`${summary(tally)}\n`);
  const unsafe = (tally.verdicts[2] ?? 0) + (tally.verdicts[3] ?? 0) + tally.refused;
  host.end(unsafe > 0 ? exitCode.no : exitCode.fine);
}

function writeSql({ shell }: CommandHost, graph: RuleGraph, dialect: DialectName): void {
  const { tables, view, refused } = toSql(graph, dialect);
  for (const { task, because } of refused) complain(shell, `\`${task}\` is left out of the view: SQL cannot say \`${safeText(because)}\`.`);
  shell.out(`${tables}\n${view}`);
}

async function judgeFile(
  { shell }: CommandHost,
  graph: RuleGraph,
  file: string,
  today: ReturnType<CommandHost['shell']['now']>['day'],
  { json, workers }: FleetCommandOptions,
  tally: Tally,
): Promise<boolean> {
  const script = new URL('./fleet-worker.js', import.meta.url);
  const threads = existsSync(script) ? workers : 0;
  const input = file === '-' ? process.stdin : createReadStream(file);
  try {
    for await (const block of assessFleet(graph, input, {
      today,
      format: file.endsWith('.csv') ? 'csv' : 'jsonl',
      workers: threads,
      script,
    })) {
      for (const { line, what, refused } of block.notes) {
        complain(shell, `${safeText(file)}:${line}: ${refused ? 'this is no machine' : 'not used'}: ${safeText(what)}.`);
        if (refused) tally.refused += 1;
      }
      for (const verdict of block.verdict) tally.verdicts[verdict] = (tally.verdicts[verdict] ?? 0) + 1;
      shell.out(
        block.machines.map((_, machine) => (json === true ? jsonLine(graph, block, machine) : textLine(graph, block, machine))).join(''),
      );
    }
    return true;
  } catch (error) {
    if (error instanceof RangeError) complain(shell, `\`${safeText(file)}\` cannot be read: ${error.message}.`);
    else complain(shell, describeFileFailure(file, 'read', error));
    return false;
  }
}

/** One machine with all of its tasks. */
function jsonLine(graph: RuleGraph, block: BlockAnswer, machine: number): string {
  const tasks = graph.tasks.map(({ id }, task) => {
    const at = task * block.stride + machine;
    const [left, governing] = [block.left[at] ?? Number.NaN, block.governing[at] ?? -1];
    return {
      task: id,
      state: STATES[block.state[at] ?? 0],
      left: Number.isNaN(left) ? null : left,
      governing: governing < 0 ? null : governing,
    };
  });
  return `${JSON.stringify({ machine: block.machines[machine], verdict: VERDICTS[block.verdict[machine] ?? 0], tasks })}\n`;
}

/** One machine that wants something, on one line; nothing for one that is ready. */
function textLine(graph: RuleGraph, block: BlockAnswer, machine: number): string {
  const verdict = VERDICTS[block.verdict[machine] ?? 0] ?? 'ready';
  if (verdict === 'ready') return '';
  const wanted = graph.tasks.flatMap(({ id }, task) => {
    const state = STATES[block.state[task * block.stride + machine] ?? 0] ?? 'clear';
    return state === 'clear' || state === 'resting' || state === 'coming-up' ? [] : [`${id} ${stateInWords(state)}`];
  });
  return `${safeText(block.machines[machine] ?? '')}  ${SHORT[verdict]}: ${wanted.join(', ')}\n`;
}

const SHORT = { held: 'HELD', 'cannot-tell': 'cannot tell', 'work-due-first': 'work due', ready: 'ready' } as const;

function summary({ verdicts, refused }: Tally): string {
  const [ready = 0, work = 0, unknown = 0, held = 0] = verdicts;
  const parts = [`${held} held`, `${unknown} cannot be told`, `${work} with work due first`, `${ready} ready`];
  return `${counted(ready + work + unknown + held, 'machine')}: ${parts.join(', ')}${refused === 0 ? '' : `; ${counted(refused, 'line')} not read`}.`;
}
