import type { Entry, Intent, RuleGraph } from '../../engine.js';
import type { Moment } from '../../values/moment.js';
import type { CommandHost } from './command-host.js';
import { complain } from './complain.js';
import { exitCode } from './exit-code.js';
import { type IntentOptions, readIntent } from './intent-options.js';
import { openLogbook } from './open-logbook.js';
import { openSchedule } from './open-schedule.js';
import { parseWhen } from './parse-when.js';
import type { Style } from '../../render/style.js';

/** What every question about one machine starts from. */
export interface Question {
  readonly graph: RuleGraph;
  readonly entries: readonly Entry[];
  readonly now: Moment;
  readonly intent: Intent;
}

/**
 * Opens the arguments SCHEDULE and LOGBOOK and the options on when and what for. Where that fails it says so, ends the command
 * and gives undefined.
 */
export async function openQuestion(
  host: CommandHost,
  style: Style,
  schedule: string,
  logbook: string,
  options: IntentOptions,
): Promise<Question | undefined> {
  const now = options.on === undefined ? { ok: true as const, value: host.shell.now() } : parseWhen(options.on);
  if (!now.ok) return fail(host, now.problem, exitCode.usage);
  const opened = openLogbook(logbook);
  if (!opened.ok) return fail(host, opened.problem, exitCode.input);
  const graph = await openSchedule(host, style, schedule);
  if (graph === undefined) return undefined;
  const intent = readIntent(options, graph);
  if (!intent.ok) return fail(host, intent.problem, exitCode.usage);
  complain(host.shell, ...opened.value.remarks);
  return { graph, entries: opened.value.entries, now: now.value, intent: intent.value };
}

function fail(host: CommandHost, problem: string, code: typeof exitCode.usage | typeof exitCode.input): undefined {
  complain(host.shell, problem);
  host.end(code);
  return undefined;
}
