/**
 * The why of one task: plain JSON data, taken from the record of a run, with the rules, numbers and entries that it rests on.
 *
 * Nothing here is a sentence: `render` finds the words. Days, minutes and ticks are those of the assessment (days since
 * 1970-01-01, minutes of the day, 1/36000 of a meter's unit).
 */
import type {
  DuePoint,
  Hold,
  LimitFacts,
  Missing,
  Note,
  Notice,
  Observation,
  TaskAssessment,
  TaskState,
  Truth,
} from '../assess/assessment.js';
import type { Caution, Instrument, Node, NodeId, RecordKept } from '../graph/rule-graph.js';
import type { Entry, EntryId } from '../history/entry.js';
import type { Moment } from '../values/moment.js';
import type { Change } from './change.js';

/** Where in the schedule a rule stands, and what its author wrote there (white space folded). */
export interface Place {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly text: string;
}

/**
 * One rule of the task with what it came to: a trigger has a `state`, a condition a `truth`, a limit its numbers.
 *
 * A rule that the run had no need to look at has neither `state` nor `truth`.
 */
export interface RuleFacts {
  /** The rule as compiled; `id` is what `governing`, `others` and changes refer to. */
  readonly node: Node;
  readonly place: Place;
  readonly state?: TaskState;
  readonly truth?: Truth;
  /** For a condition: the newest thing on record that makes it so. */
  readonly since?: Moment | null;
  readonly limit?: LimitFacts;
  /** Where the axis stood at the doing, the event or the reading that this was held against, beside the limit's own numbers. */
  readonly stood?: readonly DuePoint[];
  /** When what the limit counts from happened, by the first of its entries. */
  readonly baseWhen?: Moment | null;
  /** When the axis was last read, by the entry that says where it stands. */
  readonly readWhen?: Moment | null;
  readonly reachedAt?: Moment | null;
  readonly shares?: Observation['shares'];
  readonly entries: readonly EntryId[];
  readonly missing: readonly Missing[];
  readonly note?: Note;
  /** For `whichever` and `any`: the part that decided or will decide. */
  readonly governing?: NodeId;
  /** The rules that this one is made of, in the order they were written. */
  readonly parts: readonly RuleFacts[];
}

/** An entry of the logbook that the answer rests on. */
export interface CitedEntry {
  readonly id: EntryId;
  readonly when: Moment;
  readonly entry: Entry;
  /** Cited only because this other entry disagrees with it, and does not count for that reason. */
  readonly refutes?: EntryId;
  /** Cited because it confirms this other entry, which might not count without it. */
  readonly confirms?: EntryId;
}

/** What is not known, and what would settle it. */
export interface Unknown {
  readonly missing: Missing;
  /** The rule that cannot be told without it; `null` when it concerns the task as a whole. */
  readonly node: NodeId | null;
  readonly settledBy:
    | 'read-instrument'
    | 'read-meter'
    | 'note-meter-at-doing'
    | 'record-or-state'
    | 'state-in-service'
    | 'record-outing'
    | 'note-class'
    | 'note-time';
}

/** About when a limit is reached at the rates of use that were given. */
export interface ForecastPart {
  readonly node: NodeId;
  readonly about: Moment['day'];
  /** Ticks a day for a meter; `null` for the calendar, which needs no rate. */
  readonly rate: number | null;
}

/** When a limit will be reached at the present rate of use. */
export interface Forecast {
  readonly parts: readonly ForecastPart[];
  /** The part that decides, if the use goes on as it is. */
  readonly decides: NodeId;
}

/** Titles and units of everything that the explanation mentions, by id. */
export interface Names {
  readonly meters: Readonly<Record<string, { readonly title: string; readonly unit: string }>>;
  /** Gauges in their unit; dipsticks by the litres from low to full. */
  readonly gauges: Readonly<Record<string, { readonly title: string; readonly unit: string }>>;
  readonly dipsticks: Readonly<Record<string, { readonly title: string; readonly litres: number }>>;
  readonly duties: Readonly<Record<string, string>>;
  readonly events: Readonly<Record<string, string>>;
  readonly attachments: Readonly<Record<string, string>>;
  readonly defects: Readonly<Record<string, string>>;
  readonly tasks: Readonly<Record<string, string>>;
}

/** What an explanation needs to know of the schedule about its task. */
export interface ExplainedTask {
  readonly id: string;
  readonly title: string;
  readonly place: Place;
  /** The author's own reason and the published source, where given. */
  readonly reason?: string;
  readonly source?: string;
  /** How long the record of a doing is kept, where the schedule says so. */
  readonly record?: RecordKept;
  readonly cautions: readonly Caution[];
  readonly qualified: boolean;
  readonly procedure: readonly string[];
  readonly reads: readonly Instrument[];
  /** Tasks whose doing counts as doing this one, or sets its clock. */
  readonly countedBy: readonly string[];
  /** Tasks whose doing is what its rules come after; left out where they come after none. */
  readonly comesAfter?: readonly string[];
}

/** The answer of `explain`: why a task is in its state, and what would change it. */
export interface Explanation {
  readonly format: 'duewright-explanation';
  readonly version: 1;
  readonly schedule: {
    readonly name: string;
    readonly title: string;
    readonly fingerprint: string;
    readonly edition?: { readonly number: number; readonly date: string; readonly by: string };
  };
  readonly now: Moment;
  readonly task: ExplainedTask;
  readonly state: TaskState;
  readonly due: DuePoint | null;
  /** due − now of the governing limit, on its own axis (ticks or days). */
  readonly left: number | null;
  readonly resting: TaskAssessment['resting'];
  /** All timing rules of the task; `null` for a task that has none (it is only asked for by others). */
  readonly rule: RuleFacts | null;
  /** What the task's `only if` and `unless` came to; `null` where there is none. */
  readonly gate: RuleFacts | null;
  /** The rule that decided or will decide, by id in `rule`. */
  readonly governing: NodeId | null;
  /** The other rules that take part, in the order they were written. */
  readonly others: readonly NodeId[];
  /** In the order in which they happened. */
  readonly entries: readonly CitedEntry[];
  readonly unknown: readonly Unknown[];
  readonly holds: readonly Hold[];
  readonly notices: readonly Notice[];
  /** What would alter the state, nearest first of each kind. */
  readonly changes: readonly Change[];
  readonly forecast: Forecast | null;
  readonly names: Names;
}
