import { inputSchema } from '../../../render/inputs/input-schema.js';
import { inputTypes } from '../../../render/inputs/input-types.js';
import type { CommandHost } from '../command-host.js';
import { complain } from '../complain.js';
import { exitCode } from '../exit-code.js';
import { jsonText } from '../json-text.js';
import { openSchedule } from '../open-schedule.js';
import { styleFor, type StyleOptions } from '../style-for.js';
import { writeFile } from '../write-file.js';

interface InputsOptions extends StyleOptions {
  readonly types?: true;
  readonly to?: string;
}

const examples = `
An entry that the JSON Schema accepts names nothing that the schedule lacks: its meters, gauges, dipsticks, tasks, duties, attachments,
supplies, events, parts, and defects with their classes. With --types the same is written for a TypeScript compiler, which then refuses a
wrong name while the app is written.

Examples:
  duewright inputs tractor.due --to tractor-inputs.schema.json
  duewright inputs tractor.due --types --to tractor-inputs.ts`;

/** `duewright inputs`: what can be logged against one schedule, as a JSON Schema or as types. */
export function addInputs(host: CommandHost): void {
  host.program
    .command('inputs')
    .summary('write what can be logged, for apps that log')
    .description('Writes the JSON Schema, or the TypeScript types, of the entries that can be logged against a SCHEDULE.')
    .argument('<schedule>', 'the schedule to log against')
    .option('--types', 'TypeScript types instead of a JSON Schema')
    .option('--to <file>', 'the file to write; otherwise it is the answer')
    .option('--plain', 'neither colour nor signs beyond ASCII in what is said besides')
    .addHelpText('after', examples)
    .action((schedule: string, options: InputsOptions) => runInputs(host, schedule, options));
}

async function runInputs(host: CommandHost, schedule: string, options: InputsOptions): Promise<void> {
  const { shell, end } = host;
  const graph = await openSchedule(host, styleFor(shell, options), schedule);
  if (graph === undefined) return;
  const text = options.types === true ? inputTypes(graph) : jsonText(inputSchema(graph));
  if (options.to === undefined) {
    shell.out(text);
    return;
  }
  const written = writeFile(options.to, text);
  if (written.ok) return;
  complain(shell, written.problem);
  end(exitCode.input);
}
