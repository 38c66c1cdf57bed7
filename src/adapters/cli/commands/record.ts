import { fileLogbook } from '../../logbook/file-logbook.js';
import type { Recording } from '../../logbook/recording/complete-draft.js';
import { RECORD_EXAMPLES, parseRecordWords } from '../../logbook/recording/parse-record-words.js';
import { appendDraft, orComplain } from '../append-drafts.js';
import { askAnswers } from '../ask-answers.js';
import type { CommandHost } from '../command-host.js';
import { complain } from '../complain.js';
import { exitCode } from '../exit-code.js';
import { openSchedule } from '../open-schedule.js';
import { styleFor } from '../style-for.js';

interface RecordOptions {
  readonly acceptChanges?: true;
}

const help = `
What was done is said in a few words, a verb first. Clauses may follow in any order: on DAY [TIME], at METER, by NAME, note "TEXT",
reads GAUGE VALUE; after done also used AMOUNT SUPPLY and took MINUTES. A meter value without a name is on the schedule's first meter.

  ${RECORD_EXAMPLES.join('\n  ')}

Examples:
  duewright record tractor.due tractor.jsonl hours 1302.4
  duewright record tractor.due tractor.jsonl done change-engine-oil at 1304 used 6.6 engine-oil-15w40 by Kim

Where something needed is missing it is asked for, if a terminal is there. Nothing is ever erased: \`void ID\` takes an entry back.`;

/** `duewright record`: one entry from few words, checked against the schedule, written so that it cannot be lost. */
export function addRecord(host: CommandHost): void {
  host.program
    .command('record')
    .summary('write into the logbook what was done, read or found')
    .description('Checks a few WORDS against the SCHEDULE and writes them into the LOGBOOK, which is made if it is not there.')
    .argument('<schedule>', 'the schedule of the machine model')
    .argument('<logbook>', 'the logbook of the machine')
    .argument('<words...>', 'what happened: a verb and what belongs to it')
    .option('--accept-changes', 'go on although lines of the logbook were changed after they were written; they stay marked')
    // A gauge may read -5.
    .allowUnknownOption()
    .addHelpText('after', help)
    .action((schedule: string, logbook: string, words: string[], options: RecordOptions) =>
      runRecord(host, schedule, logbook, words, options),
    );
}

async function runRecord(
  host: CommandHost,
  schedule: string,
  path: string,
  words: readonly string[],
  options: RecordOptions,
): Promise<void> {
  const graph = await openSchedule(host, styleFor(host.shell), schedule);
  if (graph === undefined) return;
  const said = parseRecordWords(graph, words);
  if (said.kind === 'not-understood') return refuse(host, said.problem);
  const store = fileLogbook(path);
  const logbook = await orComplain(host, () => store.read());
  if (logbook === undefined) return;
  const recording = await askAnswers(host.shell, { graph, entries: logbook.entries, now: host.shell.now() }, said.draft);
  if (recording.kind !== 'ready') return refuse(host, ...whyNot(recording));
  const isNew = logbook.lines.length === 0 && logbook.problems.length === 0;
  complain(host.shell, ...(isNew ? [`This is the first entry of a new logbook, \`${path}\`.`] : []), ...recording.remarks);
  await appendDraft(host, store, graph, recording.draft, { acceptChanges: options.acceptChanges === true });
}

function whyNot(recording: Exclude<Recording, { kind: 'ready' }>): readonly string[] {
  if (recording.kind === 'refused') return recording.problems;
  const needed = recording.questions.filter((question) => question.needed);
  return [...needed.map(({ ask, slot }) => `Missing (${slot}): ${ask}`), 'Nothing was recorded.'];
}

function refuse({ shell, end }: CommandHost, ...problems: readonly string[]): void {
  complain(shell, ...problems);
  end(exitCode.usage);
}
