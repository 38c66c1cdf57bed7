/**
 * Everything that may be asked of a schedule and a logbook, asked at once: where hostile files meet all of the program.
 */
import { hash } from 'node:crypto';
import { walkRound } from '../../src/access/plan-walk-round.js';
import { assess, assessTimeline } from '../../src/assess/assess.js';
import type { Assessment } from '../../src/assess/assessment.js';
import { BudgetError } from '../../src/assess/world.js';
import { compile } from '../../src/compile/compile.js';
import { explain } from '../../src/explain/explain.js';
import { format } from '../../src/format/format.js';
import { readRuleGraph } from '../../src/graph/read-rule-graph.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';
import type { Entry } from '../../src/history/entry.js';
import { readTimeline } from '../../src/history/read-timeline.js';
import { lookAhead } from '../../src/outlook/look-ahead.js';
import { renderDiagnostics } from '../../src/render/diagnostics.js';
import { renderDueList } from '../../src/render/due-list.js';
import { renderAhead } from '../../src/render/outlook/ahead.js';
import { renderRuleGraphText } from '../../src/render/rule-graph-text.js';
import { renderWalkRound } from '../../src/render/walk-round/sheet-text.js';
import { renderWhy } from '../../src/render/why.js';
import { plainStyle } from '../../src/render/style.js';
import { readLogbook } from '../../src/adapters/logbook/read-logbook.js';
import { describeLogbookProblem } from '../../src/adapters/cli/describe-logbook-problem.js';
import { dayNumber } from '../../src/values/civil.js';
import type { Moment } from '../../src/values/moment.js';
import type { Ending, HostileFiles, Question } from './question.js';

const now: Moment = { day: dayNumber({ year: 2026, month: 5, day: 12 }), minute: 450 };
/** How many tasks are explained and drawn: questions are asked one at a time by a person, so these are bounded by hand. */
const ASKED_TASKS = 4;

/** What docs/security.md says to let a search for a walk-round take, how many futures to follow and how long a logbook to read, where machines are other people's. */
const CAPS = { expanded: 1_000, held: 20_000 };
const FUTURES = 200;
const LOGBOOK = { lines: 10_000 };

/** What one command answers: what is due, why, by which rules, in what order, and what comes. */
const COMMANDS = ['due', 'why', 'rules', 'walk', 'ahead'] as const;
type Command = (typeof COMMANDS)[number];

/** How much is asked: `state` for what is due alone, `all` for explanations, drawings, the walk-round and the year too. */
export type Asked = 'state' | 'all';

/** Each command by itself. */
export function commandsOn(hostile: HostileFiles, asked: Asked = 'all'): readonly Question[] {
  return commandsOf(asked).map((command) => ({ what: command, ask: () => askCommands(hostile, [command]) }));
}

/** The host's own, which the command hands in: src/adapters/cli/host-sha256.ts. */
export function hostSha256(text: string): string {
  return hash('sha256', text);
}

/** Asks everything of one reading of the files. Throws only where the program is at fault. */
export function askEverything(hostile: HostileFiles, asked: Asked = 'all'): Ending {
  return askCommands(hostile, commandsOf(asked));
}

function commandsOf(asked: Asked): readonly Command[] {
  return asked === 'all' ? COMMANDS : ['due'];
}

function askCommands(hostile: HostileFiles, commands: readonly Command[]): Ending {
  const logbook = readLogbook(hostile.logbook ?? '', LOGBOOK);
  const remarks = logbook.problems.map((problem) => describeLogbookProblem('logbook.jsonl', problem));
  const said = new Set<string>(logbook.problems.map(({ kind }) => kind));
  const shown = [...remarks.slice(0, 200)];
  const graph = openGraph(hostile, said, shown);
  if (graph === null) return { kind: 'refused', said: [...said], shown: shown.join('\n') };
  let proof = (): void => {};
  try {
    const { entries } = logbook;
    const answers = answersTo(graph, entries);
    for (const command of commands) shown.push(...answers[command]());
    proof = () => sameStepsWithoutRecord(graph, entries);
  } catch (error) {
    if (!(error instanceof BudgetError)) throw error;
    said.add('budget');
    return { kind: 'refused', said: [...said], shown: [...shown, error.message].join('\n') };
  }
  return { kind: 'answered', said: [...said], shown: shown.join('\n'), proof };
}

/** The budget of steps is the same with explanations on. @throws Error where it is not. */
function sameStepsWithoutRecord(graph: RuleGraph, entries: readonly Entry[]): void {
  const { steps } = assess(graph, entries, now, { intent: { outing: {} } });
  const timeline = readTimeline(entries, graph, now);
  const withoutRecord = assessTimeline(graph, timeline, now, { intent: { outing: {} }, withoutRecord: true });
  if (withoutRecord.steps !== steps) throw new Error('steps depend on the record');
}

function openGraph({ files, graph }: HostileFiles, said: Set<string>, shown: string[]): RuleGraph | null {
  if (graph !== undefined) {
    const read = readRuleGraph(graph);
    if (read.ok) return read.graph;
    said.add(read.problem);
    shown.push(read.problem);
    return null;
  }
  const all = files ?? {};
  const compiled = compile('schedule.due', (path) => (Object.hasOwn(all, path) ? all[path] : undefined), { sha256: hostSha256 });
  for (const { code } of compiled.diagnostics) said.add(code);
  shown.push(renderDiagnostics(compiled.diagnostics, compiled.sources, plainStyle(100)));
  return compiled.graph;
}

function answersTo(graph: RuleGraph, entries: readonly Entry[]): Readonly<Record<Command, () => readonly string[]>> {
  const style = plainStyle(100);
  const some = graph.tasks.slice(0, ASKED_TASKS).map(({ id }) => id);
  let assessed: Assessment | null = null;
  const assessment = (): Assessment => (assessed ??= assess(graph, entries, now, { intent: { outing: {} } }));
  return {
    due: () => [renderDueList(assessment(), graph, style)],
    why: () => some.map((id) => renderWhy(explain(graph, assessment(), entries, id), style)),
    rules: () => some.map((id) => renderRuleGraphText(graph, id, style)),
    walk: () => [renderWalkRound(walkRound(graph, some, { caps: CAPS }), graph, style)],
    ahead: () => [renderAhead(lookAhead(graph, entries, now, { count: FUTURES }), graph, style)],
  };
}

/** What formatting makes of a text: itself again where it cannot be read. */
export function formatted(text: string): string {
  const result = format(text);
  return 'text' in result ? result.text : text;
}
