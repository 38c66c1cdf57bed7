/**
 * What one limit has come to, as sentences with its numbers.
 */
import type { DuePoint, LimitFacts, TaskState } from '../assess/assessment.js';
import { dialOf } from '../explain/dial.js';
import type { Explanation, RuleFacts } from '../explain/explanation.js';
import { numberText } from '../values/number-text.js';
import { TICKS_PER_UNIT } from '../values/ticks.js';
import { inDuty, lengthInWords, meterQuantity, pointInWords, pointOnAxis, quoted, theMeter, happenedInWords } from './amounts-in-words.js';
import { listed } from '../base/listed.js';
import { dayInWords, momentInWords } from './dates-in-words.js';
import { spanInWords } from './span-in-words.js';

interface Told {
  readonly rule: RuleFacts;
  readonly limit: LimitFacts;
  readonly due: DuePoint;
  readonly explanation: Explanation;
}

/** Without a full stop; `null` for a rule that has no due point. */
export function limitSentence(rule: RuleFacts, explanation: Explanation): string | null {
  const { limit } = rule;
  if (limit === undefined || limit.due === null) return null;
  const told = { rule, limit, due: limit.due, explanation };
  if (rule.shares !== undefined) return mixSentence(told);
  if (rule.node.kind === 'calendar-window') return windowSentence(told);
  return reached(rule.state) ? upSentence(told) : leftSentence(told);
}

/** A named month that has come, is over, or is still to come. */
function windowSentence({ rule, limit, due, explanation }: Told): string {
  if (due.on !== 'calendar') return spanInWords(rule, explanation.names);
  const month = spanInWords(rule, explanation.names);
  const last = limit.overdueAfter?.on === 'calendar' ? dayInWords(limit.overdueAfter.day) : dayInWords(due.day);
  const done = lastDone(rule, limit);
  if (rule.state === 'due') return `${month} has come: it may be done until ${last}${done}`;
  if (rule.state === 'overdue') return `${month} is over: it was to be done by ${last}${done}`;
  return `${month} comes in ${lengthInWords(limit.left ?? 0, due, explanation.names)}, on ${dayInWords(due.day)}${done}`;
}

/** Marks do not count from a doing; it is told beside them. */
function lastDone(rule: RuleFacts, limit: LimitFacts): string {
  const { baseWhen, node } = rule;
  // Where several doings meet a mark, the one that it counts from is not the last.
  if (node.kind === 'calendar-marks' && node.doings !== undefined) return '';
  return limit.base?.why === 'done' && baseWhen !== null && baseWhen !== undefined
    ? `, and it was last done on ${dayInWords(baseWhen.day)}`
    : '';
}

function isMark({ node }: RuleFacts): boolean {
  return node.kind === 'marks' || node.kind === 'calendar-marks';
}

function reached(state: TaskState | undefined): boolean {
  return state === 'due' || state === 'overdue';
}

function upSentence(told: Told): string {
  const { rule, due, limit, explanation } = told;
  const { names } = explanation;
  const left = limit.left ?? 0;
  const past = left === 0 ? '' : `, ${lengthInWords(left, due, names)} past ${pointOnAxis(due, names)}`;
  const since = sinceBase(told);
  if (due.on === 'calendar')
    return `${spanInWords(rule, names)}${since} ${isPlural(rule) ? 'were' : 'was'} up ${calendarUp(due, left)}${isMark(rule) ? lastDone(rule, limit) : ''}`;
  if (due.on === 'moment') return `${spanInWords(rule, names)}${since} ${isPlural(rule) ? 'were' : 'was'} up on ${momentInWords(due.at)}`;
  const verb = isPlural(rule) ? 'are' : 'is';
  return `${spanInWords(rule, names)}${since} ${verb} ${left === 0 ? 'just up' : 'up'}: ${standsAt(told)}${past}${allowance(told)}${isMark(rule) ? lastDone(rule, limit) : ''}`;
}

function leftSentence(told: Told): string {
  const { rule, due, limit, explanation } = told;
  const { names } = explanation;
  const left = limit.left === 0 ? 'nothing' : lengthInWords(limit.left ?? 0, due, names);
  const verb = isPlural(rule) ? 'have' : 'has';
  if (due.on === 'calendar')
    return `${spanInWords(rule, names)}${sinceBase(told)} ${verb} ${left} left: ${due.goodThrough ? 'good through' : 'until'} ${dayInWords(due.day)}${isMark(rule) ? lastDone(rule, limit) : ''}`;
  const strict = rule.node.kind === 'interval' && rule.node.strict ? 'it falls due beyond' : 'it falls due at';
  return `${spanInWords(rule, names)}${sinceBase(told)} ${verb} ${left} left: ${standsAt(told)}, and ${strict} ${pointOnAxis(due, names)}`;
}

