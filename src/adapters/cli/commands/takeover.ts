import { assertNever } from '../../../base/assert-never.js';
import { safeText } from '../../../render/safe-text.js';
import { fileLogbook } from '../../logbook/file-logbook.js';
import type { LogbookStore } from '../../logbook/logbook-store.js';
import { completeDraft } from '../../logbook/recording/complete-draft.js';
import type { RecordingContext } from '../../logbook/recording/complete-draft.js';
import { takeoverAnswer, takeoverSteps } from '../../logbook/recording/takeover.js';
import type { TakeoverStep } from '../../logbook/recording/takeover.js';
import { appendDraft, orComplain } from '../append-drafts.js';
import type { CommandHost } from '../command-host.js';
import { complain } from '../complain.js';
import { exitCode } from '../exit-code.js';
import { openSchedule } from '../open-schedule.js';
import { styleFor } from '../style-for.js';

const help = `
Asks what is known of the machine, its meters and each task that has no record. Answer with a day, what the meter showed then, or
both; Enter leaves it open, and it stays unrecorded: that is said as it is, and asks to be done. What you answer is written at once as
a statement, never as work done, so you can stop at any question and go on another day.

Examples:
  duewright takeover tractor.due tractor.jsonl`;

/** `duewright takeover`: the first baseline of a machine that came without records. */
export function addTakeover(host: CommandHost): void {
  host.program
    .command('takeover')
    .summary('ask what is known of a machine that came without records')
    .description('Goes through the SCHEDULE and asks what is known and not yet in the LOGBOOK. Without a terminal it lists the questions.')
    .argument('<schedule>', 'the schedule of the machine model')
    .argument('<logbook>', 'the logbook of the machine')
    .addHelpText('after', help)
    .action((schedule: string, logbook: string) => runTakeover(host, schedule, logbook));
}

async function runTakeover(host: CommandHost, schedule: string, path: string): Promise<void> {
  const graph = await openSchedule(host, styleFor(host.shell), schedule);
  if (graph === undefined) return;
  const store = fileLogbook(path);
  const left = new Set<string>();
  for (;;) {
    const logbook = await orComplain(host, () => store.read());
    if (logbook === undefined) return;
    const context = { graph, entries: logbook.entries, now: host.shell.now() };
    const steps = takeoverSteps(context).filter((step) => !left.has(keyOf(step)));
    if (host.shell.ask === undefined) return list(host, steps);
    const [step] = steps;
    if (step === undefined) break;
    const went = await askStep(host, host.shell.ask, store, context, step);
    if (went === 'stop') break;
    if (went === 'left') left.add(keyOf(step));
  }
  host.shell.out(left.size === 0 ? 'Nothing is left to ask.\n' : `${left.size} left open. Run it again to go on.\n`);
}

type Ask = NonNullable<CommandHost['shell']['ask']>;

async function askStep(
  host: CommandHost,
  ask: Ask,
  store: LogbookStore,
  context: RecordingContext,
  step: TakeoverStep,
): Promise<'said' | 'left' | 'stop'> {
  const reason = step.kind === 'task' && step.reason !== null ? `  ${safeText(step.reason)}\n` : '';
  const words = await ask(`${reason}${safeText(step.ask)} (Enter: not known) `);
  if (words === null) return 'stop';
  if (words.trim() === '') return 'left';
  const said = takeoverAnswer(step, words);
  const recording = said.kind === 'said' ? completeDraft(context, said.draft) : { kind: 'refused' as const, problems: [said.problem] };
  if (recording.kind === 'ready') {
    complain(host.shell, ...recording.remarks);
    return (await appendDraft(host, store, context.graph, recording.draft)) ? 'said' : 'stop';
  }
  complain(host.shell, ...(recording.kind === 'refused' ? recording.problems : []));
  return 'said';
}

function list({ shell, end }: CommandHost, steps: readonly TakeoverStep[]): void {
  for (const step of steps) shell.out(`${safeText(step.ask)}\n`);
  if (steps.length === 0) shell.out('Nothing is left to ask.\n');
  else end(exitCode.no);
}

function keyOf(step: TakeoverStep): string {
  switch (step.kind) {
    case 'machine':
      return 'machine';
    case 'meter':
      return `meter ${step.meter}`;
    case 'task':
      return `task ${step.task}`;
    default:
      return assertNever(step);
  }
}
