import { ratesOfUse } from '../../../ahead.js';
import { assessTimeline, explain, readTimeline } from '../../../engine.js';
import { renderWhy } from '../../../render/why.js';
import type { CommandHost } from '../command-host.js';
import { addIntentOptions, type IntentOptions } from '../intent-options.js';
import { jsonText } from '../json-text.js';
import { openQuestion } from '../open-question.js';
import { openTask } from '../open-task.js';
import { styleFor } from '../style-for.js';
import { addAnswerOptions, type AnswerOptions } from '../answer-options.js';

type WhyOptions = AnswerOptions & IntentOptions & { readonly all?: boolean };

const examples = `
Examples:
  duewright why tractor.due tractor.jsonl change-engine-oil
  duewright why tractor.due tractor.jsonl clean-radiator-screen --work "3 h in tall-growth" --json`;

/** `duewright why`: the reasons for one task, from the schedule's line to the logbook's entries. */
export function addWhy(host: CommandHost): void {
  const command = host.program
    .command('why')
    .summary('say why a task is due, or why not yet')
    .description('Says why a TASK is due or not: the rule, the numbers, the entries of the logbook, and what would change it.')
    .argument('<schedule>', 'the schedule of the machine model')
    .argument('<logbook>', 'the logbook of the machine')
    .argument('<task>', 'a task of the schedule, by its name or its title')
    .option('--all', 'tell every entry of the logbook that it rests on, however many')
    .addHelpText('after', examples);
  addAnswerOptions(addIntentOptions(command), 'explanation.schema.json').action(
    (schedule: string, logbook: string, task: string, options: WhyOptions) => runWhy(host, schedule, logbook, task, options),
  );
}

async function runWhy(host: CommandHost, schedule: string, logbook: string, name: string, options: WhyOptions): Promise<void> {
  const style = styleFor(host.shell, options);
  const question = await openQuestion(host, style, schedule, logbook, options);
  const task = question === undefined ? undefined : openTask(host, question.graph, name);
  if (question === undefined || task === undefined) return;
  const { graph, entries, now, intent } = question;
  const timeline = readTimeline(entries, graph, now);
  const rates = ratesOfUse(timeline.meters, now, graph.meters);
  const explanation = explain(graph, assessTimeline(graph, timeline, now, { intent, rates }), entries, task.id, { rates });
  host.shell.out(
    options.json === true ? jsonText(explanation) : `${renderWhy(explanation, style, { all: options.all === true, timeline })}\n`,
  );
}
