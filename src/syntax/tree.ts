/**
 * The syntax tree: what the author wrote, with places, and nothing decided yet.
 *
 * INVARIANT: every node carries `at`, the span of its own tokens, so that a diagnostic can point at it. Names are texts here;
 * what they stand for is worked out by `check/`. One interface per production of grammar/duewright.ebnf.
 */
import type { Span } from '../base/span.js';

/** A name as it stands in the text; qualified names keep their dot (`flail-mower.rotor`). */
export interface NameNode {
  readonly kind: 'name';
  readonly at: Span;
  readonly text: string;
}

/** A quoted text, its escapes already resolved. */
export interface TextNode {
  readonly kind: 'text';
  readonly at: Span;
  readonly text: string;
}

/** A number as written; `text` keeps the author's digits for the formatter. */
export interface NumberNode {
  readonly kind: 'number';
  readonly at: Span;
  readonly text: string;
  readonly value: number;
}

/** An ISO 8601 date as written; not yet known to exist in the calendar. */
export interface DateNode {
  readonly kind: 'date';
  readonly at: Span;
  readonly text: string;
}

/** A local time of day, `HH:MM`, as written. */
export interface TimeNode {
  readonly kind: 'time';
  readonly at: Span;
  readonly text: string;
}

/** A unit as written: `h`, `months`, `calendar months`, `calendar years`, `°C`, `N·m`. */
export interface UnitNode {
  readonly kind: 'unit';
  readonly at: Span;
  readonly text: string;
}

/** `6.6 L`, `210 N·m`, `1 min`. */
export interface QuantityNode {
  readonly kind: 'quantity';
  readonly at: Span;
  readonly number: NumberNode;
  readonly unit: UnitNode;
}

/** `10 %`. */
export interface PercentNode {
  readonly kind: 'percent';
  readonly at: Span;
  readonly number: NumberNode;
}

/** `100 h of engine`, `12 calendar months`, `30 min of work in tall-growth`, `12 months less 1 day`, `7 months plus 15 days`, `50 % of 48 months`. */
export interface SpanNode {
  readonly kind: 'span';
  readonly at: Span;
  /** `50 % of`: only this share of it. In intervals only. */
  readonly share?: PercentNode;
  readonly number: NumberNode;
  readonly unit: UnitNode;
  /** `less 1 day`: days by which it falls short. */
  readonly less?: NumberNode;
  /** `plus 15 days`: days that it has besides. */
  readonly plus?: NumberNode;
  /** `of engine`: the meter; `of work [in duty]`: time at work; undefined: calendar time, or to be told from the unit. */
  readonly of?:
    { readonly kind: 'meter'; readonly name: NameNode } | { readonly kind: 'work'; readonly at: Span; readonly duty?: NameNode };
}

// ---- Files -----------------------------------------------------------------------------------------------------------

/** One parsed file. */
export interface FileNode {
  readonly kind: 'file';
  readonly at: Span;
  readonly header: HeaderNode;
  readonly declarations: readonly DeclarationNode[];
  /** Every comment, in order, `#` included; `format/` puts each back in its place. */
  readonly comments: readonly CommentNode[];
  /** Names of declarations that could not be read: using one is no further mistake. */
  readonly unread?: readonly NameNode[];
}

export interface CommentNode {
  readonly kind: 'comment';
  readonly at: Span;
  readonly text: string;
}

export interface HeaderNode {
  readonly kind: 'header';
  readonly at: Span;
  readonly role: 'schedule' | 'variant' | 'part';
  readonly name: NameNode;
  readonly title: TextNode;
  readonly clauses: readonly HeadClauseNode[];
  /** Something in it could not be read and was reported: what it seems to lack may be just that. */
  readonly partial?: true;
}

export type HeadClauseNode =
  | { readonly kind: 'language'; readonly at: Span; readonly edition: NumberNode }
  | { readonly kind: 'edition'; readonly at: Span; readonly number: NumberNode; readonly date: DateNode; readonly by: TextNode }
  | { readonly kind: 'fits'; readonly at: Span; readonly model: TextNode; readonly serial?: SerialRangeNode }
  | { readonly kind: 'for-attachment'; readonly at: Span }
  | { readonly kind: 'varies'; readonly at: Span; readonly path: TextNode }
  | { readonly kind: 'use'; readonly at: Span; readonly path: TextNode };

