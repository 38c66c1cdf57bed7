import { suppliesAhead } from '../../../ahead.js';
import type { RuleGraph } from '../../../engine.js';
import { renderSupplies } from '../../../render/outlook/supplies.js';
import { addAheadOptions, type AheadOptions } from '../ahead-options.js';
import { addAnswerOptions, type AnswerOptions } from '../answer-options.js';
import type { CommandHost } from '../command-host.js';
import { jsonText } from '../json-text.js';
import { openOutlook } from '../open-outlook.js';
import { openTask } from '../open-task.js';
import { addShelfOptions, type ShelfOptions } from '../shelf-options.js';
import { styleFor } from '../style-for.js';

type SuppliesOptions = AnswerOptions & AheadOptions & ShelfOptions;

const examples = `
Examples:
  duewright supplies tractor.due tractor.jsonl --until 2026-09-30
  duewright supplies tractor.due tractor.jsonl change-engine-oil renew-air-filter --have "2 oil-filter, 10 L engine-oil-15w40"`;

/** `duewright supplies`: what a season, or some tasks, take, less what is on the shelf. */
export function addSupplies(host: CommandHost): void {
  const command = host.program
    .command('supplies')
    .summary('say what a season or some tasks take, less what is there')
    .description('Counts what the time ahead takes by SCHEDULE and LOGBOOK, or TASKS done once each, less what is on the shelf.')
    .argument('<schedule>', 'the schedule of the machine model')
    .argument('<logbook>', 'the logbook of the machine')
    .argument('[tasks...]', 'tasks of the schedule, by name or title; otherwise all that falls due in the time')
    .addHelpText('after', examples);
  addAnswerOptions(addShelfOptions(addAheadOptions(command)), 'supplies.schema.json').action(
    (schedule: string, logbook: string, tasks: string[], options: SuppliesOptions) => runSupplies(host, schedule, logbook, tasks, options),
  );
}

async function runSupplies(
  host: CommandHost,
  schedule: string,
  logbook: string,
  names: readonly string[],
  options: SuppliesOptions,
): Promise<void> {
  const style = styleFor(host.shell, options);
  const opened = await openOutlook(host, style, schedule, logbook, options);
  if (opened === undefined) return;
  const { graph, outlook, shelf } = opened;
  const tasks = openTasks(host, graph, names);
  if (tasks === undefined) return;
  const supplies = suppliesAhead(graph, outlook, shelf, tasks);
  host.shell.out(options.json === true ? jsonText(supplies) : `${renderSupplies(supplies, graph, style, outlook.meters)}\n`);
}

/** All of them, or undefined after the first that is none has been complained about. */
function openTasks(host: CommandHost, graph: RuleGraph, names: readonly string[]): readonly string[] | undefined {
  const found: string[] = [];
  for (const name of names) {
    const task = openTask(host, graph, name);
    if (task === undefined) return undefined;
    found.push(task.id);
  }
  return found;
}
