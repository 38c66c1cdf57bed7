import { renderComparison } from '../../../render/comparison.js';
import { type AnswerOptions, addAnswerOptions } from '../answer-options.js';
import type { CommandHost } from '../command-host.js';
import { complain } from '../complain.js';
import { exitCode } from '../exit-code.js';
import { hostSha256 } from '../host-sha256.js';
import { jsonText } from '../json-text.js';
import { openLogbook } from '../open-logbook.js';
import { openSchedule } from '../open-schedule.js';
import { parseWhen } from '../parse-when.js';
import { styleFor } from '../style-for.js';

interface ChangesOptions extends AnswerOptions {
  readonly on?: string;
}

const examples = `
Layout, comments and order change nothing. The fingerprints of meaning are for pinning: they change only when what a schedule says does.

Examples:
  duewright changes tractor-3.due tractor-4.due
  duewright changes tractor-3.due tractor-4.due tractor.jsonl other.jsonl --on 2026-06-15`;

/** `duewright changes`: what a new edition changes, and for whom. */
export function addChanges(host: CommandHost): void {
  const command = host.program
    .command('changes')
    .summary('compare two editions of a schedule by what they mean')
    .description(
      'Says which tasks are new, gone, tighter, looser or counted from elsewhere in NEW, and what moves for the machines in the field.',
    )
    .argument('<old>', 'the edition in the field')
    .argument('<new>', 'the edition to come')
    .argument('[logbook...]', 'logbooks of machines in the field')
    .option('--on <when>', 'a date, or a date and a time in quotes, instead of now')
    .addHelpText('after', examples);
  addAnswerOptions(command, 'comparison.schema.json').action((old: string, fresh: string, logbooks: string[], options: ChangesOptions) =>
    runChanges(host, [old, fresh], logbooks, options),
  );
}

async function runChanges(
  host: CommandHost,
  [old, fresh]: readonly [string, string],
  logbooks: readonly string[],
  options: ChangesOptions,
): Promise<void> {
  const style = styleFor(host.shell, options);
  const now = options.on === undefined ? { ok: true as const, value: host.shell.now() } : parseWhen(options.on);
  if (!now.ok) return refuse(host, now.problem, exitCode.usage);
  const machines = [];
  for (const path of logbooks) {
    const opened = openLogbook(path);
    if (!opened.ok) return refuse(host, opened.problem, exitCode.input);
    complain(host.shell, ...opened.value.remarks);
    machines.push({ name: path, entries: opened.value.entries });
  }
  const before = await openSchedule(host, style, old);
  const after = before === undefined ? undefined : await openSchedule(host, style, fresh);
  if (before === undefined || after === undefined) return;
  const { compareEditions } = await import('../../../index.js');
  const comparison = compareEditions(before, after, machines, now.value, { sha256: await hostSha256() });
  host.shell.out(options.json === true ? jsonText(comparison) : `${renderComparison(comparison, { before, after }, style)}\n`);
}

function refuse({ shell, end }: CommandHost, problem: string, code: typeof exitCode.usage | typeof exitCode.input): void {
  complain(shell, problem);
  end(code);
}
