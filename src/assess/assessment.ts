/**
 * The answer: for each task its state and due point, for the machine a verdict, and the record of how they came about.
 *
 * Plain data throughout (no functions, no class instances): it can be stored, compared and sent as JSON. The record is what
 * `explain` reads; nothing is computed a second time.
 */
import type { Caution, NodeId, Outcome } from '../graph/rule-graph.js';
import type { EntryId } from '../history/entry.js';
import type { Day, Moment } from '../values/moment.js';

/** How a task stands, from the most pressing on. */
export type TaskState = 'overdue' | 'due' | 'unrecorded' | 'unknown' | 'coming-up' | 'clear' | 'resting';

/** What a condition comes to; what nobody has read is unknown, and not false. */
export type Truth = 'true' | 'false' | 'unknown';

/** A point on the axis of a limit. Meter points are life totals in ticks (1/36000 of the unit); work points are ticks of an hour since the base. */
export type DuePoint =
  | { readonly on: 'meter'; readonly meter: string; readonly ticks: number }
  /** `goodThrough`: the limit was in calendar months and is shown as good through this day. */
  | { readonly on: 'calendar'; readonly day: Day; readonly goodThrough: boolean }
  | { readonly on: 'moment'; readonly at: Moment }
  | { readonly on: 'work'; readonly duty: string | null; readonly ticks: number };

/** What is wanted of the machine next. */
export interface Intent {
  /** An outing that is intended on now's day. */
  readonly outing?: {
    /** Minute of the day; left out: now. */
    readonly start?: number;
    readonly hours?: number;
    readonly duties?: readonly string[];
    readonly attachments?: readonly string[];
    readonly shift?: string;
  };
  readonly storage?: boolean;
}

/** What `assess` may be asked besides the moment. */
export interface AssessOptions {
  readonly intent?: Intent;
  /** Meter id → ticks a day at the present rate of use; with it the governing part is told by forecast. */
  readonly rates?: ReadonlyMap<string, number>;
  /** Steps after which assessing gives up with a `BudgetError`. Default 2,000,000. */
  readonly budget?: number;
  /** Leave the record empty. States, verdict and step count do not change. */
  readonly withoutRecord?: boolean;
}

/** One limit that takes part in a task's state, with its numbers, on its own axis: ticks, or days for a calendar limit. */
export interface LimitFacts {
  readonly base: {
    readonly point: DuePoint;
    readonly why: 'done' | 'stated' | 'restarted' | 'start' | 'due-point' | 'event' | 'mark' | 'reading' | 'defect';
    /** When it was done, happened or began; `null` where nobody noted it. */
    readonly when: Moment | null;
    readonly entries: readonly EntryId[];
    /** Where the schedule has kept its beat: the point from which it counts, and by how many whole spans it has moved on; the due point is one more on. */
    readonly anchor?: { readonly point: DuePoint; readonly spans: number };
  } | null;
  readonly span: number | null;
  readonly due: DuePoint | null;
  /** Where it counts as overdue from: due point + late allowance. */
  readonly overdueAfter: DuePoint | null;
  readonly comingUpFrom: DuePoint | null;
  /**
   * Where the axis stands now, with the entry that says so. `read`: what the meter showed last, where time in duties that no reading covers yet was reckoned
   * on top of it.
   */
  readonly now: { readonly point: DuePoint; readonly entries: readonly EntryId[]; readonly read?: DuePoint } | null;
  /** due − now; negative when past. */
  readonly left: number | null;
  /** Share of the span used, 0 at the base, 1 at the due point. */
  readonly used: number | null;
}

/** What one node of the rule graph came to, in one run. The record holds one of these per node that was looked at, by task. */
export interface Observation {
  readonly node: NodeId;
  /** For a trigger. */
  readonly state?: TaskState;
  /** For a condition. */
  readonly truth?: Truth;
  /** For a condition: the newest thing on record that makes it so; `null` if nothing on record does. */
  readonly since?: Moment | null;
  readonly limit?: LimitFacts;
  /** For `whichever` and `any`: the part that decided or will decide. */
  readonly governing?: NodeId;
  /** When the limit was reached, as far as the record shows. */
  readonly reachedAt?: Moment | null;
  /** Where the axis stood at the doing, the event or the reading that this was held against, beside the limit's own numbers. */
  readonly stood?: readonly DuePoint[];
  /** Duty mix: what each duty used up. */
  readonly shares?: readonly {
    readonly duty: string | null;
    readonly ticks: number;
    readonly of: number;
    readonly entries: readonly EntryId[];
  }[];
  /** Entries that this node itself rested on (not those of its children): those of its limit and its shares are among them. */
  readonly entries: readonly EntryId[];
  /** What is missing, and would settle it. */
  readonly missing?: readonly Missing[];
  /** Node-specific facts for the words: what was read, which class, which event, which outing. */
  readonly note?: Note;
}

/** What nobody has recorded and an answer would need. */
export type Missing =
  | { readonly what: 'reading'; readonly instrument: string; readonly because: 'never-read' | 'too-old' | 'too-few' }
  | { readonly what: 'meter'; readonly meter: string }
  | { readonly what: 'meter-at-doing'; readonly meter: string; readonly entry: EntryId }
  | { readonly what: 'record'; readonly task: string }
  | { readonly what: 'in-service' }
  | { readonly what: 'outing' }
  | { readonly what: 'class'; readonly defect: string }
  /** At what time of that day it was done, or the work began; `entry`: the one that does not say, `null` where the work is only intended. */
  | { readonly what: 'time-of-day'; readonly of: 'doing' | 'start'; readonly day: Day; readonly entry: EntryId | null };