export interface SerialRangeNode {
  readonly kind: 'serial-range';
  readonly at: Span;
  readonly from: NumberNode;
  readonly to: NumberNode;
}

export type DeclarationNode =
  | MeterNode
  | GaugeNode
  | DipstickNode
  | DutyNode
  | AttachmentNode
  | PositionNode
  | RestNode
  | PlaceNode
  | WalkNode
  | StepNode
  | NeverNode
  | StopNode
  | SupplyNode
  | HazardNode
  | EventNode
  | DefectNode
  | TaskNode
  | ChangeNode
  | RemoveNode
  | ExampleNode;

// ---- What the machine has --------------------------------------------------------------------------------------------

interface Declared<K extends string> {
  readonly kind: K;
  readonly at: Span;
  readonly name: NameNode;
  readonly title: TextNode;
}

export interface MeterNode extends Declared<'meter'> {
  readonly unit: UnitNode;
  /** `from outings`: no reading is taken; the hours of outings are added up. */
  readonly fromOutings: boolean;
}

export interface GaugeNode extends Declared<'gauge'> {
  readonly unit: UnitNode;
  readonly fresh?: SpanNode;
  readonly bands: readonly { readonly kind: 'named-band'; readonly at: Span; readonly name: NameNode; readonly band: BandNode }[];
  /** Something in it could not be read and was reported: what it seems to lack may be just that. */
  readonly partial?: true;
}

export interface DipstickNode extends Declared<'dipstick'> {
  /** What the span from the low to the full mark holds. */
  readonly range: QuantityNode;
  readonly fresh?: SpanNode;
}

export type DutyNode = Declared<'duty'>;

export interface AttachmentNode extends Declared<'attachment'> {
  /** `follows "flail-mower.due"`: the attachment's own schedule. */
  readonly follows?: TextNode;
}

export interface SupplyNode extends Declared<'supply'> {
  /** Undefined when counted by the piece (`each`). */
  readonly unit?: UnitNode;
  readonly knownAs?: TextNode;
}

export type SignalWord = 'danger' | 'warning' | 'caution' | 'notice';

export interface HazardNode {
  readonly kind: 'hazard';
  readonly at: Span;
  readonly name: NameNode;
  readonly signal: SignalWord;
  readonly text: TextNode;
}

export interface EventNode extends Declared<'event'> {
  /** The day on which it happens to every machine: nobody notes it. */
  readonly on?: DateNode;
}

export interface DefectNode extends Declared<'defect'> {
  /** In the order written: from slight to grave. */
  readonly classes: readonly { readonly name: NameNode; readonly title?: TextNode }[];
  readonly rules: readonly { readonly kind: 'class-rule'; readonly at: Span; readonly name: NameNode; readonly outcome: OutcomeNode }[];
}

export interface StopNode extends Declared<'stop'> {
  readonly condition: ConditionNode;
}

// ---- Access ----------------------------------------------------------------------------------------------------------

export interface PositionNode {
  readonly kind: 'position';
  readonly at: Span;
  readonly name: NameNode;
  readonly title?: TextNode;
  readonly positions: readonly { readonly name: NameNode; readonly aloft: boolean }[];
}

export interface StanceItemNode {
  readonly kind: 'stance-item';
  readonly at: Span;
  readonly part: NameNode;
  readonly position: NameNode;
}

/** `at rest …` or `at work …`. */
export interface RestNode {
  readonly kind: 'rest';
  readonly at: Span;
  readonly which: 'rest' | 'work';
  readonly items: readonly StanceItemNode[];
}

export interface PlaceNode extends Declared<'place'> {
  readonly under?: NameNode;
}

export interface WalkNode {
  readonly kind: 'walk';
  readonly at: Span;
  readonly from: NameNode;
  readonly to: NameNode;
  readonly time: QuantityNode;
}

export interface StepNode extends Declared<'step'> {
  readonly part: NameNode;
  readonly from: NameNode;
  readonly to: NameNode;
  readonly clauses: readonly StepClauseNode[];
}

export type StepClauseNode =
  | { readonly kind: 'while-stance'; readonly at: Span; readonly condition: ConditionNode }
  | { readonly kind: 'back'; readonly at: Span; readonly title: TextNode }
  | { readonly kind: 'one-way'; readonly at: Span }
  | SiteNode
  | CautionNode
  | ToolsNode
  | ProcedureNode
  | ReasonNode
  | SourceNode;

