/**
 * A limit as the subject of a sentence.
 */
import type { RuleFacts } from '../explain/explanation.js';
import type { IntervalNode, Trigger } from '../graph/rule-graph.js';
import { monthName } from '../values/calendar.js';
import { civilOf } from '../values/civil.js';
import { amountInWords, calendarInWords, meterQuantity, pointOnAxis, titleOf } from './amounts-in-words.js';
import type { Titles } from './amounts-in-words.js';
import { timesInWords } from './count-in-words.js';
import { dayInWords } from './dates-in-words.js';

/** `the 100 h of engine`, `the second stage, 10 h of engine`, `the mark at 1250 h of engine`, `April 2026`. */
export function spanInWords(rule: RuleFacts, names: Titles): string {
  const node = rule.node as Trigger;
  switch (node.kind) {
    case 'interval':
      return `the ${amountInWords(node.amount, names)}${oftenInWords(node)}`;
    case 'duty-mix':
      return `the ${meterQuantity(node.ticks, node.meter, names)} of ${node.meter}`;
    case 'stages':
      return stageInWords(rule, names);
    case 'marks':
    case 'calendar-marks':
    case 'calendar-window':
      return markInWords(rule, names);
    case 'event':
    case 'asked':
      return node.within === undefined ? 'the time' : `the time of ${amountInWords(node.within, names)}`;
    case 'sooner':
      return `the interval by the use of the ${titleOf(names.dipsticks[node.dipstick]?.title, node.dipstick)}`;
    default:
      return 'the limit';
  }
}

/** Whoever did it too soon after the last time learns here why that did not count. */
function oftenInWords({ doings, apart }: IntervalNode): string {
  if (doings === undefined) return '';
  return ` for doing it ${timesInWords(doings)}${apart === undefined ? '' : `, at least ${calendarInWords(apart)} apart,`}`;
}

function stageInWords(rule: RuleFacts, names: Titles): string {
  const { node, limit } = rule;
  if (node.kind !== 'stages') return 'the stage';
  const from = limit?.base?.point;
  const due = limit?.due;
  const amount = node.amounts.find(
    (each) => each.on === 'meter' && from?.on === 'meter' && due?.on === 'meter' && from.ticks + each.ticks === due.ticks,
  );
  if (node.amounts.length === 1 && node.amounts[0] !== undefined) return `the first ${amountInWords(node.amounts[0], names)}`;
  return amount === undefined ? 'the next stage' : `the stage of ${amountInWords(amount, names)}`;
}

function markInWords(rule: RuleFacts, names: Titles): string {
  const due = rule.limit?.due;
  if (due === undefined || due === null) return 'the next mark';
  if (due.on !== 'calendar') return `the mark at ${pointOnAxis(due, names)}`;
  if (rule.node.kind !== 'calendar-window') return `the mark of ${dayInWords(due.day)}`;
  const { year, month } = civilOf(due.day);
  return `${monthName(month) ?? ''} ${year}`;
}
