import { renderRuleGraphText } from '../../../render/rule-graph-text.js';
import type { CommandHost } from '../command-host.js';
import { complain } from '../complain.js';
import { exitCode } from '../exit-code.js';
import { jsonText } from '../json-text.js';
import { openSchedule } from '../open-schedule.js';
import { openTask } from '../open-task.js';
import { taskRules } from '../task-rules.js';
import { styleFor } from '../style-for.js';
import { addAnswerOptions, type AnswerOptions } from '../answer-options.js';
import { writeFile } from '../write-file.js';

interface RulesOptions extends AnswerOptions {
  readonly html?: string;
}

const examples = `
Examples:
  duewright rules tractor.due change-engine-oil
  duewright rules tractor.due change-engine-oil --html oil.html`;

/** `duewright rules`: the rules of one task, drawn. */
export function addRules(host: CommandHost): void {
  const command = host.program
    .command('rules')
    .summary('draw the rules of a task')
    .description('Draws how the rules of a TASK hang together, as text or as a page that opens in any browser.')
    .argument('<schedule>', 'the schedule of the machine model')
    .argument('<task>', 'a task of the schedule, by its name or its title')
    .option('--html <file>', 'write a page with the drawing instead')
    .addHelpText('after', examples);
  addAnswerOptions(command, 'task-rules.schema.json').action((schedule: string, task: string, options: RulesOptions) =>
    runRules(host, schedule, task, options),
  );
}

async function runRules(host: CommandHost, schedule: string, name: string, options: RulesOptions): Promise<void> {
  const style = styleFor(host.shell, options);
  const graph = await openSchedule(host, style, schedule);
  const task = graph === undefined ? undefined : openTask(host, graph, name);
  if (graph === undefined || task === undefined) return;
  if (options.html === undefined) {
    host.shell.out(options.json === true ? jsonText(taskRules(graph, task)) : `${renderRuleGraphText(graph, task.id, style)}\n`);
    return;
  }
  // Laying a drawing out takes a library that no other answer waits for.
  const { renderRuleGraphHtml } = await import('../../../render/rule-graph-html.js');
  const written = writeFile(options.html, renderRuleGraphHtml(graph, task.id));
  if (written.ok) return;
  complain(host.shell, written.problem);
  host.end(exitCode.input);
}