export interface NeverNode {
  readonly kind: 'never';
  readonly at: Span;
  readonly title: TextNode;
  readonly condition: ConditionNode;
}

// ---- Tasks -----------------------------------------------------------------------------------------------------------

export interface TaskNode extends Declared<'task'> {
  readonly clauses: readonly TaskClauseNode[];
  /** Something in it could not be read and was reported: what it seems to lack may be just that. */
  readonly partial?: true;
}

/** `change task`: each clause replaces the base's clauses of its kind; a title replaces the title. */
export interface ChangeNode {
  readonly kind: 'change';
  readonly at: Span;
  readonly name: NameNode;
  readonly title?: TextNode;
  readonly clauses: readonly TaskClauseNode[];
  /** Something in it could not be read and was reported: what it seems to lack may be just that. */
  readonly partial?: true;
}

export interface RemoveNode {
  readonly kind: 'remove';
  readonly at: Span;
  readonly name: NameNode;
}

export type TaskClauseNode =
  | EveryNode
  | FirstNode
  | SeriesNode
  | InDutyNode
  | WhileEveryNode
  | WhenNode
  | OccasionNode
  | SoonerNode
  | GateNode
  | CountNode
  | AllowNode
  | LeadNode
  | HoldNode
  | SiteNode
  | WithNode
  | ReadsNode
  | UsesNode
  | ToolsNode
  | TightenNode
  | ProcedureNode
  | CautionNode
  | DependenceNode
  | RecordNode
  | ReasonNode
  | SourceNode;

export interface EveryNode {
  readonly kind: 'every';
  readonly at: Span;
  readonly plan: PlanNode;
}

export type PlanNode = WhicheverNode | LimitNode;

export interface WhicheverNode {
  readonly kind: 'whichever';
  readonly at: Span;
  /** Undefined when the author left the words out: a diagnostic, with `first` assumed. */
  readonly mode?: 'first' | 'last';
  readonly parts: readonly PlanNode[];
}

export type LimitNode =
  /** `strict`: `more than 1 h of …`, reached only beyond the due point. */
  | {
      readonly kind: 'interval';
      readonly at: Span;
      readonly span: SpanNode;
      readonly strict: boolean;
      readonly often?: OftenNode;
      readonly standstill?: StandstillNode;
    }
  | { readonly kind: 'multiple'; readonly at: Span; readonly span: SpanNode }
  | { readonly kind: 'look'; readonly at: Span; readonly span: SpanNode; readonly finding: PercentNode; readonly missing: PercentNode }
  | {
      readonly kind: 'calendar-marks';
      readonly at: Span;
      /** 1 when not written. */
      readonly number?: NumberNode;
      readonly unit: UnitNode;
      readonly days: readonly MarkDayNode[];
      readonly whereItExists: boolean;
      /** In their place: days by the week. */
      readonly byWeek?: ByWeekNode;
    }
  | {
      readonly kind: 'calendar-window';
      readonly at: Span;
      readonly number?: NumberNode;
      readonly unit: UnitNode;
      readonly month: MonthNode;
    }
  /** `Monday and Thursday`. */
  | { readonly kind: 'weekdays'; readonly at: Span; readonly days: readonly WeekdayNode[] }
  /** `calendar year`, `calendar year 2 times`: once, or so many times, in each. `unit` is `week`, `month`, `quarter`, `half-year` or `year`. */
  | { readonly kind: 'calendar-period'; readonly at: Span; readonly unit: UnitNode; readonly often?: OftenNode };

/** `2 times, 120 days apart`: done so often in the span before it, each so long after the last that counts. */
export interface OftenNode {
  readonly kind: 'often';
  readonly at: Span;
  readonly times: NumberNode;
  readonly apart?: SpanNode;
}

/** `not counting storage of 30 days or more`. */
export interface StandstillNode {
  readonly kind: 'standstill';
  readonly at: Span;
  /** Undefined where storage of any length does not count. */
  readonly atLeast?: SpanNode;
}

export interface WeekdayNode {
  readonly kind: 'weekday';
  readonly at: Span;
  /** 1 (Monday) to 7. */
  readonly weekday: number;
}

export interface MonthNode {
  readonly kind: 'month';
  readonly at: Span;
  /** 1 to 12. */
  readonly month: number;
}

