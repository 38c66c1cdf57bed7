import { ratesOfUse } from '../../../ahead.js';
import { assessTimeline, readTimeline, type Verdict } from '../../../engine.js';
import { renderDueList } from '../../../render/due-list.js';
import type { CommandHost } from '../command-host.js';
import { type ExitCode, exitCode } from '../exit-code.js';
import { addIntentOptions, type IntentOptions } from '../intent-options.js';
import { jsonText } from '../json-text.js';
import { openQuestion } from '../open-question.js';
import { workExample } from '../parse-work.js';
import { styleFor } from '../style-for.js';
import { addAnswerOptions, type AnswerOptions } from '../answer-options.js';

type DueOptions = AnswerOptions & IntentOptions;

const examples = `
Examples:
  duewright due tractor.due tractor.jsonl
  duewright due tractor.due tractor.jsonl --work "${workExample}"
  duewright due tractor.json - --on "2026-06-15 07:30" --json < tractor.jsonl

Ends with 1 if the machine is held, or if it cannot be told whether it is.`;

/** `duewright due`: what is due before the engine is started. */
export function addDue(host: CommandHost): void {
  const command = host.program
    .command('due')
    .summary('say what is due, and whether the machine may be used')
    .description('Says what a machine is due for, by its SCHEDULE and its LOGBOOK, and whether it may be used.')
    .argument('<schedule>', 'the schedule of the machine model')
    .argument('<logbook>', 'the logbook of the machine')
    .addHelpText('after', examples);
  addAnswerOptions(addIntentOptions(command), 'assessment.schema.json').action((schedule: string, logbook: string, options: DueOptions) =>
    runDue(host, schedule, logbook, options),
  );
}

async function runDue(host: CommandHost, schedule: string, logbook: string, options: DueOptions): Promise<void> {
  const style = styleFor(host.shell, options);
  const question = await openQuestion(host, style, schedule, logbook, options);
  if (question === undefined) return;
  const { graph, entries, now, intent } = question;
  const timeline = readTimeline(entries, graph, now);
  // With the rates of use the part that is named as governing is the one that `why` names.
  const assessment = assessTimeline(graph, timeline, now, { intent, rates: ratesOfUse(timeline.meters, now, graph.meters) });
  host.shell.out(options.json === true ? jsonText(assessment) : `${renderDueList(assessment, graph, style, { timeline })}\n`);
  host.end(codes[assessment.verdict]);
}

/** That work is due is what was asked for; that the machine must not be used is what a script has to know. */
const codes: Readonly<Record<Verdict, ExitCode>> = {
  ready: exitCode.fine,
  'work-due-first': exitCode.fine,
  'cannot-tell': exitCode.no,
  held: exitCode.no,
};
