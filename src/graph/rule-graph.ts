/* Made from grammar/rule-graph.schema.json by `npm run generate`; do not edit. */

/**
 * A span on one axis.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "Amount".
 */
export type Amount = MeterAmount | WorkAmount | CalendarAmount;
/**
 * A meter quantity or a time at work as a whole number of 1/36000 of the unit (1 h = 36000, 1 min = 600, 0.05 h = 1800), so that sums and comparisons are exact.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "Ticks".
 */
export type Ticks = number;
/**
 * A node of the rule graph.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "Node".
 */
export type Node = Trigger | Condition;
/**
 * A node that says when a task is due.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "Trigger".
 */
export type Trigger =
  | IntervalNode
  | DutyMixNode
  | StagesNode
  | FirstNode
  | MarksNode
  | CalendarMarksNode
  | CalendarWindowNode
  | WhicheverNode
  | AnyNode
  | OccasionNode
  | ShortlyBeforeNode
  | AttachingNode
  | RefuellingNode
  | EventNode
  | WhenNode
  | WhileNode
  | AskedNode
  | SoonerNode;
/**
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "Counting".
 */
export type Counting = "doing" | "due-if-late" | "due-within-allowance";
/**
 * A node that is true, false or unknown.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "Condition".
 */
export type Condition =
  | AndNode
  | OrNode
  | NotNode
  | PositionIsNode
  | AttachmentIsNode
  | DefectIsNode
  | DutyIsNode
  | CompareNode
  | TrendNode
  | RecentNode
  | AgeNode
  | IdleNode
  | UnworkedNode
  | AtWorkNode
  | SeasonNode;
/**
 * Index into `nodes`. A node refers to earlier nodes only, so the graph is acyclic by construction.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "NodeId".
 */
export type NodeId = number;

/**
 * A compiled schedule: everything the engine needs, and for each rule the place where its author wrote it.
 */
export interface RuleGraph {
  format: "duewright-rule-graph";
  version: 1;
  /**
   * SHA-256, in hex, of the canonical JSON of everything else in this object.
   */
  fingerprint: string;
  schedule: {
    name: string;
    title: string;
    language: number;
    edition?: {
      number: number;
      date: string;
      by: string;
    };
    fits: {
      model: string;
      serial?: SerialRange;
    }[];
    forAttachment: boolean;
  };
  sources: {
    path: string;
    fingerprint: string;
  }[];
  meters: Meter[];
  gauges: Gauge[];
  dipsticks: Dipstick[];
  duties: Duty[];
  attachments: Attachment[];
  events: Event[];
  supplies: Supply[];
  defects: Defect[];
  stops: Stop[];
  access: Access;
  nodes: Node[];
  tasks: Task[];
}
/**
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "SerialRange".
 */
export interface SerialRange {
  from: number;
  to: number;
}
/**
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "Meter".
 */
export interface Meter {
  id: string;
  title: string;
  unit: string;
  fromOutings: boolean;
  /**
   * Counts only while this attachment is on.
   */
  attachment?: string;
  origin: Origin;
}
/**
 * Where in the schedule a thing was written.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "Origin".
 */
export interface Origin {
  /**
   * Index into `sources`.
   */
  source: number;
  line: number;
  column: number;
  /**
   * The words of the clause as the author wrote them, white space folded.
   */
  text: string;
}
/**
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "Gauge".
 */
export interface Gauge {
  id: string;
  title: string;
  unit: string;
  freshFor?: CalendarAmount;
  bands: {
    name: string;
    range: Range;
  }[];
  origin: Origin;
}
/**
 * A calendar span. Weeks are 7 days, years are 12 months, hours are 60 minutes. `calendar-months` run to the last day of the last month, or of the `period` that it lies in. With `less` or `plus`, so many days short of that or beyond it.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "CalendarAmount".
 */
export interface CalendarAmount {
  on: "calendar";
  unit: "minutes" | "days" | "months" | "calendar-months";
  count: number;
  /**
   * Of `calendar-months`: the months of the quarter, half-year or year to whose end they run.
   */
  period?: 3 | 6 | 12;
  /**
   * Days by which the span falls short: `12 months less 1 day`.
   */
  less?: number;
  /**
   * Days by which the span is longer: `7 months plus 15 days`.
   */
  plus?: number;
}
/**
 * An interval of readings; a missing edge is open. Gauge units; for a dipstick 0 is the low mark and 1 the full mark; ticks for a meter.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "Range".
 */
