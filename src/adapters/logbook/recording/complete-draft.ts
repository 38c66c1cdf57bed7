import { readTimeline, validateEntry } from '../../../engine.js';
import type { Entry, Moment, RuleGraph } from '../../../engine.js';
import { dayOf, formatDate } from '../../../values/civil.js';
import { formatTime } from '../../../values/moment.js';
import { entryProblemWords } from '../entry-problem-words.js';
import { sha256 } from '../../../base/sha256.js';
import type { Draft } from '../plan-append.js';
import type { LooseDraft } from './loose-draft.js';
import { missingAnswers } from './missing-answers.js';
import { nameProblems } from './name-problems.js';
import type { Question } from './question.js';

/** What recording looks at: the schedule, what is on record, and the moment. */
export interface RecordingContext {
  readonly graph: RuleGraph;
  readonly entries: readonly Entry[];
  readonly now: Moment;
}

/** A draft that can be appended, or what stands in the way. */
export type Recording =
  /** `questions` are open but not needed; `remarks` tell of readings that will be set aside, and the like. */
  | { readonly kind: 'ready'; readonly draft: Draft; readonly questions: readonly Question[]; readonly remarks: readonly string[] }
  /** The first needed question is the one to ask. */
  | { readonly kind: 'questions'; readonly questions: readonly Question[] }
  /** One sentence each; names with the nearest known one. */
  | { readonly kind: 'refused'; readonly problems: readonly string[] };

const NO_ID = 'not-yet-recorded';

/**
 * Checks what somebody said against the schedule and the logbook, and says what is missing. Pure; nothing is written.
 *
 * The date is today's if none is given; the time is now's only if neither was given (work recorded the day after has none).
 *
 * @example completeDraft(context, { kind: 'topped-up', dipstick: 'engine-oil' }) // { kind: 'questions', … 'How much was put in?' }
 */
export function completeDraft(context: RecordingContext, said: LooseDraft): Recording {
  const draft = dated(said, context.now);
  const problems = [...nameProblems(context.graph, draft), ...entryProblems(context.entries, draft), ...futureProblem(draft, context.now)];
  if (problems.length > 0) return { kind: 'refused', problems };
  const questions = missingAnswers(context.graph, draft);
  if (questions.some(({ needed }) => needed)) return { kind: 'questions', questions };
  const read = validateEntry({ ...draft, id: NO_ID });
  if (read.kind === 'problems') return { kind: 'refused', problems: [entryProblemWords(read.problems)] };
  return {
    kind: 'ready',
    draft: withoutId(read.entry),
    questions,
    remarks: [...statementRemarks(said), ...suspectRemarks(context, read.entry), ...setBackRemarks(context, read.entry)],
  };
}

function dated(said: LooseDraft, { day, minute }: Moment): LooseDraft {
  if (said.on !== undefined) return said;
  return { ...said, on: formatDate(day), ...(said.at === undefined && minute !== null ? { at: formatTime(minute) } : {}) };
}

function withoutId({ id: _, ...draft }: Entry): Draft {
  return draft;
}

/** Voids and confirmations may name an entry by the end of its id, if only one ends so. */
function entryProblems(entries: readonly Entry[], { entry }: LooseDraft): readonly string[] {
  if (entry === undefined || entries.some(({ id }) => id === entry)) return [];
  const ending = entries.filter(({ id }) => id.endsWith(entry)).map(({ id }) => id);
  if (ending.length === 0) return [`There is no entry \`${entry}\` in this logbook.`];
  return [
    `There is no entry \`${entry}\`; did you mean ${ending
      .slice(0, 3)
      .map((id) => `\`${id}\``)
      .join(' or ')}?`,
  ];
}

function futureProblem({ on, kind }: LooseDraft, now: Moment): readonly string[] {
  const day = on === undefined ? null : dayOf(on);
  return day !== null && day > now.day ? [`${on ?? ''} is still to come: what is recorded (${kind}) must have happened.`] : [];
}

/** The day of an entry is the day on which it was said; whoever means the day of the work has to say so. */
function statementRemarks({ kind, on, doneBy }: LooseDraft): readonly string[] {
  if (kind !== 'stated' || on === undefined || doneBy !== undefined) return [];
  return [`${on} is kept as the day on which it was said. If the work had been done by then, void this and say \`before ${on}\`.`];
}

/** What the history would set aside of this entry, so that it can be put right at once. */
function suspectRemarks({ graph, entries, now }: RecordingContext, entry: Entry): readonly string[] {
  const id = `${NO_ID}-${sha256(JSON.stringify(entry)).slice(0, 8)}`;
  const { suspects } = readTimeline([...entries, { ...entry, id }], graph, now);
  return suspects
    .filter((suspect) => suspect.entry === id)
    .map(({ meter, shown, why, against }) => {
      const how = why === 'falls' ? 'is less than what was read before' : 'is more than the time since allows';
      return `${shown} on \`${meter}\` ${how} (entry \`${against}\`): it is kept, and not used until you confirm or void it.`;
    });
}

/** What confirming a reading that fell comes to, and the other way out: the earlier reading may have been the mistake. */
function setBackRemarks({ graph, entries, now }: RecordingContext, entry: Entry): readonly string[] {
  if (entry.kind !== 'confirm') return [];
  return readTimeline(entries, graph, now)
    .suspects.filter((suspect) => suspect.entry === entry.entry && suspect.why === 'falls')
    .map(
      ({ meter, shown, against }) =>
        `Confirming ${shown} on \`${meter}\` says that the dial was set back there, and the life total goes on from what stood before. If entry \`${against}\` was the mistake, void this confirmation and record \`void ${against}\` instead.`,
    );
}
