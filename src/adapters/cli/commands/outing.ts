import { duringOuting, type IntendedOuting } from '../../../engine.js';
import { renderOuting } from '../../../render/outing.js';
import { addAnswerOptions, type AnswerOptions } from '../answer-options.js';
import type { CommandHost } from '../command-host.js';
import { complain } from '../complain.js';
import { exitCode } from '../exit-code.js';
import { addIntentOptions, type IntentOptions } from '../intent-options.js';
import { jsonText } from '../json-text.js';
import { openQuestion } from '../open-question.js';
import { workExample } from '../parse-work.js';
import { styleFor } from '../style-for.js';

type OutingOptions = AnswerOptions & IntentOptions;

const examples = `
Examples:
  duewright outing tractor.due tractor.jsonl --work "${workExample}"`;

/** `duewright outing`: what to do before, during and after the work that is intended, by the clock. */
export function addOuting(host: CommandHost): void {
  const command = host.program
    .command('outing')
    .summary('say what falls due before, during and after intended work')
    .description('Plays intended work through: what to do before it, what falls due during it and when by the clock, what to do after it.')
    .argument('<schedule>', 'the schedule of the machine model')
    .argument('<logbook>', 'the logbook of the machine')
    .addHelpText('after', examples);
  addAnswerOptions(addIntentOptions(command), 'outing.schema.json').action((schedule: string, logbook: string, options: OutingOptions) =>
    runOuting(host, schedule, logbook, options),
  );
}

async function runOuting(host: CommandHost, schedule: string, logbook: string, options: OutingOptions): Promise<void> {
  const style = styleFor(host.shell, options);
  const question = await openQuestion(host, style, schedule, logbook, options);
  if (question === undefined) return;
  const { graph, entries, now, intent } = question;
  const { outing } = intent;
  if (outing?.hours === undefined) {
    complain(host.shell, `Say how long the work is to last, like \`--work "${workExample}"\`.`);
    host.end(exitCode.usage);
    return;
  }
  const intended: IntendedOuting = { ...outing, hours: outing.hours };
  const outlook = duringOuting(graph, entries, now, intended);
  host.shell.out(options.json === true ? jsonText(outlook) : `${renderOuting(outlook, graph, style)}\n`);
  host.end(outlook.verdict === 'held' || outlook.verdict === 'cannot-tell' ? exitCode.no : exitCode.fine);
}
