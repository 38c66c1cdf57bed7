import type { ChainHead } from '../../logbook/logbook.js';
import { asLogbookError } from '../../logbook/logbook-error.js';
import { nodeDisk } from '../../logbook/node-disk.js';
import { readLogbookBytes } from '../../logbook/read-logbook.js';
import { verifyLogbook } from '../../logbook/verify-logbook.js';
import type { Verification } from '../../logbook/verify-logbook.js';
import { orComplain } from '../append-drafts.js';
import type { CommandHost } from '../command-host.js';
import { complain } from '../complain.js';
import { describeLogbookProblem } from '../describe-logbook-problem.js';
import { exitCode } from '../exit-code.js';

interface VerifyOptions {
  readonly head?: string;
}

const help = `
Each line that is written carries a number and a hash over itself and all before it, so that a later change shows. That lines were cut
off at the end shows only against a head that you noted elsewhere: the last line of this command's answer.

Examples:
  duewright verify tractor.jsonl
  duewright verify tractor.jsonl --head 41:9f86d081…

Ends with 1 if something was changed or cut off and nobody has accepted it.`;

/** `duewright verify`: whether a logbook stands as it was written. */
export function addVerify(host: CommandHost): void {
  host.program
    .command('verify')
    .summary('say whether a logbook stands as it was written')
    .description('Checks the numbers and hashes of a LOGBOOK, line by line.')
    .argument('<logbook>', 'the logbook to check')
    .option('--head <number:hash>', 'a head noted earlier, which must still stand in it')
    .addHelpText('after', help)
    .action((logbook: string, options: VerifyOptions) => runVerify(host, logbook, options));
}

async function runVerify(host: CommandHost, path: string, options: VerifyOptions): Promise<void> {
  const noted = options.head === undefined ? undefined : parseHead(options.head);
  if (noted === null) {
    complain(host.shell, `\`${options.head ?? ''}\` is not a head: it is a number, a colon, and 64 digits of 0 to 9 and a to f.`);
    return host.end(exitCode.usage);
  }
  const bytes = await orComplain(host, () => nodeDisk.read(path).catch((error: unknown) => Promise.reject(asLogbookError(path, error))));
  if (bytes === undefined) return;
  if (bytes === null) {
    complain(host.shell, `There is no logbook \`${path}\`.`);
    return host.end(exitCode.input);
  }
  const logbook = readLogbookBytes(bytes);
  const verification = verifyLogbook(logbook, noted);
  complain(host.shell, ...verification.problems.map((problem) => describeLogbookProblem(path, problem)));
  host.shell.out(`${words(verification)}\n`);
  if (verification.verdict === 'changed' || verification.verdict === 'cut-short') host.end(exitCode.no);
}

const verdicts: Readonly<Record<Verification['verdict'], string>> = {
  intact: 'Every chained line stands as it was written.',
  accepted: 'Lines were changed after they were written, and the changes were accepted later.',
  changed: 'Something was changed after it was written.',
  'cut-short': 'The head that was noted is not in it: lines are missing, or it is another logbook.',
};

function words({ verdict, chained, plain, uncovered, head }: Verification): string {
  const count = `${chained} chained, ${plain} written by hand${uncovered === 0 ? '' : `; ${uncovered} not covered until the next entry is recorded`}.`;
  return [verdicts[verdict], count, ...(head === null ? [] : [`Head ${head.seq}:${head.hash}`])].join('\n');
}

function parseHead(text: string): ChainHead | null {
  const [, seq, hash] = /^(\d{1,9}):([0-9a-f]{64})$/.exec(text) ?? [];
  return seq === undefined || hash === undefined ? null : { seq: Number(seq), hash };
}
