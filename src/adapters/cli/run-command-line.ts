import { Command, CommanderError } from 'commander';
import type { CommandHost } from './command-host.js';
import { addCheck } from './commands/check.js';
import { addCompile } from './commands/compile.js';
import { addDue } from './commands/due.js';
import { addOuting } from './commands/outing.js';
import { addRules } from './commands/rules.js';
import { addWhy } from './commands/why.js';
import { type ExitCode, exitCode } from './exit-code.js';
import { safeSigns } from '../../render/safe-text.js';
import type { Shell } from './shell.js';
import { styleFor, wantsColour } from './style-for.js';

/** Those that answer a question, in the order in which help lists them. */
const answering = { due: addDue, why: addWhy, outing: addOuting, check: addCheck, rules: addRules, compile: addCompile } as const;

function isAnswering(name: string): name is keyof typeof answering {
  return Object.hasOwn(answering, name);
}

const epilogue = `
A SCHEDULE is a .due text, or the .json that \`duewright compile\` wrote. A LOGBOOK holds one JSON entry a line; - is the standard input.

Ends with 0 if nothing stands in the way, 1 if the answer is no (errors in the schedule; a machine that is held, or cannot be told to be
safe), 2 if the command line makes no sense, 3 if a file cannot be used.

Examples:
  duewright check schedules/orchard-tractor.due
  duewright due tractor.due tractor.jsonl --work "3 h in tall-growth with flail-mower from 08:00"
  duewright why tractor.due tractor.jsonl change-engine-oil

The machine's own manual, local rules and qualified mechanics come before anything that a schedule says.`;

/** Runs one command line (without `node` and the script) in a shell, and says how the process is to end. Never throws. */
export async function runCommandLine(args: readonly string[], shell: Shell): Promise<ExitCode> {
  let code: ExitCode = exitCode.fine;
  const program = createProgram(shell);
  const host: CommandHost = { program, shell, end: (ended) => (code = ended) };
  try {
    const [asked = ''] = args;
    // Whoever asks what is due before the engine is started does not wait for the other commands.
    if (isAnswering(asked)) answering[asked](host);
    else {
      for (const add of Object.values(answering)) add(host);
      const [{ outlookCommands }, { authoringCommands }, { logbookCommands }] = await Promise.all([
        import('./outlook-commands.js'),
        import('./authoring-commands.js'),
        import('./logbook-commands.js'),
      ]);
      for (const add of [...outlookCommands, ...authoringCommands, ...logbookCommands]) add(host);
    }
    await program.parseAsync(args, { from: 'user' });
    return code;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? exitCode.fine : exitCode.usage;
    shell.err(`duewright: this is a fault of the program, not of yours: ${safeSigns(describe(error))}\n`);
    return exitCode.fault;
  }
}

function createProgram(shell: Shell): Command {
  const width = Math.min(styleFor(shell).width, 120);
  return new Command('duewright')
    .description('Says what inspection and service a machine is due for, why, and what follows.')
    .version('0.1.0', '-V, --version', 'say the version')
    .helpOption('-h, --help', 'say how it is used')
    .helpCommand('help [command]', 'say how a command is used')
    .addHelpText('after', epilogue)
    .configureOutput({
      writeOut: shell.out,
      writeErr: shell.err,
      outputError: (text, write) => write(safeSigns(text.replace(/^error: /, 'duewright: '))),
      getOutHelpWidth: () => width,
      getErrHelpWidth: () => width,
      getOutHasColors: () => wantsColour(shell),
      getErrHasColors: () => wantsColour(shell),
    })
    .exitOverride();
}

function describe(error: unknown): string {
  return error instanceof Error ? (error.stack ?? error.message) : String(error);
}
