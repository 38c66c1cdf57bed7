/**
 * About when each limit of a task is reached at given rates of use, and which decides.
 */
import type { TaskAssessment } from '../assess/assessment.js';
import type { Moment } from '../values/moment.js';
import type { Forecast, ForecastPart, RuleFacts } from './explanation.js';

/**
 * `null` where no rate bears on the task, or where its limit has been reached already.
 *
 * The part that decides is the governing one: with the rates given to `assess`, that is the one forecast to be reached first.
 */
export function forecastOf(
  rule: RuleFacts,
  assessed: TaskAssessment,
  now: Moment,
  rates: ReadonlyMap<string, number> | undefined,
): Forecast | null {
  if (rates === undefined || assessed.governing === null || (assessed.state !== 'clear' && assessed.state !== 'coming-up')) return null;
  const parts = forecastParts(rule, now, rates);
  const decides = assessed.governing;
  return parts.some((part) => part.rate !== null) && parts.some((part) => part.node === decides) ? { parts, decides } : null;
}

function forecastParts(rule: RuleFacts, now: Moment, rates: ReadonlyMap<string, number>): readonly ForecastPart[] {
  const own = forecastPart(rule, now, rates);
  return [...(own === null ? [] : [own]), ...rule.parts.flatMap((part) => forecastParts(part, now, rates))];
}

function forecastPart(rule: RuleFacts, now: Moment, rates: ReadonlyMap<string, number>): ForecastPart | null {
  const { limit, node } = rule;
  const due = limit?.due;
  if (limit === undefined || due === null || due === undefined || limit.left === null || limit.left < 0) return null;
  if (due.on === 'calendar') return { node: node.id, about: due.day, rate: null };
  const rate = due.on === 'meter' ? rates.get(due.meter) : undefined;
  if (rate === undefined || rate <= 0) return null;
  return { node: node.id, about: Math.ceil(now.day + limit.left / rate) as Moment['day'], rate };
}
