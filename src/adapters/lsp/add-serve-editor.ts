import type { CommandHost } from '../cli/command-host.js';
import { complain } from '../cli/complain.js';
import { exitCode } from '../cli/exit-code.js';
import { parseWhen } from '../cli/parse-when.js';

interface ServeOptions {
  readonly on?: string;
}

const help = `
An editor starts it and talks to it over the standard input and output, by the Language Server Protocol 3.17; docs/editors.md says how to set
two editors up. A logbook beside a schedule (tractor.logbook.jsonl beside tractor.due) lets a task say where it stands today.`;

/** `duewright serve-editor`: helps an editor with schedules while they are written. */
export function addServeEditor(host: CommandHost): void {
  host.program
    .command('serve-editor')
    .summary('help an editor with schedules')
    .description('Tells an editor what is wrong while a schedule is written, what can be written next, and what it means.')
    .option('--on <when>', 'the day that counts as today (today, if not given)')
    // Editors add it of themselves.
    .option('--stdio', 'talk over the standard streams, which it does anyhow')
    .addHelpText('after', help)
    .action((options: ServeOptions) => runServeEditor(host, options));
}

async function runServeEditor({ shell, end }: CommandHost, { on }: ServeOptions): Promise<void> {
  const when = on === undefined ? undefined : parseWhen(on);
  if (when?.ok === false) {
    complain(shell, when.problem);
    return end(exitCode.usage);
  }
  const { serveEditor } = await import('./serve-editor.js');
  await serveEditor({ input: process.stdin, output: process.stdout, now: when === undefined ? shell.now : () => when.value });
}