export interface Range {
  from?: number;
  fromIncluded: boolean;
  to?: number;
  toIncluded: boolean;
}
/**
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "Dipstick".
 */
export interface Dipstick {
  id: string;
  title: string;
  litres: number;
  freshFor?: CalendarAmount;
  origin: Origin;
}
/**
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "Duty".
 */
export interface Duty {
  id: string;
  title: string;
  origin: Origin;
}
/**
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "Attachment".
 */
export interface Attachment {
  id: string;
  title: string;
  origin: Origin;
}
/**
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "Event".
 */
export interface Event {
  id: string;
  title: string;
  origin: Origin;
  /**
   * It happens each time this task is done, and nobody notes it: what `after` and `on` a task name. The id is the task's.
   */
  task?: string;
  /**
   * The day on which it happens to every machine, and nobody notes it; to one that entered service later, when it did. Days since 1970-01-01.
   */
  on?: number;
}
/**
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "Supply".
 */
export interface Supply {
  id: string;
  title: string;
  unit?: string;
  knownAs?: string;
  origin: Origin;
}
/**
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "Defect".
 */
export interface Defect {
  id: string;
  title: string;
  classes: {
    name: string;
    title?: string;
  }[];
  rules: {
    class: string;
    outcome: Outcome;
    origin: Origin;
  }[];
  origin: Origin;
}
/**
 * What follows from a reading or a class of defect.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "Outcome".
 */
export interface Outcome {
  verdict: "fine" | "caution" | "hold";
  text?: string;
  then: {
    task: string;
    within?: Amount;
  }[];
}
/**
 * So much on a meter.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "MeterAmount".
 */
export interface MeterAmount {
  on: "meter";
  meter: string;
  ticks: Ticks;
}
/**
 * So much time at work, in a duty if one is named; 36000 ticks an hour.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "WorkAmount".
 */
export interface WorkAmount {
  on: "work";
  duty?: string;
  ticks: Ticks;
}
/**
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "Stop".
 */
export interface Stop {
  id: string;
  title: string;
  /**
   * A condition node.
   */
  condition: number;
  origin: Origin;
}
/**
 * Moving parts, places and steps.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "Access".
 */
export interface Access {
  parts: {
    id: string;
    title?: string;
    positions: {
      name: string;
      aloft: boolean;
    }[];
    origin: Origin;
  }[];
  rest: Stance;
  work?: Stance;
  places: {
    id: string;
    title: string;
    under?: string;
    origin: Origin;
  }[];
  walks: {
    from: string;
    to: string;
    seconds: number;
  }[];
  steps: Step[];
  nevers: Never[];
}
/**
 * A position for each part.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "Stance".
 */
export interface Stance {
  [k: string]: string;
}
/**
 * A change of one part from one position to another; without `back` there is no way back.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "Step".
 */
export interface Step {
  id: string;
  title: string;
  part: string;
  from: string;
  to: string;
  /**
   * A condition node.
   */
  while?: number;
  back?: {
    title: string;
  };
  site: Site;
  reason?: string;
  source?: string;
  origin: Origin;
}
/**
 * What doing a task or a step takes.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "Site".
 */
export interface Site {
  seconds: number;
  place?: string;
  under: Under[];
  cautions: Caution[];
  /**
   * Calls for a qualified mechanic.
   */
  qualified: boolean;
  tools: string[];
  procedure: string[];
}
/**
 * The person is under or in this part; `meant` is the author saying why that is intended although it is aloft.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "Under".
 */
export interface Under {
  part: string;
  meant?: string;
}
/**
 * A signal word of ANSI Z535.6 and what it says.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "Caution".
 */
export interface Caution {
  signal: "danger" | "warning" | "caution" | "notice";
  text: string;
}
/**
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "Never".
 */
export interface Never {
  title: string;
  /**
   * A condition node.
   */
  condition: number;
  origin: Origin;
}
/**
 * Every so much, counted from the last doing.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "IntervalNode".
 */
