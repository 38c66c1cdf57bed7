import { namesOf } from '../../engine.js';
import type { RuleGraph } from '../../engine.js';
import { entryInWords } from '../../render/entry-in-words.js';
import { LogbookError } from '../logbook/logbook-error.js';
import type { LogbookStore } from '../logbook/logbook-store.js';
import type { AppendOptions, Draft } from '../logbook/plan-append.js';
import type { CommandHost } from './command-host.js';
import { complain } from './complain.js';
import { exitCode } from './exit-code.js';

/**
 * Records a draft and says what stands in the logbook now. Gives false, after saying why and ending the command, if nothing was
 * recorded.
 */
export async function appendDraft(
  host: CommandHost,
  store: LogbookStore,
  graph: RuleGraph,
  draft: Draft,
  options?: AppendOptions,
): Promise<boolean> {
  const receipts = await orComplain(host, () => store.append([draft], options));
  if (receipts === undefined) return false;
  for (const { id } of receipts)
    host.shell.out(`${draft.on} ${entryInWords({ ...draft, id }, namesOf(graph))} (${id})\n`.replaceAll(/ {2,}/g, ' '));
  return true;
}

/** Does something with a logbook; where the world stands in the way, says why and what to do, ends the command and gives undefined. */
export async function orComplain<T>(host: CommandHost, work: () => Promise<T>): Promise<T | undefined> {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof LogbookError)) throw error;
    complain(host.shell, `${error.message}.`, error.help);
    host.end(exitCode.input);
    return undefined;
  }
}