function mixSentence(told: Told): string {
  const { rule, due, limit, explanation } = told;
  const { names } = explanation;
  const shares = (rule.shares ?? []).filter((share) => share.ticks > 0);
  const meter = due.on === 'meter' ? due.meter : '';
  const total = shares.reduce((sum, share) => sum + share.ticks / share.of, 0);
  const parts = shares.map(
    (share) =>
      `${meterQuantity(share.ticks, meter, names)}${share.duty === null ? ' in ordinary work' : inDuty(share.duty, names)} (of ${meterQuantity(share.of, meter, names)})`,
  );
  const made = parts.length === 0 ? 'no work' : listed(parts);
  const rest = reached(rule.state)
    ? ''
    : `; in ordinary work it has ${lengthInWords(limit.left ?? 0, due, names)} left, until ${pointOnAxis(due, names)}`;
  return `the work${sinceBase(told)} has used up ${numberText(total * 100, 1)} % of the limit: ${made}${rest}`;
}

function calendarUp(due: Extract<DuePoint, { on: 'calendar' }>, left: number): string {
  const day = `${due.goodThrough ? 'at the end of' : 'on'} ${dayInWords(due.day)}`;
  if (left === 0) return `${day}, today`;
  return `${day}, ${-left === 1 ? '1 day' : `${-left} days`} ago`;
}

/** ` since it was done on 2 March 2026 at 1200 h`; what the limit counts from. */
function sinceBase({ rule, limit, explanation }: Told): string {
  const { base } = limit;
  if (base === null || isMark(rule)) return '';
  const at = base.point.on === 'meter' ? ` at ${meterQuantity(base.point.ticks, base.point.meter, explanation.names)}` : '';
  const when = baseMoment(rule, at !== '');
  switch (base.why) {
    case 'done':
      return ` since it was done${when}${at}`;
    case 'stated':
      return ` since it was done, as the owner states,${when}${at === '' ? '' : at.replace(' at ', ' at about ')}`;
    case 'restarted':
      return ` since its clock was restarted${when}${at}`;
    case 'start':
      return ` since the machine entered service${when}${at}`;
    case 'due-point':
      return ` since it was last due${base.point.on === 'meter' ? at : when}`;
    case 'mark':
      return ` since the last mark${base.point.on === 'meter' ? at : when}`;
    case 'event':
      return ` since ${eventWords(rule, explanation)}${when}${at}`;
    case 'reading':
      return ` since the reading${when}${at}`;
    case 'defect':
      return ` since the defect was found${when}${at}`;
  }
}

/** With a meter's value beside it the day is enough. */
function baseMoment({ baseWhen }: RuleFacts, besideValue: boolean): string {
  if (baseWhen === null || baseWhen === undefined) return '';
  return ` on ${besideValue ? dayInWords(baseWhen.day) : momentInWords(baseWhen)}`;
}

function eventWords(rule: RuleFacts, { names }: Explanation): string {
  const { node } = rule;
  const id = node.kind === 'event' ? node.event : node.kind === 'stages' && node.from.is === 'event' ? node.from.event : null;
  if (id === null) return 'it happened';
  const title = names.events[id];
  return title === undefined ? happenedInWords(id, names) : quoted(title, id);
}

/** `the hour meter on the dash read 1304 h on 13 May 2026`. */
function standsAt({ rule, limit, explanation }: Told): string {
  const { now } = limit;
  if (now === null) return 'where it stands now is not known';
  const on = rule.readWhen === null || rule.readWhen === undefined ? '' : ` on ${dayInWords(rule.readWhen.day)}`;
  if (now.point.on === 'meter') return meterStands(now.point, now.entries, on, explanation);
  return now.point.on === 'work'
    ? `${pointInWords(now.point, explanation.names)} since then`
    : `it is ${pointInWords(now.point, explanation.names)}`;
}

/** Where an earlier meter was replaced, the life total with what the dial shows beside it. */
function meterStands(
  { meter, ticks }: Extract<DuePoint, { on: 'meter' }>,
  ids: readonly string[],
  on: string,
  { names, entries }: Explanation,
): string {
  const behind = dialOf(meter, ticks, ids, new Map(entries.map(({ id, entry }) => [id, entry])));
  if (behind === null || behind === 0) return `${theMeter(meter, names)} read ${meterQuantity(ticks, meter, names)}${on}`;
  return `${theMeter(meter, names)} stood at ${meterQuantity(ticks, meter, names)} in all${on} (${meterQuantity(ticks - behind, meter, names)} on the dial)`;
}

function allowance({ rule, limit, due, explanation }: Told): string {
  const { overdueAfter } = limit;
  if (overdueAfter === null || due.on !== 'meter' || overdueAfter.on !== 'meter' || overdueAfter.ticks === due.ticks) return '';
  const late = meterQuantity(overdueAfter.ticks - due.ticks, due.meter, explanation.names);
  const end = meterQuantity(overdueAfter.ticks, due.meter, explanation.names);
  return rule.state === 'overdue' ? `; the ${late} that it may run late ended at ${end}` : `; it may run ${late} late, to ${end}`;
}

function isPlural(rule: RuleFacts): boolean {
  const { node } = rule;
  if (node.kind === 'interval') return node.amount.on === 'calendar' ? node.amount.count !== 1 : node.amount.ticks !== TICKS_PER_UNIT;
  return node.kind === 'duty-mix';
}