export interface IntervalNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "interval";
  amount: Amount;
  /**
   * How many doings lie in any such span: it is counted from the first of the last so many. One if left out.
   */
  doings?: number;
  apart?: CalendarAmount1;
  standstill?: CalendarAmount2;
  count: Counting;
  early: Margin;
  late: Margin;
  lead: Margin;
  hold?: LateHold;
  /**
   * Reached only beyond the due point, not at it (`more than`).
   */
  strict: boolean;
  origin: Origin;
}
/**
 * A calendar span. Weeks are 7 days, years are 12 months, hours are 60 minutes. `calendar-months` run to the last day of the last month, or of the `period` that it lies in. With `less` or `plus`, so many days short of that or beyond it.
 */
export interface CalendarAmount1 {
  on: "calendar";
  unit: "minutes" | "days" | "months" | "calendar-months";
  count: number;
  /**
   * Of `calendar-months`: the months of the quarter, half-year or year to whose end they run.
   */
  period?: 3 | 6 | 12;
  /**
   * Days by which the span falls short: `12 months less 1 day`.
   */
  less?: number;
  /**
   * Days by which the span is longer: `7 months plus 15 days`.
   */
  plus?: number;
}
/**
 * A calendar span. Weeks are 7 days, years are 12 months, hours are 60 minutes. `calendar-months` run to the last day of the last month, or of the `period` that it lies in. With `less` or `plus`, so many days short of that or beyond it.
 */
export interface CalendarAmount2 {
  on: "calendar";
  unit: "minutes" | "days" | "months" | "calendar-months";
  count: number;
  /**
   * Of `calendar-months`: the months of the quarter, half-year or year to whose end they run.
   */
  period?: 3 | 6 | 12;
  /**
   * Days by which the span falls short: `12 months less 1 day`.
   */
  less?: number;
  /**
   * Days by which the span is longer: `7 months plus 15 days`.
   */
  plus?: number;
}
/**
 * How far before or after a due point: on the axis of its limit, worked out when the schedule is compiled. Days for calendar limits, ticks for the others. One that is stated in months goes by the calendar, from the due day; its `size` then counts 30 days a month and serves to compare it only.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "Margin".
 */
export interface Margin {
  size: number;
  calendar?: CalendarAmount;
}
/**
 * A hard stop: the machine is held once the limit is more than this late.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "LateHold".
 */
export interface LateHold {
  after: Margin;
  text: string;
}
/**
 * An hour interval that hours in several duties use up in proportion: due when the sum of h_i/N_i reaches 1 (Palmgren-Miner).
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "DutyMixNode".
 */
export interface DutyMixNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "duty-mix";
  meter: string;
  ticks: Ticks;
  duties: {
    duty: string;
    ticks: Ticks;
  }[];
  count: Counting;
  early: Margin;
  late: Margin;
  lead: Margin;
  hold?: LateHold;
  origin: Origin;
}
/**
 * At S1, S2, S3 after the start of the machine or after an event.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "StagesNode".
 */
export interface StagesNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "stages";
  amounts: Amount[];
  from:
    | {
        is: "start";
      }
    | {
        is: "event";
        event: string;
      };
  early: Margin;
  late: Margin;
  lead: Margin;
  hold?: LateHold;
  origin: Origin;
}
/**
 * `first` until its stages are met, `then` afterwards; nothing further where there is no `then`.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "FirstNode".
 */
export interface FirstNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "first";
  /**
   * A trigger node.
   */
  first: number;
  /**
   * A trigger node.
   */
  then?: number;
  origin: Origin;
}
/**
 * Every multiple of so much on a meter.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "MarksNode".
 */
export interface MarksNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "marks";
  amount: MeterAmount;
  early: Margin;
  late: Margin;
  lead: Margin;
  hold?: LateHold;
  origin: Origin;
}
/**
 * On fixed days: of each week, of each month, or of each year.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "CalendarMarksNode".
 */
