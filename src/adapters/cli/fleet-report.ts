/** What `duewright fleet` writes: a line for each machine, what there is to say of lines, and the sums at the end. */
import type { RuleGraph, TaskState } from '../../engine.js';
import { STATES, VERDICTS } from '../../fleet/fleet-states.js';
import { counted } from '../../render/count-in-words.js';
import { safeText } from '../../render/safe-text.js';
import { stateInWords } from '../../render/state-in-words.js';
import type { BlockAnswer } from '../fleet/judge-block.js';
import type { LineNote } from '../fleet/line-note.js';
import type { FleetLine } from './fleet-line.js';

/** How many of each verdict and of each state of a task, and how many lines were no machine. */
export interface FleetTally {
  readonly verdicts: number[];
  /** Task `t` in state `s` at `t * STATES.length + s`. */
  readonly states: number[];
  refused: number;
}

/** What asks for somebody, the gravest first. */
const WANTED: readonly TaskState[] = ['overdue', 'due', 'unrecorded', 'unknown'];
/** So many tasks of a machine are named for each state. */
const MOST_NAMED = 4;
const SHORT = { held: 'HELD', 'cannot-tell': 'cannot tell', 'work-due-first': 'work due', ready: 'ready' } as const;

/** Nothing counted yet. */
export function newTally(graph: RuleGraph): FleetTally {
  return { verdicts: VERDICTS.map(() => 0), states: graph.tasks.flatMap(() => STATES.map(() => 0)), refused: 0 };
}

/** Counts a block in. */
export function count(tally: FleetTally, graph: RuleGraph, block: BlockAnswer): void {
  tally.refused += block.notes.filter(({ refused }) => refused).length;
  for (const verdict of block.verdict) tally.verdicts[verdict] = (tally.verdicts[verdict] ?? 0) + 1;
  for (let task = 0; task < graph.tasks.length; task += 1)
    for (let machine = 0; machine < block.machines.length; machine += 1) {
      const at = task * STATES.length + (block.state[task * block.stride + machine] ?? 0);
      tally.states[at] = (tally.states[at] ?? 0) + 1;
    }
}

/** One machine with all of its tasks, as JSON on a line. */
export function machineAsJson(graph: RuleGraph, block: BlockAnswer, machine: number): string {
  return `${JSON.stringify(lineOf(graph, block, machine))}\n`;
}

function lineOf(graph: RuleGraph, block: BlockAnswer, machine: number): FleetLine {
  const tasks = graph.tasks.map(({ id }, task) => {
    const at = task * block.stride + machine;
    const [left, governing] = [block.left[at] ?? Number.NaN, block.governing[at] ?? -1];
    return {
      task: id,
      state: STATES[block.state[at] ?? 0] ?? 'unknown',
      left: Number.isNaN(left) ? null : left,
      governing: governing < 0 ? null : governing,
    };
  });
  const verdict = VERDICTS[block.verdict[machine] ?? 0] ?? 'cannot-tell';
  return { machine: block.machines[machine] ?? '', verdict, tasks };
}

/** One machine that wants something, on one line; nothing for one that is ready. */
export function machineInWords(graph: RuleGraph, block: BlockAnswer, machine: number): string {
  const verdict = VERDICTS[block.verdict[machine] ?? 0] ?? 'ready';
  if (verdict === 'ready') return '';
  const states = graph.tasks.map((_, task) => STATES[block.state[task * block.stride + machine] ?? 0]);
  const parts = WANTED.flatMap((state) => {
    const names = graph.tasks.filter((_, task) => states[task] === state).map(({ id }) => id);
    return names.length === 0 ? [] : [`${stateInWords(state)} ${namedOf(names)}`];
  });
  return `${safeText(block.machines[machine] ?? '')}  ${SHORT[verdict]}${parts.length === 0 ? '' : `: ${parts.join('; ')}`}\n`;
}

function namedOf(names: readonly string[]): string {
  const more = names.length - MOST_NAMED;
  return more < 2 ? names.join(', ') : `${names.slice(0, MOST_NAMED).join(', ')} and ${more} more`;
}

/** What there is to say of a line, with the way out if it is wanted: `machines.csv:12: not read: … (wrong-value). Write …`. */
export function noteInWords(file: string, { line, code, what, help, refused }: LineNote, withHelp: boolean): string {
  return `${safeText(file)}:${line}: ${refused ? 'not read: ' : ''}${safeText(what)} (${code}).${withHelp ? ` ${help}` : ''}`;
}

/** The sums: of verdicts in a sentence, and below it what each task comes to. */
export function sumsInWords(graph: RuleGraph, { verdicts, states, refused }: FleetTally): string {
  const [ready = 0, work = 0, unknown = 0, held = 0] = verdicts;
  const parts = [`${held} held`, `${unknown} cannot be told`, `${work} with work due first`, `${ready} ready`];
  const sum = `${counted(ready + work + unknown + held, 'machine')}: ${parts.join(', ')}`;
  const width = Math.max(0, ...graph.tasks.map(({ id }) => id.length));
  const rows = graph.tasks.flatMap(({ id }, task) => {
    const counts = WANTED.flatMap((state) => {
      const count = states[task * STATES.length + STATES.indexOf(state)] ?? 0;
      return count === 0 ? [] : [`${count} ${stateInWords(state)}`];
    });
    return counts.length === 0 ? [] : [`  ${id.padEnd(width)}  ${counts.join(', ')}\n`];
  });
  const hint =
    held + unknown === 0 ? '' : 'Why one of them must not be used, or cannot be told to be safe: the same with --machine NAME.\n';
  return `${sum}${refused === 0 ? '' : `; ${counted(refused, 'line')} not read`}.\n${rows.join('')}${hint}`;
}
