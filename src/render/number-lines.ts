/**
 * The arithmetic of each limit, one line apiece: base + span = due; now; left or past; allowance.
 */
import type { DuePoint, LimitFacts } from '../assess/assessment.js';
import type { Explanation, RuleFacts } from '../explain/explanation.js';
import { numberText } from '../values/number-text.js';
import { calendarInWords, lengthInWords, meterQuantity, pointOnAxis, titleOf } from './amounts-in-words.js';
import type { Titles } from './amounts-in-words.js';
import { counted } from './count-in-words.js';
import { dayInWords } from './dates-in-words.js';

/** What one limit comes to, in numbers. */
export interface NumberLine {
  /** The axis, as a label: `engine`, `calendar`, `work`. */
  readonly label: string;
  readonly text: string;
}

/** For the governing limit first, then the others in the order they were written. */
export function numberLines(explanation: Explanation): readonly NumberLine[] {
  const limits = explanation.rule === null ? [] : limitsIn(explanation.rule);
  const ordered = [
    ...limits.filter((rule) => rule.node.id === explanation.governing),
    ...limits.filter((rule) => rule.node.id !== explanation.governing),
  ];
  return ordered.flatMap((rule) => linesOf(rule, explanation.names));
}

function limitsIn(rule: RuleFacts): readonly RuleFacts[] {
  return [...(rule.limit === undefined ? [] : [rule]), ...rule.parts.flatMap(limitsIn)];
}

function linesOf(rule: RuleFacts, names: Titles): readonly NumberLine[] {
  const { limit } = rule;
  const due = limit?.due;
  if (limit === undefined || due === undefined || due === null) return [];
  const label = axisLabel(due);
  const shares = (rule.shares ?? []).filter((share) => share.ticks > 0);
  return [
    {
      label,
      text: [sum(rule, limit, due, names), standing(limit, due, names), allowance(limit, due, names)]
        .filter((part) => part !== '')
        .join('; '),
    },
    ...shareLine(shares, due, names),
  ];
}

function axisLabel(due: DuePoint): string {
  if (due.on === 'meter') return due.meter;
  return due.on === 'work' ? 'work' : 'calendar';
}

/** `1200 h + 100 h = 1300 h`; where months have moved on from an anchor, from that: `31 January 2026 + 2 × 3 months = 31 July 2026`. */
function sum(rule: RuleFacts, limit: LimitFacts, due: DuePoint, names: Titles): string {
  const end = due.on === 'calendar' && due.goodThrough ? `good through ${dayInWords(due.day)}` : pointOnAxis(due, names);
  if (limit.base === null || limit.span === null || rule.shares !== undefined || isMark(rule))
    return `due ${due.on === 'calendar' ? 'on' : 'at'} ${end}`;
  const { anchor } = limit.base;
  if (anchor !== undefined && isInMonths(rule))
    return `${pointOnAxis(anchor.point, names)} + ${anchor.spans + 1} × ${spanOf(rule, limit.span, due, names)} = ${end}`;
  const base = due.on === 'work' ? '0' : pointOnAxis(limit.base.point, names);
  const stored = rule.note?.is === 'stood-still' && rule.note.days > 0 ? ` + ${counted(rule.note.days, 'day')} in storage` : '';
  return `${base} + ${spanOf(rule, limit.span, due, names)}${stored} = ${end}`;
}

/** Months do not add up one by one: a day that one of them lacks would be lost for all that follow. */
function isInMonths({ node }: RuleFacts): boolean {
  return (
    node.kind === 'interval' && node.amount.on === 'calendar' && (node.amount.unit === 'months' || node.amount.unit === 'calendar-months')
  );
}

/** A mark stands where it stands: it is not reached by adding. */
function isMark({ node }: RuleFacts): boolean {
  return node.kind === 'marks' || node.kind === 'calendar-marks' || node.kind === 'calendar-window';
}

function spanOf(rule: RuleFacts, span: number, due: DuePoint, names: Titles): string {
  const { node } = rule;
  if (node.kind === 'interval' && node.amount.on === 'calendar') return calendarInWords(node.amount);
  return lengthInWords(span, due, names);
}

function standing(limit: LimitFacts, due: DuePoint, names: Titles): string {
  if (limit.now === null || limit.left === null) return '';
  const left = lengthInWords(limit.left, due, names);
  const where = limit.left > 0 ? `${left} left` : limit.left === 0 ? 'just reached' : `${left} past`;
  const { point, read } = limit.now;
  const reckoned = read === undefined ? '' : ` reckoned, ${pointOnAxis(read, names)} read`;
  return `now ${pointOnAxis(point, names)}${reckoned}, ${where}`;
}

function allowance(limit: LimitFacts, due: DuePoint, names: Titles): string {
  const late = distance(due, limit.overdueAfter);
  return late === null || late <= 0
    ? ''
    : `${lengthInWords(late, due, names)} late allowed, to ${limit.overdueAfter === null ? '' : pointOnAxis(limit.overdueAfter, names)}`;
}

function distance(from: DuePoint, to: DuePoint | null): number | null {
  if (to === null) return null;
  if (from.on === 'meter' && to.on === 'meter') return to.ticks - from.ticks;
  if (from.on === 'calendar' && to.on === 'calendar') return to.day - from.day;
  return from.on === 'work' && to.on === 'work' ? to.ticks - from.ticks : null;
}

/** `40 h / 100 h + 30 h / 50 h = 0.4 + 0.6 = 1`. */
function shareLine(shares: NonNullable<RuleFacts['shares']>, due: DuePoint, names: Titles): readonly NumberLine[] {
  if (shares.length === 0 || due.on !== 'meter') return [];
  const quantity = (ticks: number): string => meterQuantity(ticks, due.meter, names);
  const fractions = shares.map(
    (share) =>
      `${quantity(share.ticks)} / ${quantity(share.of)} (${share.duty === null ? 'ordinary' : titleOf(names.duties[share.duty], share.duty)})`,
  );
  const values = shares.map((share) => numberText(share.ticks / share.of, 3));
  const total = numberText(
    shares.reduce((all, share) => all + share.ticks / share.of, 0),
    3,
  );
  return [{ label: 'by duty', text: `${fractions.join(' + ')} = ${values.length > 1 ? `${values.join(' + ')} = ` : ''}${total}` }];
}