export interface CalendarMarksNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "calendar-marks";
  months: number;
  days: {
    day: number;
    month?: number;
  }[];
  /**
   * Days of each week besides, Monday is 1.
   */
  weekdays?: number[];
  /**
   * Those days of the week not in each week, but in every `count` of them, counted from the first of them: days since 1970-01-01.
   */
  weeks?: {
    count: number;
    from: number;
  };
  /**
   * Days of a month by the week besides: the first of a day of the week on or after a day of the month, so that the second Monday is that from day 8 on; the last of it where no `day` is given.
   */
  placed?: {
    weekday: number;
    day?: number;
    month?: number;
  }[];
  /**
   * How many doings meet a mark. One if left out.
   */
  doings?: number;
  apart?: CalendarAmount3;
  /**
   * Leave out months that lack the day, instead of taking their last day.
   */
  skip: boolean;
  early: Margin;
  late: Margin;
  lead: Margin;
  hold?: LateHold;
  origin: Origin;
}
/**
 * A calendar span. Weeks are 7 days, years are 12 months, hours are 60 minutes. `calendar-months` run to the last day of the last month, or of the `period` that it lies in. With `less` or `plus`, so many days short of that or beyond it.
 */
export interface CalendarAmount3 {
  on: "calendar";
  unit: "minutes" | "days" | "months" | "calendar-months";
  count: number;
  /**
   * Of `calendar-months`: the months of the quarter, half-year or year to whose end they run.
   */
  period?: 3 | 6 | 12;
  /**
   * Days by which the span falls short: `12 months less 1 day`.
   */
  less?: number;
  /**
   * Days by which the span is longer: `7 months plus 15 days`.
   */
  plus?: number;
}
/**
 * Within a named month.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "CalendarWindowNode".
 */
export interface CalendarWindowNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "calendar-window";
  months: number;
  month: number;
  early: Margin;
  late: Margin;
  lead: Margin;
  hold?: LateHold;
  origin: Origin;
}
/**
 * Reached when any part is, or when all are.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "WhicheverNode".
 */
export interface WhicheverNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "whichever";
  mode: "first" | "last";
  /**
   * Items: A trigger node.
   */
  parts: number[];
  origin: Origin;
}
/**
 * The separate timing clauses of one task: due when any of them says so.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "AnyNode".
 */
export interface AnyNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "any";
  /**
   * Items: A trigger node.
   */
  parts: number[];
  origin: Origin;
}
/**
 * Before or after work or storage; `on`: on each day of work, on that day.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "OccasionNode".
 */
export interface OccasionNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "occasion";
  when: "before" | "after" | "on";
  of: "day" | "outing" | "shift" | "work" | "storage";
  origin: Origin;
}
/**
 * Within so many minutes before the start of each day's work, outing or shift, and not earlier.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "ShortlyBeforeNode".
 */
export interface ShortlyBeforeNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "shortly-before";
  of: "day" | "outing" | "shift";
  withinMinutes: number;
  origin: Origin;
}
/**
 * After an attachment was put on.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "AttachingNode".
 */
export interface AttachingNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "attaching";
  attachment: string;
  origin: Origin;
}
/**
 * After each refuelling.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "RefuellingNode".
 */
export interface RefuellingNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "refuelling";
  origin: Origin;
}
/**
 * After a declared event, at once or within a span.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "EventNode".
 */
export interface EventNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "event";
  event: string;
  /**
   * Only after so many times; after each where it is left out. Not together with `within`.
   */
  happenings?: number;
  within?: Amount;
  early: Margin;
  late: Margin;
  lead: Margin;
  hold?: LateHold;
  origin: Origin;
}
/**
 * Due while a condition holds, until done.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "WhenNode".
 */
export interface WhenNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "when";
  /**
   * A condition node.
   */
  condition: number;
  origin: Origin;
}
/**
 * A limit that counts only while a condition holds.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "WhileNode".
 */
export interface WhileNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "while";
  /**
   * A condition node.
   */
  condition: number;
  /**
   * A trigger node.
   */
  then: number;
  origin: Origin;
}
/**
 * Asked for by what was read in another task, or by the class of an open defect.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "AskedNode".
 */
export interface AskedNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "asked";
  by:
    | {
        is: "reading";
        task: string;
        reads: number;
        rule: number;
      }
    | {
        is: "defect";
        defect: string;
        class: string;
      };
  within?: Amount;
  early: Margin;
  late: Margin;
  lead: Margin;
  hold?: LateHold;
  origin: Origin;
}
/**
 * At a share of the time that a level takes to fall to its low mark.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "SoonerNode".
 */
export interface SoonerNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "sooner";
  dipstick: string;
  share: number;
  origin: Origin;
}
/**
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "AndNode".
 */
export interface AndNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "and";
  /**
   * Items: A condition node.
   */
  parts: number[];
  origin: Origin;
}
/**
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "OrNode".
 */
