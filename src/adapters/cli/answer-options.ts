import { type Command, InvalidArgumentError, Option } from 'commander';
import type { StyleOptions } from './style-for.js';

/** The options of every command that answers people. */
export interface AnswerOptions extends StyleOptions {
  readonly json?: true;
}

/** Adds `--json`, whose shape `schema` describes, `--width` and `--plain`. */
export function addAnswerOptions(command: Command, schema: string): Command {
  return command
    .option('--json', `answer with JSON instead (grammar/${schema})`)
    .addOption(new Option('--width <columns>', 'lay the text out so wide').argParser(parseWidth))
    .option('--plain', 'neither colour nor signs beyond ASCII');
}

function parseWidth(text: string): number {
  const width = Number(text);
  if (!/^\d+$/.test(text) || width < 40 || width > 500) throw new InvalidArgumentError('A width is a number of columns from 40 to 500.');
  return width;
}
