import { renderAhead } from '../../../render/outlook/ahead.js';
import { addAheadOptions, type AheadOptions } from '../ahead-options.js';
import { addAnswerOptions, type AnswerOptions } from '../answer-options.js';
import type { CommandHost } from '../command-host.js';
import { jsonText } from '../json-text.js';
import { openOutlook } from '../open-outlook.js';
import { styleFor } from '../style-for.js';

const examples = `
Every date is a range, with the rule that will decide and the readings that it rests on. What the record does not tell is said to be unknown.

Examples:
  duewright ahead tractor.due tractor.jsonl
  duewright ahead tractor.due tractor.jsonl --until 2026-12-31 --json`;

/** `duewright ahead`: when each task will fall due, and how the machine is used. */
export function addAhead(host: CommandHost): void {
  const command = host.program
    .command('ahead')
    .summary('say when each task will fall due, and what decides')
    .description(
      'Looks ahead from the LOGBOOK: when each task of the SCHEDULE falls due, how the machine is used, what goes of its fluids.',
    )
    .argument('<schedule>', 'the schedule of the machine model')
    .argument('<logbook>', 'the logbook of the machine')
    .addHelpText('after', examples);
  addAnswerOptions(addAheadOptions(command), 'outlook.schema.json').action(
    (schedule: string, logbook: string, options: AnswerOptions & AheadOptions) => runAhead(host, schedule, logbook, options),
  );
}

async function runAhead(host: CommandHost, schedule: string, logbook: string, options: AnswerOptions & AheadOptions): Promise<void> {
  const style = styleFor(host.shell, options);
  const opened = await openOutlook(host, style, schedule, logbook, options);
  if (opened === undefined) return;
  host.shell.out(options.json === true ? jsonText(opened.outlook) : `${renderAhead(opened.outlook, opened.graph, style)}\n`);
}
