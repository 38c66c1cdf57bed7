/**
 * What one rule comes to if the task is done now: arithmetic on the recorded numbers, by kind of rule.
 *
 * Where the record does not carry enough to be sure, the answer is a range and the change is not offered.
 */
import { assertNever } from '../base/assert-never.js';
import type {
  Amount,
  CalendarAmount,
  CalendarMarksNode,
  CalendarWindowNode,
  DutyMixNode,
  IntervalNode,
  Margin,
  MarksNode,
  StagesNode,
  Trigger,
} from '../graph/rule-graph.js';
import { daysBeyond, marginAfter, marginBefore } from '../graph/calendar-amount.js';
import { hasOneMark } from '../graph/marked-days.js';
import { periodOf } from '../graph/period.js';
import { isAfter } from '../values/moment.js';
import type { RuleFacts } from './explanation.js';
import { mayAlter } from './influence.js';
import { ANYTHING, between, exactly } from './possible.js';
import type { Possible } from './possible.js';
import type { Standing } from './standing.js';

const AT_EASE = /* @__PURE__ */ between('coming-up', 'clear');

/** The state of a rule that is not made of others, after a doing now. */
export function afterDoing(rule: RuleFacts, standing: Standing): Possible {
  const node = rule.node as Trigger;
  switch (node.kind) {
    case 'interval':
      return afterInterval(node, rule, standing);
    case 'duty-mix':
      return afterDutyMix(node, rule, standing);
    case 'stages':
      return afterStages(node, rule, standing);
    case 'marks':
      return afterMarks(node, rule, standing);
    case 'calendar-marks':
    case 'calendar-window':
      return afterCalendarMarks(node, rule, standing);
    case 'occasion':
      return endedToday(rule, standing) ? ANYTHING : exactly(rule.state === 'resting' ? 'resting' : 'clear');
    case 'shortly-before':
      return afterWindow(rule, standing);
    case 'attaching':
    case 'refuelling':
    case 'event':
    case 'asked':
      return exactly(rule.state === 'resting' ? 'resting' : 'clear');
    case 'when':
      return rule.state === 'due' || rule.state === 'clear' ? exactly('clear') : between('unknown', 'clear');
    case 'while':
      return afterWhile(rule, standing);
    case 'sooner':
      return rule.state === 'clear' || rule.state === 'resting' ? between('coming-up', 'resting') : ANYTHING;
    case 'whichever':
    case 'any':
    case 'first':
      return ANYTHING;
    default:
      return assertNever(node);
  }
}

/** Whether a doing now could not be told to be after the outing that it must come after. */
function endedToday({ note }: RuleFacts, { now }: Standing): boolean {
  const end = note?.is === 'work-on' ? note.lastEnd : null;
  return end !== null && !isAfter(now, end);
}

/** Too early, it does not count; later it does, where the minutes say that it is in the window. */
function afterWindow({ note, state }: RuleFacts, { now }: Standing): Possible {
  const window = note?.is === 'work-on' ? note.window : undefined;
  if (window === undefined || state === 'coming-up' || state === 'clear') return state === undefined ? ANYTHING : exactly(state);
  return now.minute === null || window.start.minute === null ? ANYTHING : exactly('clear');
}

function afterInterval(node: IntervalNode, rule: RuleFacts, standing: Standing): Possible {
  const moved = movesOnlyToDue(node, rule);
  if (moved === null || node.doings !== undefined) return ANYTHING;
  const { amount } = node;
  if (amount.on === 'meter') {
    const now = standing.meters.get(amount.meter);
    if (now === undefined) return unread(rule, amount.meter);
    return byLeft(moved ? amount.ticks + (rule.limit?.left ?? 0) : amount.ticks, node);
  }
  if (amount.on === 'work')
    return standing.workToday ? ANYTHING : byLeft(moved ? amount.ticks + (rule.limit?.left ?? 0) : amount.ticks, node);
  if (moved) return fromDuePoint(amount, rule, node.lead);
  return fresh(amount, daysAtMost(node.lead));
}

