import { renderVisits } from '../../../render/outlook/visits.js';
import { addAheadOptions, type AheadOptions } from '../ahead-options.js';
import { addAnswerOptions, type AnswerOptions } from '../answer-options.js';
import type { CommandHost } from '../command-host.js';
import { jsonText } from '../json-text.js';
import { openOutlook } from '../open-outlook.js';
import { addShelfOptions, type ShelfOptions } from '../shelf-options.js';
import { styleFor } from '../style-for.js';
import { visitsAnswer } from '../visits-answer.js';

type VisitsOptions = AnswerOptions & AheadOptions & ShelfOptions;

const examples = `
Examples:
  duewright visits tractor.due tractor.jsonl
  duewright visits tractor.due tractor.jsonl --until 2026-09-30 --have "2 oil-filter, 10 L engine-oil-15w40"`;

/** `duewright visits`: which tasks to do together, and what each visit takes. */
export function addVisits(host: CommandHost): void {
  const command = host.program
    .command('visits')
    .summary('propose which tasks to do together, and what that takes')
    .description(
      'Proposes the fewest visits for what falls due by SCHEDULE and LOGBOOK, then the least opening up, then the least given away.',
    )
    .argument('<schedule>', 'the schedule of the machine model')
    .argument('<logbook>', 'the logbook of the machine')
    .addHelpText('after', examples);
  addAnswerOptions(addShelfOptions(addAheadOptions(command)), 'visits.schema.json').action(
    (schedule: string, logbook: string, options: VisitsOptions) => runVisits(host, schedule, logbook, options),
  );
}

async function runVisits(host: CommandHost, schedule: string, logbook: string, options: VisitsOptions): Promise<void> {
  const style = styleFor(host.shell, options);
  const opened = await openOutlook(host, style, schedule, logbook, options);
  if (opened === undefined) return;
  const { outlook, graph } = opened;
  host.shell.out(options.json === true ? jsonText(visitsAnswer(outlook)) : `${renderVisits(outlook.visits, outlook, graph, style)}\n`);
}
