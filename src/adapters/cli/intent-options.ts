import type { Command } from 'commander';
import type { Intent, RuleGraph } from '../../engine.js';
import { noSuch } from './complain.js';
import { type IntendedOuting, parseWork, workExample } from './parse-work.js';
import { type Parsed, refused, understood } from './parsed.js';

/** When the question is asked, and what is wanted of the machine next. */
export interface IntentOptions {
  readonly on?: string;
  /** True: work of which nothing more is said. */
  readonly work?: string | true;
  readonly storage?: true;
}

/** Adds `--on`, `--work` and `--storage`. */
export function addIntentOptions(command: Command): Command {
  return command
    .option('--on <when>', 'a date, or a date and a time in quotes, instead of now')
    .option('--work [what]', `work that is intended, such as "${workExample}"`)
    .option('--storage', 'the machine is to be put away');
}

/** What the options intend. Refused if the work cannot be read, or names what the schedule does not have. */
export function readIntent({ work, storage }: IntentOptions, graph: RuleGraph): Parsed<Intent> {
  const kept: Intent = storage === true ? { storage } : {};
  if (work === undefined) return understood(kept);
  const outing = parseWork(work === true ? '' : work);
  if (!outing.ok) return refused(outing.problem);
  const stray = strayName(outing.value, graph);
  return stray === undefined ? understood({ ...kept, outing: outing.value }) : refused(stray);
}

function strayName({ duties = [], attachments = [] }: IntendedOuting, graph: RuleGraph): string | undefined {
  return firstStray('duty', duties, graph.duties) ?? firstStray('attachment', attachments, graph.attachments);
}

function firstStray(kind: string, names: readonly string[], things: readonly { readonly id: string }[]): string | undefined {
  const known = things.map(({ id }) => id);
  const name = names.find((each) => !known.includes(each));
  return name === undefined ? undefined : noSuch(kind, name, known);
}