/** Whether a doing now moves the base to the due point instead of to now; `null` if the record does not say. */
function movesOnlyToDue(node: IntervalNode | DutyMixNode, rule: RuleFacts): boolean | null {
  if (node.count === 'doing') return false;
  const left = rule.limit?.left;
  if (left === undefined || left === null) return rule.limit?.base === null ? false : null;
  if (node.count === 'due-if-late') return left < 0;
  const due = rule.limit?.due;
  if (due?.on === 'calendar')
    return due.day - left >= marginBefore(due.day, node.early) && due.day - left <= marginAfter(due.day, node.late);
  return left <= node.early.size && -left <= node.late.size;
}

/** No meter's value on the record of the rule: nobody ever read it, or the run had no need to look. */
function unread(rule: RuleFacts, meter: string): Possible {
  return rule.missing.some((missing) => missing.what === 'meter' && missing.meter === meter) ? exactly('unknown') : ANYTHING;
}

/** What `left` comes to on an axis of ticks. */
function byLeft(
  left: number,
  node: { readonly lead: { readonly size: number }; readonly late: { readonly size: number }; readonly strict?: boolean },
): Possible {
  if (left > node.lead.size) return exactly('clear');
  if (left > 0 || (left === 0 && node.strict === true)) return exactly('coming-up');
  return exactly(-left > node.late.size ? 'overdue' : 'due');
}

/** The next due day lies a span after the last one, wherever between the two the work is done. */
function fromDuePoint(amount: CalendarAmount, rule: RuleFacts, lead: Margin): Possible {
  const left = rule.limit?.left;
  if (left === undefined || left === null || amount.unit === 'minutes') return ANYTHING;
  return left + daysAtLeast(amount) > daysAtMost(lead) ? exactly('clear') : ANYTHING;
}

/** No month is shorter than 28 days. */
function daysAtLeast(amount: CalendarAmount): number {
  const { unit, count } = amount;
  return (unit === 'days' ? count : count * 28) + daysBeyond(amount);
}

/** No month is longer than 31 days, and a margin in calendar months may take in the rest of one more, or of a period. */
function daysAtMost({ size, calendar }: Margin): number {
  if (calendar === undefined) return size;
  const rest = calendar.unit === 'calendar-months' ? (calendar.period ?? 1) : 0;
  return (calendar.count + rest) * 31 + Math.max(0, daysBeyond(calendar));
}

/** A calendar span that has just begun: no month is shorter than 28 days. */
function fresh(amount: Amount, lead: number): Possible {
  if (amount.on !== 'calendar' || amount.unit === 'minutes') return ANYTHING;
  const days = daysAtLeast(amount);
  if (lead < days) return exactly('clear');
  return amount.unit === 'days' ? exactly('coming-up') : AT_EASE;
}

function afterDutyMix(node: DutyMixNode, rule: RuleFacts, standing: Standing): Possible {
  const moved = movesOnlyToDue(node, rule);
  if (standing.workToday || moved !== false) return ANYTHING;
  return standing.meters.has(node.meter) ? byLeft(node.ticks, node) : unread(rule, node.meter);
}

function afterMarks(node: MarksNode, rule: RuleFacts, standing: Standing): Possible {
  const now = standing.meters.get(node.amount.meter);
  if (now === undefined) return unread(rule, node.amount.meter);
  const step = node.amount.ticks;
  const next = (Math.floor((now.ticks + node.early.size) / step) + 1) * step;
  return byLeft(next - now.ticks, node);
}