export interface OrNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "or";
  /**
   * Items: A condition node.
   */
  parts: number[];
  origin: Origin;
}
/**
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "NotNode".
 */
export interface NotNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "not";
  /**
   * A condition node.
   */
  part: number;
  origin: Origin;
}
/**
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "PositionIsNode".
 */
export interface PositionIsNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "position-is";
  part: string;
  position: string;
  origin: Origin;
}
/**
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "AttachmentIsNode".
 */
export interface AttachmentIsNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "attachment-is";
  attachment: string;
  on: boolean;
  origin: Origin;
}
/**
 * Open or not; of this class; or of a later class than this one.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "DefectIsNode".
 */
export interface DefectIsNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "defect-is";
  defect: string;
  open: boolean;
  class?: string;
  worseThan?: string;
  origin: Origin;
}
/**
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "DutyIsNode".
 */
export interface DutyIsNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "duty-is";
  duty: string;
  origin: Origin;
}
/**
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "CompareNode".
 */
export interface CompareNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "compare";
  instrument: Instrument;
  range: Range;
  origin: Origin;
}
/**
 * Something that can be read.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "Instrument".
 */
export interface Instrument {
  is: "gauge" | "dipstick" | "meter";
  id: string;
}
/**
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "TrendNode".
 */
export interface TrendNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "trend";
  instrument: Instrument;
  direction: "climbs" | "falls";
  by: number;
  withinMinutes: number;
  origin: Origin;
}
/**
 * Read, done or happened within a span before now; ever, where the span is left out.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "RecentNode".
 */
export interface RecentNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "recent";
  what:
    | {
        is: "read";
        instrument: Instrument;
      }
    | {
        is: "done";
        task: string;
      }
    | {
        is: "happened";
        event: string;
      };
  /**
   * At least so many times; once where it is left out.
   */
  times?: number;
  within?: Amount;
  origin: Origin;
}
/**
 * The machine is older than this.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "AgeNode".
 */
export interface AgeNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "age";
  span: CalendarAmount;
  origin: Origin;
}
/**
 * No outing has ended for at least this long.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "IdleNode".
 */
export interface IdleNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "idle";
  span: CalendarAmount;
  origin: Origin;
}
/**
 * No outing since the task was last done.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "UnworkedNode".
 */
export interface UnworkedNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "unworked";
  task: string;
  origin: Origin;
}
/**
 * An outing is under way.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "AtWorkNode".
 */
export interface AtWorkNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "at-work";
  origin: Origin;
}
/**
 * The date lies between these days of the year, both included; it may run over the new year.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "SeasonNode".
 */
export interface SeasonNode {
  /**
   * Equal to the index in `nodes`.
   */
  id: number;
  kind: "season";
  from: MonthDay;
  to: MonthDay;
  origin: Origin;
}
/**
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "MonthDay".
 */
export interface MonthDay {
  month: number;
  day: number;
}
/**
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "Task".
 */
export interface Task {
  id: string;
  title: string;
  /**
   * The task rests while this attachment is off.
   */
  attachment?: string;
  serial?: SerialRange;
  /**
   * A trigger node.
   */
  trigger?: number;
  /**
   * A condition node.
   */
  gate?: number;
  /**
   * The condition on positions that the task needs.
   */
  stance?: number;
  site: Site;
  reads: {
    instrument: Instrument;
    rules: {
      range: Range;
      outcome: Outcome;
      origin: Origin;
    }[];
  }[];
  uses: {
    supply: string;
    amount: number;
  }[];
  torques: {
    what: string;
    newtonMetres: number;
    written: string;
  }[];
  /**
   * Transitively closed.
   */
  covers: string[];
  restarts: string[];
  follows: string[];
  metBy: string[];
  mends: string[];
  record?: RecordKept;
  reason?: string;
  source?: string;
  origin: Origin;
}
/**
 * How long the record of a doing is kept: until the first, or the last, of these.
 *
 * This interface was referenced by `RuleGraph`'s JSON-Schema
 * via the `definition` "RecordKept".
 */
export interface RecordKept {
  mode: "first" | "last";
  terms: (
    | {
        is: "span";
        span: CalendarAmount;
      }
    | {
        is: "mended";
      }
    | {
        is: "repeated";
      }
    | {
        is: "life";
      }
  )[];
}