/** What has to be said about a task besides its state. */
export type Note =
  | { readonly is: 'reading'; readonly instrument: string; readonly value: number; readonly when: Moment }
  | { readonly is: 'answered'; readonly by: EntryId; readonly when: Moment }
  /** `window`: when the work begins, and from when on doing the task counts for it. */
  | {
      readonly is: 'work-on';
      readonly intended: boolean;
      readonly lastEnd: Moment | null;
      readonly done: Moment | null;
      readonly window?: { readonly opens: Moment; readonly start: Moment };
    }
  /** `during`: an outing is under way since then, and what ended in its day or shift is not over yet. */
  | { readonly is: 'no-work'; readonly during?: Moment }
  | { readonly is: 'happened'; readonly when: Moment; readonly done: Moment | null; readonly during?: Moment }
  /** `on`: the day on which it will. */
  | { readonly is: 'not-happened'; readonly on?: Day }
  /** Of what a rule comes after so many times: how many of them no doing follows yet, no more than it takes, and when the last of those was. */
  | {
      readonly is: 'happened-times';
      readonly times: number;
      readonly of: number;
      readonly when: Moment | null;
      readonly done: Moment | null;
    }
  | { readonly is: 'asked'; readonly outcome: Outcome; readonly when: Moment }
  /** With the reading that stands instead, or the class that the defect has, or when it was closed. */
  | {
      readonly is: 'not-asked';
      readonly read?: { readonly instrument: string; readonly value: number; readonly when: Moment };
      readonly defect?: { readonly class: string | null; readonly since: Moment; readonly closed: Moment | null };
    }
  /** `closed`: when it was mended; left out while it is open. */
  | { readonly is: 'defect'; readonly class: string | null; readonly since: Moment; readonly closed?: Moment }
  | { readonly is: 'consumption'; readonly litresPerHour: number; readonly levels: number; readonly litresLeft: number }
  | { readonly is: 'stages'; readonly met: number; readonly of: number }
  | { readonly is: 'marks-missed'; readonly count: number }
  /** Of the doings that a mark asks for, with how many earlier marks passed without enough of them. */
  | {
      readonly is: 'times-done';
      readonly done: number;
      readonly of: number;
      readonly missed: number;
      readonly tooSoon?: readonly TooSoon[];
    }
  /** Of the doings that a span asks for: the last that count, and where the limit's axis stood at each (`null`: nobody noted it). */
  | {
      readonly is: 'doings-counted';
      readonly counted: readonly { readonly when: Moment | null; readonly at: DuePoint | null }[];
      readonly of: number;
      readonly tooSoon?: readonly TooSoon[];
    }
  /** Days in storage that a limit does not count; `goesOn`: the machine is in storage now. */
  | { readonly is: 'stood-still'; readonly days: number; readonly goesOn: boolean }
  | { readonly is: 'position'; readonly position: string; readonly atRest: boolean }
  | { readonly is: 'condition-off' };

/** A doing that came too soon after another, which counts, to count itself. */
export interface TooSoon {
  readonly when: Moment;
  readonly after: Moment;
  readonly entry: EntryId;
}

/** How one task stands, and the numbers that say so. */
export interface TaskAssessment {
  readonly task: string;
  readonly state: TaskState;
  /** The due point of the governing limit; `null` where there is none (an occasion, a condition, nothing on record). */
  readonly due: DuePoint | null;
  /** The limit, occasion or condition that decided the state or will decide it. */
  readonly governing: NodeId | null;
  /** left of the governing limit, on its axis (ticks or days). */
  readonly left: number | null;
  readonly missing: readonly Missing[];
  /** Why it rests, if it does. */
  readonly resting: 'attachment-off' | 'gate' | 'serial' | null;
}

/** A reason to hold the machine, or one that an unknown could hide. */
export interface Hold {
  readonly why:
    | { readonly is: 'stop'; readonly stop: string }
    | { readonly is: 'reading'; readonly task: string; readonly instrument: string }
    | { readonly is: 'defect'; readonly defect: string; readonly class: string }
    | { readonly is: 'late'; readonly task: string; readonly node: NodeId };
  readonly text: string;
  readonly truth: 'true' | 'unknown';
  readonly entries: readonly EntryId[];
  readonly missing: readonly Missing[];
}

/** A caution that a reading or a defect class carries with it. */
export interface Notice {
  readonly from:
    | { readonly is: 'reading'; readonly task: string; readonly instrument: string }
    | { readonly is: 'defect'; readonly defect: string; readonly class: string };
  readonly text: string;
  readonly entries: readonly EntryId[];
}

/** Whether the machine may be used, and whether work is due first. */
export type Verdict = 'held' | 'work-due-first' | 'ready' | 'cannot-tell';

/** The answer of `assess`. */
export interface Assessment {
  readonly format: 'duewright-assessment';
  readonly version: 1;
  /** Of the rule graph that was run. */
  readonly schedule: { readonly name: string; readonly fingerprint: string };
  readonly now: Moment;
  readonly verdict: Verdict;
  readonly holds: readonly Hold[];
  readonly notices: readonly Notice[];
  readonly tasks: readonly TaskAssessment[];
  /** Suspect readings and strays, by entry id: kept, shown, not used. */
  readonly setAside: readonly {
    readonly entry: EntryId;
    readonly why: string;
    /** For a suspect reading: its meter, the entry that it disagrees with, and others that this rests on. */
    readonly suspect?: {
      readonly meter: string;
      readonly against: EntryId;
      readonly alongside?: readonly EntryId[];
    };
  }[];
  /** Task id → what each node came to. Empty when `withoutRecord`. */
  readonly record: { readonly [task: string]: readonly Observation[] };
  /** What the conditions of declared stops came to. */
  readonly stopRecord: readonly Observation[];
  readonly steps: number;
}

export type { Caution };