function afterCalendarMarks(node: CalendarMarksNode | CalendarWindowNode, rule: RuleFacts, standing: Standing): Possible {
  const due = rule.limit?.due;
  if (due === undefined || due === null || due.on !== 'calendar') return ANYTHING;
  const gap = node.kind === 'calendar-marks' && !hasOneMark(node) ? 1 : node.months * 28;
  if (node.kind === 'calendar-marks' && node.doings !== undefined)
    return node.apart === undefined ? afterOneOf(node.doings, rule, standing) : ANYTHING;
  const sinceDue = standing.now.day - due.day;
  const period = node.kind === 'calendar-marks' ? periodOf(node) : null;
  // Done now, the period that now lies in is met, and the mark of the next lies at least so many months ahead.
  if (period !== null) return daysAtMost(node.lead) < period.days ? exactly('clear') : AT_EASE;
  const early = daysAtMost(node.early);
  if (sinceDue + early < 0) return rule.state === undefined ? ANYTHING : exactly(rule.state);
  const atLeast = gap - Math.max(0, sinceDue);
  return atLeast > daysAtMost(node.lead) + early ? exactly('clear') : between('due', 'clear');
}

/** One more of several doings that a mark asks for: until it is the last of them, nothing changes. */
function afterOneOf(times: number, { note, state }: RuleFacts, { isStatedUndated }: Standing): Possible {
  // With one more there may be so many that marks count from one of which nobody knows when it was.
  if (isStatedUndated()) return ANYTHING;
  return note?.is === 'times-done' && note.done + 1 < times && state !== undefined ? exactly(state) : ANYTHING;
}

function afterStages(node: StagesNode, rule: RuleFacts, standing: Standing): Possible {
  const left = nextStageLeft(node, rule, standing);
  if (left === null) return between('due', 'resting');
  return left === 'none' ? exactly('clear') : byLeft(left, node);
}

/** Ticks to the first stage that a doing now does not meet; `'none'` if it meets all; `null` if the record does not say. */
function nextStageLeft(node: StagesNode, rule: RuleFacts, standing: Standing): number | 'none' | null {
  const base = rule.limit?.base;
  if (node.amounts.length === 1 && node.from.is === 'start') return 'none';
  if (base === undefined || base === null || base.point.on !== 'meter') return null;
  const { meter, ticks } = base.point;
  const now = standing.meters.get(meter);
  const points = node.amounts.map((amount) => (amount.on === 'meter' && amount.meter === meter ? ticks + amount.ticks : null));
  if (now === undefined || points.some((point) => point === null)) return null;
  const met = rule.note?.is === 'stages' ? rule.note.met : 0;
  // Any doing meets the first stage; of a series after an event one that is after it, which on its very day the minutes must say.
  const meetsOne = node.from.is === 'start' || (base.when !== null && isAfter(standing.now, base.when));
  const atLeast = Math.max(met, meetsOne ? 1 : 0);
  const next = points.find((point, index) => point !== null && index >= atLeast && point > now.ticks + node.early.size);
  return next === undefined || next === null ? 'none' : next - now.ticks;
}

/** Whether a doing now meets all of what stands under `first`: a single stage is met by any doing. */
export function meetsFirst(rule: RuleFacts, standing: Standing): boolean | null {
  const node = rule.node as Trigger;
  if (node.kind === 'stages') {
    const next = nextStageLeft(node, rule, standing);
    return next === null ? null : next === 'none';
  }
  if (node.kind !== 'whichever') return null;
  const parts = rule.parts.map((part) => meetsFirst(part, standing));
  return parts.every((part) => part === true) ? true : null;
}

function afterWhile(rule: RuleFacts, standing: Standing): Possible {
  const [condition, then] = rule.parts;
  if (condition === undefined || then === undefined || mayAlter(condition, { is: 'doing' })) {
    return rule.state === 'clear' || rule.state === 'resting' ? exactly(rule.state) : ANYTHING;
  }
  if (condition.truth === 'false') return exactly(rule.state ?? 'clear');
  return condition.truth === 'true' && then.parts.length === 0 ? afterDoing(then, standing) : ANYTHING;
}