/** `day 15`, or `1 November`. */
export interface MarkDayNode {
  readonly kind: 'mark-day';
  readonly at: Span;
  readonly day: NumberNode;
  readonly month?: MonthNode;
}

/** `the first Monday, the last Friday`; `Monday and Thursday from 2026-03-02`, where the unit is weeks. */
export interface ByWeekNode {
  readonly kind: 'by-week';
  readonly at: Span;
  readonly days: readonly PlacedWeekdayNode[];
  readonly from?: DateNode;
}

/** `the first Monday of May`; of weeks the day alone. */
export interface PlacedWeekdayNode {
  readonly kind: 'placed-weekday';
  readonly at: Span;
  readonly nth?: 1 | 2 | 3 | 4 | 'last';
  readonly weekday: WeekdayNode;
  readonly month?: MonthNode;
}

export interface FirstNode {
  readonly kind: 'first';
  readonly at: Span;
  readonly what: { readonly kind: 'stages'; readonly spans: readonly SpanNode[] } | { readonly kind: 'plan'; readonly plan: PlanNode };
  /** `after wheel-refit`: from each of these events instead of from the machine's start. */
  readonly after?: NameNode;
}

/** `at 1 h, 10 h, 50 h of engine after wheel-refit`. */
export interface SeriesNode {
  readonly kind: 'series';
  readonly at: Span;
  readonly spans: readonly SpanNode[];
  readonly event: NameNode;
}

export interface InDutyNode {
  readonly kind: 'in-duty';
  readonly at: Span;
  readonly duty: NameNode;
  readonly span: SpanNode;
}

export interface WhileEveryNode {
  readonly kind: 'while-every';
  readonly at: Span;
  readonly condition: ConditionNode;
  readonly plan: PlanNode;
}

export interface WhenNode {
  readonly kind: 'when';
  readonly at: Span;
  readonly condition: ConditionNode;
}

export type Round = 'day' | 'outing' | 'shift';

/** What an occasion waits for; shared by `task` and by `expect … because`. */
export type OccasionWhat =
  | { readonly when: 'before'; readonly of: Round | 'storage' }
  | { readonly when: 'after'; readonly of: Round | 'work' | 'storage' }
  | { readonly when: 'after-attaching'; readonly attachment: NameNode }
  /** `within 3 h before each shift`. */
  | { readonly when: 'shortly-before'; readonly of: Round; readonly within: SpanNode }
  /** `on each day of work`. */
  | { readonly when: 'on'; readonly of: 'day' }
  | { readonly when: 'refuelling' }
  | { readonly when: 'event'; readonly event: NameNode; readonly within?: SpanNode }
  /** `after 5 times clean-element`. */
  | { readonly when: 'so-often'; readonly event: NameNode; readonly times: NumberNode };

export interface OccasionNode {
  readonly kind: 'occasion';
  readonly at: Span;
  readonly what: OccasionWhat;
}

export interface SoonerNode {
  readonly kind: 'sooner';
  readonly at: Span;
  /** 0 < share ≤ 1. */
  readonly share: number;
  readonly dipstick: NameNode;
}

export type GateNode =
  | { readonly kind: 'only-if'; readonly at: Span; readonly condition: ConditionNode }
  | { readonly kind: 'unless'; readonly at: Span; readonly condition: ConditionNode }
  | { readonly kind: 'for-serial'; readonly at: Span; readonly range: SerialRangeNode };

export interface CountNode {
  readonly kind: 'count';
  readonly at: Span;
  readonly from: 'doing' | 'due-if-late' | 'due-within-allowance';
}

export type MarginNode =
  PercentNode | SpanNode | { readonly kind: 'lesser'; readonly at: Span; readonly first: MarginNode; readonly second: MarginNode };

export interface AllowNode {
  readonly kind: 'allow';
  readonly at: Span;
  readonly sides: readonly { readonly margin: MarginNode; readonly side: 'early' | 'late' }[];
}

export interface LeadNode {
  readonly kind: 'lead';
  readonly at: Span;
  readonly margins: readonly MarginNode[];
}

/** `hold when overdue "…"` (no margin) or `hold 20 h late "…"`. */
export interface HoldNode {
  readonly kind: 'hold';
  readonly at: Span;
  readonly margin?: MarginNode;
  readonly text: TextNode;
}

