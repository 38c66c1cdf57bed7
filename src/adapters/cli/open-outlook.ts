import { lookAhead } from '../../ahead.js';
import type { Outlook } from '../../ahead.js';
import type { Style } from '../../render/style.js';
import { type AheadOptions, readUntil } from './ahead-options.js';
import type { CommandHost } from './command-host.js';
import { complain } from './complain.js';
import { exitCode } from './exit-code.js';
import { openQuestion, type Question } from './open-question.js';
import { readShelf, type Shelf, type ShelfOptions } from './shelf-options.js';

/** What the commands that look ahead start from. */
export interface OpenedOutlook extends Question {
  readonly outlook: Outlook;
  readonly shelf: Shelf;
}

/** Opens SCHEDULE and LOGBOOK and looks ahead. Where that fails it says so, ends the command and gives undefined. */
export async function openOutlook(
  host: CommandHost,
  style: Style,
  schedule: string,
  logbook: string,
  options: AheadOptions & ShelfOptions,
): Promise<OpenedOutlook | undefined> {
  const question = await openQuestion(host, style, schedule, logbook, options.on === undefined ? {} : { on: options.on });
  if (question === undefined) return undefined;
  const { graph, entries, now } = question;
  const days = readUntil(options, now);
  const shelf = readShelf(options, graph);
  if (days.ok && shelf.ok)
    return { ...question, shelf: shelf.value, outlook: lookAhead(graph, entries, now, { days: days.value, shelf: shelf.value }) };
  for (const read of [days, shelf]) if (!read.ok) complain(host.shell, read.problem);
  host.end(exitCode.usage);
  return undefined;
}
