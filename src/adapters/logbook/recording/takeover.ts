/**
 * Taking over a machine without records: what to ask, task by task, and what the answers say.
 *
 * Nothing is remembered apart from the logbook: what is answered is recorded at once, so that the questions can be broken off and
 * taken up again anywhere. What nobody knows stays unrecorded, which is what it is.
 */
import { assertNever } from '../../../base/assert-never.js';
import { assess } from '../../../engine.js';
import type { Task } from '../../../engine.js';
import { dayOf } from '../../../values/civil.js';
import type { RecordingContext } from './complete-draft.js';
import type { LooseDraft } from './loose-draft.js';
import { metersOf } from './missing-answers.js';
import { parseNumber } from './question.js';

export type TakeoverStep =
  /** Nothing says yet which machine this is. */
  | { readonly kind: 'machine'; readonly ask: string }
  /** A meter that was never read. */
  | { readonly kind: 'meter'; readonly meter: string; readonly ask: string; readonly unit: string }
  /** A task of which nothing is on record. `reason` is the author's own, so that the owner can weigh what not knowing means. */
  | {
      readonly kind: 'task';
      readonly task: string;
      readonly ask: string;
      readonly meter: { readonly id: string; readonly unit: string } | null;
      readonly reason: string | null;
    };

/** Everything that is still to ask, in order: the machine, its meters, then each task that counts from a doing and has none on record. */
export function takeoverSteps({ graph, entries, now }: RecordingContext): readonly TakeoverStep[] {
  const known = entries.some(({ kind }) => kind === 'machine');
  const read = new Set(entries.flatMap(({ meters }) => Object.keys(meters ?? {})));
  const states = new Map(assess(graph, entries, now, { withoutRecord: true }).tasks.map(({ task, state }) => [task, state]));
  return [
    ...(known ? [] : [{ kind: 'machine' as const, ask: 'On which day did the machine enter service? (YYYY-MM-DD)' }]),
    ...graph.meters
      .filter(({ id, fromOutings }) => !fromOutings && !read.has(id))
      .map(({ id, title, unit }) => ({ kind: 'meter' as const, meter: id, unit, ask: `What does it show now: ${title}?` })),
    ...graph.tasks.filter(({ id }) => states.get(id) === 'unrecorded').map((task) => taskStep(graph, task)),
  ];
}

function taskStep(graph: RecordingContext['graph'], task: Task): TakeoverStep {
  const id = metersOf(graph, task)[0];
  const meter = graph.meters.find((each) => each.id === id);
  const how = meter === undefined ? 'the day (YYYY-MM-DD)' : `the day (YYYY-MM-DD), the ${meter.unit} on ${meter.id}, or both`;
  return {
    kind: 'task',
    task: task.id,
    ask: `When was it last done: ${task.title}? Answer ${how}.`,
    meter: meter === undefined ? null : { id: meter.id, unit: meter.unit },
    reason: task.reason ?? null,
  };
}

/** What an answer says, to be recorded, or a sentence if it is not understood. */
export type TakeoverAnswer =
  { readonly kind: 'said'; readonly draft: LooseDraft } | { readonly kind: 'not-understood'; readonly problem: string };

/**
 * Reads the answer to a step. Not knowing is no answer: leave the step open. A statement is kept as one, never as work on record.
 *
 * @example takeoverAnswer(step, '2025-01-01 1200') // stated: done by that day, at about 1200 h
 */
export function takeoverAnswer(step: TakeoverStep, text: string): TakeoverAnswer {
  const words = text.trim().split(/[\s,]+/);
  switch (step.kind) {
    case 'machine':
      return dayOf(words[0] ?? '') === null ? notUnderstood(text) : { kind: 'said', draft: { kind: 'machine', inService: words[0] ?? '' } };
    case 'meter':
      return meterAnswer(step, words, text);
    case 'task':
      return taskAnswer(step, words, text);
    default:
      return assertNever(step);
  }
}

function meterAnswer({ meter, unit }: Extract<TakeoverStep, { kind: 'meter' }>, words: readonly string[], text: string): TakeoverAnswer {
  const value = parseNumber(words[0] ?? '');
  if (value === null || words.length > 2 || (words[1] ?? unit) !== unit) return notUnderstood(text);
  return { kind: 'said', draft: { kind: 'reading', meters: { [meter]: value } } };
}

function taskAnswer({ task, meter }: Extract<TakeoverStep, { kind: 'task' }>, words: readonly string[], text: string): TakeoverAnswer {
  let draft: LooseDraft = { kind: 'stated', task, words: text.trim() };
  for (const word of words) {
    const value = parseNumber(word);
    if (dayOf(word) !== null) draft = { ...draft, doneBy: word };
    else if (value !== null && meter !== null) draft = { ...draft, doneAt: { [meter.id]: value } };
    else if (word !== meter?.unit) return notUnderstood(text);
  }
  return draft.doneBy === undefined && draft.doneAt === undefined ? notUnderstood(text) : { kind: 'said', draft };
}

function notUnderstood(text: string): TakeoverAnswer {
  return { kind: 'not-understood', problem: `\`${text}\` is not understood. Say what you know, or leave it open.` };
}