export type SiteNode =
  | { readonly kind: 'takes'; readonly at: Span; readonly time: QuantityNode }
  | { readonly kind: 'place-at'; readonly at: Span; readonly place: NameNode }
  | { readonly kind: 'under'; readonly at: Span; readonly part: NameNode; readonly meant?: TextNode };

export interface WithNode {
  readonly kind: 'with';
  readonly at: Span;
  readonly condition: ConditionNode;
}

export interface ReadsNode {
  readonly kind: 'reads';
  readonly at: Span;
  readonly instrument: NameNode;
  readonly bands: readonly { readonly kind: 'band-rule'; readonly at: Span; readonly band: BandNode; readonly outcome: OutcomeNode }[];
}

/** `from`/`to` undefined: open on that side. `above 75` excludes its edge; `to below 90` excludes it; a bare name is a named band. */
export type BandNode =
  | {
      readonly kind: 'range';
      readonly at: Span;
      readonly from?: LevelNode;
      readonly fromIncluded: boolean;
      readonly to?: LevelNode;
      readonly toIncluded: boolean;
    }
  | { readonly kind: 'band-name'; readonly at: Span; readonly name: NameNode };

export type LevelNode = QuantityNode | NumberNode | NameNode;

export interface OutcomeNode {
  readonly kind: 'outcome';
  readonly at: Span;
  readonly verdict: 'fine' | 'caution' | 'hold';
  readonly text?: TextNode;
  /** `within` undefined: now. */
  readonly then: readonly { readonly at: Span; readonly task: NameNode; readonly within?: SpanNode }[];
}

export interface UsesNode {
  readonly kind: 'uses';
  readonly at: Span;
  readonly items: readonly { readonly at: Span; readonly number: NumberNode; readonly unit?: UnitNode; readonly supply: NameNode }[];
}

export interface ToolsNode {
  readonly kind: 'needs';
  readonly at: Span;
  readonly tools: readonly TextNode[];
}

export interface TightenNode {
  readonly kind: 'tighten';
  readonly at: Span;
  readonly what: TextNode | NameNode;
  readonly torque: QuantityNode;
}

export interface ProcedureNode {
  readonly kind: 'do';
  readonly at: Span;
  readonly text: TextNode;
}

export type CautionNode =
  | { readonly kind: 'signal'; readonly at: Span; readonly signal: SignalWord; readonly text: TextNode }
  | { readonly kind: 'beware'; readonly at: Span; readonly hazards: readonly NameNode[] }
  | { readonly kind: 'qualified'; readonly at: Span };

export interface DependenceNode {
  readonly kind: 'covers' | 'restarts' | 'follows' | 'mends' | 'met-by';
  readonly at: Span;
  readonly names: readonly NameNode[];
}

/** `record kept 14 months`, `record kept until mended or 12 months, whichever last`. */
export interface RecordNode {
  readonly kind: 'record';
  readonly at: Span;
  /** Undefined for one term, and where the author left the words out. */
  readonly mode?: 'first' | 'last';
  readonly terms: readonly KeptNode[];
}

/** How long a record is kept. */
export type KeptNode = SpanNode | { readonly kind: 'mended' | 'repeated' | 'life'; readonly at: Span };

export interface ReasonNode {
  readonly kind: 'reason';
  readonly at: Span;
  readonly text: TextNode;
}

export interface SourceNode {
  readonly kind: 'source';
  readonly at: Span;
  readonly text: TextNode;
}

// ---- Conditions ------------------------------------------------------------------------------------------------------

export type ConditionNode =
  | { readonly kind: 'and' | 'or'; readonly at: Span; readonly parts: readonly ConditionNode[] }
  | { readonly kind: 'not'; readonly at: Span; readonly part: ConditionNode }
  | FactNode;

