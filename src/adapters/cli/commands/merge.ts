import { safeText } from '../../../render/safe-text.js';
import { fileLogbook } from '../../logbook/file-logbook.js';
import { mergeLogbooks } from '../../logbook/merge-logbooks.js';
import { asWritten } from '../../logbook/strange-members.js';
import type { Merge } from '../../logbook/merge-logbooks.js';
import { orComplain } from '../append-drafts.js';
import type { CommandHost } from '../command-host.js';
import { complain } from '../complain.js';
import { describeLogbookProblem } from '../describe-logbook-problem.js';
import { exitCode } from '../exit-code.js';
import { openLogbook } from '../open-logbook.js';

interface MergeOptions {
  readonly acceptChanges?: true;
}

const help = `
Entries are told apart by their ids. What stands in LOGBOOK is not touched: what it lacks is appended. Where one id stands for two
different entries, both are kept, the second under an id of its own, and the command ends with 1: look which one holds, and void the
other.

Examples:
  duewright merge tractor.jsonl from-the-phone.jsonl`;

/** `duewright merge`: two copies of one logbook that grew apart, without loss. */
export function addMerge(host: CommandHost): void {
  host.program
    .command('merge')
    .summary('take over what another copy of the logbook has')
    .description('Appends to LOGBOOK every entry of OTHER that it lacks. OTHER is only read.')
    .argument('<logbook>', 'the logbook to complete')
    .argument('<other>', 'another copy of it')
    .option('--accept-changes', 'go on although lines of LOGBOOK were changed after they were written; they stay marked')
    .addHelpText('after', help)
    .action((logbook: string, other: string, options: MergeOptions) => runMerge(host, logbook, other, options));
}

async function runMerge(host: CommandHost, path: string, otherPath: string, options: MergeOptions): Promise<void> {
  const theirs = openLogbook(otherPath);
  if (!theirs.ok) {
    complain(host.shell, theirs.problem);
    return host.end(exitCode.input);
  }
  const store = fileLogbook(path);
  const merged = await orComplain(host, async () => {
    const ours = await store.read();
    complain(host.shell, ...ours.problems.map((problem) => describeLogbookProblem(path, problem)), ...theirs.value.remarks);
    const merge = mergeLogbooks(ours.entries, theirs.value.entries);
    const written = asWritten(theirs.value.lines);
    const idThere = new Map(merge.conflicts.map(({ id, kept }) => [kept, id]));
    const toAppend = merge.toAppend.map((entry) => written(entry, idThere.get(entry.id)));
    await store.append(toAppend, { acceptChanges: options.acceptChanges === true });
    return merge;
  });
  if (merged === undefined) return;
  const count = merged.toAppend.length;
  host.shell.out(`${count === 0 ? 'Nothing' : String(count)} appended; ${merged.entries.length} entries now.\n`);
  if (merged.conflicts.length > 0) host.end(exitCode.no);
  complain(host.shell, ...conflictWords(merged));
}

function conflictWords({ conflicts, uncertain }: Merge): readonly string[] {
  return [
    ...conflicts.map(
      ({ id, kept }) =>
        `The id \`${safeText(id)}\` stands for two different entries; the other copy's is kept as \`${safeText(kept)}\`. Void the one that is wrong.`,
    ),
    ...uncertain.map(
      ({ id, kind }) => `The entry \`${safeText(id)}\` (${kind}) names an id that stands for two entries: look which one is meant.`,
    ),
  ];
}