export type FactNode =
  /** `panel off`, `flail-mower is on`, `hydraulic-seep is open`, `coolant is high`: told apart by what `subject` names. */
  | { readonly kind: 'is'; readonly at: Span; readonly subject: NameNode; readonly word: NameNode }
  | {
      readonly kind: 'compare';
      readonly at: Span;
      readonly subject: NameNode;
      readonly op: 'above' | 'below' | 'at-least' | 'at-most';
      readonly level: LevelNode;
    }
  | { readonly kind: 'between'; readonly at: Span; readonly subject: NameNode; readonly from: LevelNode; readonly to: LevelNode }
  | {
      readonly kind: 'trend';
      readonly at: Span;
      readonly subject: NameNode;
      readonly direction: 'climbs' | 'falls';
      readonly by: QuantityNode;
      readonly within: SpanNode;
    }
  | {
      readonly kind: 'recent';
      readonly at: Span;
      readonly subject: NameNode;
      readonly what: 'read' | 'done' | 'happened';
      /** At least so many times. */
      readonly times?: NumberNode;
      /** Undefined for `ever done`, `ever happened`. */
      readonly within?: SpanNode;
    }
  | { readonly kind: 'worse'; readonly at: Span; readonly defect: NameNode; readonly than: NameNode }
  | { readonly kind: 'in'; readonly at: Span; readonly duty: NameNode }
  | { readonly kind: 'machine'; readonly at: Span; readonly what: 'older' | 'idle'; readonly span: SpanNode }
  /** `no outing since look-round`: since that task was done. */
  | { readonly kind: 'unworked'; readonly at: Span; readonly task: NameNode }
  /** `machine at work`: an outing is under way. */
  | { readonly kind: 'at-work'; readonly at: Span }
  | { readonly kind: 'season'; readonly at: Span; readonly from: MarkDayNode; readonly to: MarkDayNode };

// ---- Worked examples -------------------------------------------------------------------------------------------------

export interface ExampleNode {
  readonly kind: 'example';
  readonly at: Span;
  readonly title: TextNode;
  readonly lines: readonly ExampleLineNode[];
}

export interface ExampleLineNode {
  readonly kind: 'example-line';
  readonly at: Span;
  readonly date: DateNode;
  readonly time?: TimeNode;
  readonly items: readonly (ActNode | ExpectNode)[];
}

export type ActNode =
  | { readonly kind: 'act-meter'; readonly at: Span; readonly name: NameNode; readonly value: QuantityNode }
  | { readonly kind: 'act-reads'; readonly at: Span; readonly name: NameNode; readonly level: LevelNode }
  | { readonly kind: 'act-done'; readonly at: Span; readonly tasks: readonly NameNode[] }
  | {
      readonly kind: 'act-outing';
      readonly at: Span;
      readonly planned: boolean;
      readonly start?: TimeNode;
      readonly end?: TimeNode;
      readonly time?: QuantityNode;
      readonly duties: readonly NameNode[];
      readonly attachments: readonly NameNode[];
    }
  | { readonly kind: 'act-happens'; readonly at: Span; readonly event: NameNode }
  | { readonly kind: 'act-opens'; readonly at: Span; readonly defect: NameNode; readonly class?: NameNode }
  | { readonly kind: 'act-closes'; readonly at: Span; readonly defect: NameNode }
  | { readonly kind: 'act-attached' | 'act-detached'; readonly at: Span; readonly attachment: NameNode }
  | { readonly kind: 'act-stands'; readonly at: Span; readonly items: readonly StanceItemNode[] }
  | { readonly kind: 'act-storage'; readonly at: Span; readonly phase: 'begins' | 'ends' }
  | { readonly kind: 'act-refuelled'; readonly at: Span }
  | { readonly kind: 'act-service'; readonly at: Span }
  | { readonly kind: 'act-states'; readonly at: Span; readonly task: NameNode; readonly value?: QuantityNode; readonly meter?: NameNode };

export type ExpectNode =
  | { readonly kind: 'expect-machine'; readonly at: Span; readonly verdict: NameNode }
  | {
      readonly kind: 'expect-task';
      readonly at: Span;
      readonly task: NameNode;
      readonly state: 'clear' | 'coming-up' | 'due' | 'overdue' | 'unrecorded' | 'unknown' | 'resting';
      readonly because?: BecauseNode;
      readonly until: readonly PointNode[];
    };

export type BecauseNode =
  | { readonly kind: 'because-limit'; readonly at: Span; readonly limit: LimitNode }
  | { readonly kind: 'because-occasion'; readonly at: Span; readonly what: OccasionWhat }
  | { readonly kind: 'because-when'; readonly at: Span; readonly condition: ConditionNode }
  | { readonly kind: 'because-name'; readonly at: Span; readonly name: NameNode };

export type PointNode =
  | { readonly kind: 'point-meter'; readonly at: Span; readonly meter: NameNode; readonly value: QuantityNode }
  | { readonly kind: 'point-date'; readonly at: Span; readonly date: DateNode };
